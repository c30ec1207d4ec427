package hingetone.journal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/**
 * The log on disk, one SQLite file, opened for each use and closed after it.
 *
 * <p>Several programs may write at once: each waits for the other (write-ahead log, five seconds).
 * What was written stays when the program is killed. A file that is damaged, newer or somebody
 * else's is never changed.
 */
public final class PracticeLog {
  /** The version of the format, kept in the file as {@code user_version}. */
  static final int VERSION = 1;

  private static final int WAIT_MILLIS = 5000;

  private static final String TABLE =
      "CREATE TABLE IF NOT EXISTS entry (start TEXT NOT NULL, activity TEXT NOT NULL, chart TEXT NOT NULL,"
          + " keys TEXT NOT NULL, seconds INTEGER NOT NULL, bpm REAL, score REAL,"
          + " PRIMARY KEY (start, activity, chart)) WITHOUT ROWID";

  private final Path file;

  /** A log in a file, which need not be there yet. */
  public PracticeLog(Path file) {
    this.file = file.toAbsolutePath();
  }

  /** The file. */
  public Path file() {
    return file;
  }

  /** Everything practised, the oldest first; nothing where there is no file. */
  public List<LogEntry> entries() throws LogFailure {
    if (!Files.exists(file)) {
      return List.of();
    }
    try (Connection connection = connect()) {
      return check(connection) ? read(connection) : List.of();
    } catch (SQLException e) {
      throw failure(e);
    }
  }

  /**
   * Keeps an entry; one that began at the same moment, of the same activity and chart, is replaced.
   */
  public void keep(LogEntry entry) throws LogFailure {
    keep(List.of(entry), "REPLACE");
  }

  /** The same; what goes wrong is a sentence. */
  public Optional<String> tryToKeep(LogEntry entry) {
    try {
      keep(entry);
      return Optional.empty();
    } catch (LogFailure e) {
      return Optional.of(e.getMessage());
    }
  }

  /**
   * Adds entries of another log, all or none; those that are here already stay as they are.
   *
   * @return how many are new
   */
  public int add(List<LogEntry> entries) throws LogFailure {
    return keep(entries, "IGNORE");
  }

  private int keep(List<LogEntry> entries, String otherwise) throws LogFailure {
    try {
      Files.createDirectories(file.getParent());
    } catch (IOException e) {
      throw new LogFailure("The log's folder " + file.getParent() + " cannot be made.", e);
    }
    try (Connection connection = connect()) {
      boolean begun = check(connection);
      if (!begun) {
        execute(connection, "PRAGMA journal_mode = WAL");
      }
      connection.setAutoCommit(false);
      if (!begun) {
        execute(connection, TABLE);
        execute(connection, "PRAGMA user_version = " + VERSION);
      }
      int kept = insert(connection, entries, otherwise);
      connection.commit();
      return kept;
    } catch (SQLException e) {
      throw failure(e);
    }
  }

  private Connection connect() throws SQLException {
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(WAIT_MILLIS);
    config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
    boolean closed =
        Files.exists(file) && !(Files.isWritable(file) && Files.isWritable(file.getParent()));
    if (closed) {
      // Nobody writes there, so there is nothing to wait for, and no file beside it may be made.
      config.setReadOnly(true);
      return config.createConnection("jdbc:sqlite:file:" + uriPath() + "?immutable=1");
    }
    return config.createConnection("jdbc:sqlite:" + file);
  }

  private String uriPath() {
    return file.toUri().getRawPath();
  }

  /**
   * Whether the file is a log of ours.
   *
   * @return false where it is empty
   * @throws LogFailure where it is newer, or somebody else's
   */
  private boolean check(Connection connection) throws SQLException, LogFailure {
    int version = number(connection, "PRAGMA user_version");
    if (version > VERSION) {
      throw new LogFailure(
          "The log "
              + file
              + " was written by a newer hingetone; nothing was changed. This one reads format "
              + VERSION
              + ", the file has "
              + version
              + ".");
    }
    boolean empty = number(connection, "SELECT count(*) FROM sqlite_master") == 0;
    if (version < VERSION && !empty) {
      throw new LogFailure(file + " is no log of hingetone; nothing was changed.");
    }
    return !empty;
  }

  private static int number(Connection connection, String question) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet answer = statement.executeQuery(question)) {
      return answer.getInt(1);
    }
  }

  private static void execute(Connection connection, String order) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(order);
    }
  }

  private static int insert(Connection connection, List<LogEntry> entries, String otherwise)
      throws SQLException {
    String order = "INSERT OR " + otherwise + " INTO entry VALUES (?, ?, ?, ?, ?, ?, ?)";
    int kept = 0;
    try (PreparedStatement row = connection.prepareStatement(order)) {
      for (LogEntry entry : entries) {
        row.setString(1, entry.start().toString());
        row.setString(2, entry.activity().toString());
        row.setString(3, entry.chart());
        row.setString(4, entry.keys());
        row.setLong(5, entry.seconds());
        row.setObject(6, entry.bpm().orElse(null));
        row.setObject(7, entry.score().orElse(null));
        kept += row.executeUpdate();
      }
    }
    return kept;
  }

  private List<LogEntry> read(Connection connection) throws SQLException, LogFailure {
    List<LogEntry> entries = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet row =
            statement.executeQuery(
                "SELECT start, activity, chart, keys, seconds, bpm, score FROM entry"
                    + " ORDER BY start, activity, chart")) {
      while (row.next()) {
        entries.add(entry(row));
      }
    } catch (DateTimeException | IllegalArgumentException e) {
      throw damaged(e);
    }
    return entries;
  }

  private LogEntry entry(ResultSet row) throws SQLException {
    Activity activity =
        Activity.of(row.getString(2))
            .orElseThrow(() -> new IllegalArgumentException("an unknown activity"));
    return new LogEntry(
        Instant.parse(row.getString(1)),
        activity,
        row.getString(3),
        row.getString(4),
        row.getLong(5),
        fraction(row, 6),
        fraction(row, 7));
  }

  private static Optional<Double> fraction(ResultSet row, int column) throws SQLException {
    double value = row.getDouble(column);
    return row.wasNull() ? Optional.empty() : Optional.of(value);
  }

  private LogFailure failure(SQLException thrown) {
    SQLiteErrorCode code =
        thrown instanceof SQLiteException sqlite
            ? sqlite.getResultCode()
            : SQLiteErrorCode.UNKNOWN_ERROR;
    return switch (SQLiteErrorCode.getErrorCode(code.code & 0xFF)) {
      case SQLITE_NOTADB, SQLITE_CORRUPT -> damaged(thrown);
      case SQLITE_FULL ->
          new LogFailure("The disk is full: the log " + file + " was not written.", thrown);
      case SQLITE_READONLY, SQLITE_CANTOPEN, SQLITE_PERM ->
          new LogFailure("The log " + file + " cannot be written there.", thrown);
      case SQLITE_BUSY, SQLITE_LOCKED ->
          new LogFailure("Another program holds the log " + file + "; try again.", thrown);
      default -> new LogFailure("The log " + file + " failed: " + thrown.getMessage(), thrown);
    };
  }

  private LogFailure damaged(Exception cause) {
    return new LogFailure(
        "The log "
            + file
            + " is damaged; nothing was changed. Move it away and a new one begins; log --import"
            + " brings back what log --export saved.",
        cause);
  }
}
