package hingetone.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PracticeLogTest {
  private static final Instant START = Instant.parse("2026-03-02T18:00:00Z");

  @TempDir Path folder;

  private PracticeLog log;

  @BeforeEach
  void open() {
    log = new PracticeLog(folder.resolve("data").resolve("log.sqlite"));
  }

  static LogEntry entry(int day, Activity activity, String chart, Double score) {
    return new LogEntry(
        START.plus(Duration.ofDays(day)),
        activity,
        chart,
        "C minor, Eb minor",
        600,
        Optional.of(92.0),
        Optional.ofNullable(score));
  }

  @Test
  void what_is_kept_is_read_in_order_and_written_again_replaces_itself() throws Exception {
    assertThat(log.entries()).isEmpty();
    LogEntry second = entry(2, Activity.CROSSING, "Tin \"roof\"\n", 0.5);
    LogEntry first = entry(1, Activity.PLAY, "Wet slate", null);
    log.keep(second);
    log.keep(first);
    log.keep(entry(2, Activity.CROSSING, "Tin \"roof\"\n", 0.75));
    assertThat(log.entries())
        .containsExactly(first, entry(2, Activity.CROSSING, "Tin \"roof\"\n", 0.75));
  }

  @Test
  void an_exported_log_imported_twice_is_there_once() throws Exception {
    List<LogEntry> entries =
        List.of(entry(1, Activity.PLAY, "Wet slate", null), entry(2, Activity.EAR, "Ø", 1.0));
    List<String> lines = entries.stream().map(LogLines::of).toList();
    assertThat(log.add(LogLines.read("lines", lines))).isEqualTo(2);
    assertThat(log.add(LogLines.read("lines", lines))).isZero();
    assertThat(log.entries()).isEqualTo(entries);
  }

  @Test
  void a_line_that_is_no_entry_is_told_with_its_place() {
    String good = LogLines.of(entry(1, Activity.PLAY, "Wet slate", null));
    for (String bad :
        List.of(
            "{",
            "[]",
            "7",
            "{}",
            good + good,
            good.replace("play", "sleep"),
            good.replace("600", "-1"),
            good.replace("\"keys\"", "\"keys\":[1],\"x\""))) {
      assertThatThrownBy(() -> LogLines.read("old.jsonl", List.of(good, "", bad)))
          .as(bad)
          .isInstanceOf(LogFailure.class)
          .hasMessageStartingWith("old.jsonl, line 3: I expected an entry");
    }
  }

  @Test
  void two_programs_that_begin_it_at_once_lose_nothing() throws Exception {
    List<CompletableFuture<Void>> programs = new ArrayList<>();
    for (int program = 0; program < 4; program++) {
      String chart = "Chart " + program;
      programs.add(
          CompletableFuture.runAsync(
              () -> {
                try {
                  for (int day = 0; day < 10; day++) {
                    new PracticeLog(log.file()).keep(entry(day, Activity.PLAY, chart, null));
                  }
                } catch (LogFailure e) {
                  throw new IllegalStateException(e);
                }
              }));
    }
    programs.forEach(CompletableFuture::join);
    assertThat(log.entries()).hasSize(40);
  }

  @Test
  void a_newer_log_is_refused_and_not_changed() throws Exception {
    log.keep(entry(1, Activity.PLAY, "Wet slate", null));
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + log.file());
        Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA user_version = 9");
      statement.execute("PRAGMA wal_checkpoint(TRUNCATE)");
    }
    assertUnchanged("was written by a newer hingetone; nothing was changed");
  }

  @Test
  void somebody_elses_database_is_refused_and_not_changed() throws Exception {
    Files.createDirectories(log.file().getParent());
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + log.file());
        Statement statement = connection.createStatement()) {
      statement.execute("CREATE TABLE recipes (name TEXT)");
    }
    assertUnchanged("is no log of hingetone; nothing was changed");
  }

  @Test
  void a_damaged_log_is_told_and_not_changed() throws Exception {
    Files.createDirectories(log.file().getParent());
    byte[] bytes = new byte[8192];
    Arrays.fill(bytes, (byte) 'x');
    Files.write(log.file(), bytes);
    assertUnchanged("is damaged; nothing was changed");
  }

  private void assertUnchanged(String words) throws Exception {
    byte[] before = Files.readAllBytes(log.file());
    assertThatThrownBy(() -> log.keep(entry(2, Activity.PLAY, "Wet slate", null)))
        .isInstanceOf(LogFailure.class)
        .hasMessageContaining(words);
    assertThatThrownBy(() -> log.entries())
        .isInstanceOf(LogFailure.class)
        .hasMessageContaining(words);
    assertThat(log.file()).hasBinaryContent(before);
  }

  @Test
  void a_folder_that_cannot_be_made_is_told() throws Exception {
    Files.write(folder.resolve("data"), new byte[0]);
    assertThatThrownBy(() -> log.keep(entry(1, Activity.PLAY, "Wet slate", null)))
        .isInstanceOf(LogFailure.class)
        .hasMessageContaining("cannot be made");
  }
}
