package hingetone.text.reading;

import hingetone.text.FileNames;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** Reads the texts that people name on the command line: files, or {@code -}. */
public final class TextFile {
  /** The longest text that is read, in bytes. */
  public static final int MOST_BYTES = 1 << 20;

  private TextFile() {}

  /**
   * Reads a file, or standard input for {@code -}: at most 1 MB of UTF-8. A file that cannot be
   * read as such is a problem with an empty source, never an exception. Line breaks of every kind
   * become {@code \n}, a leading byte-order mark is dropped.
   */
  public static Reading<Source> read(String name) {
    if (name.equals("-")) {
      return read("standard input", System.in);
    }
    try {
      return read(name, FileNames.path(name));
    } catch (InvalidPathException e) {
      return failed(name, "this is no file name", "");
    }
  }

  /** Reads a file as {@link #read(String)} does. */
  public static Reading<Source> read(Path file) {
    return read(file.toString(), file);
  }

  private static Reading<Source> read(String name, Path path) {
    if (Files.isDirectory(path)) {
      return failed(name, "this is a folder", "I expected a text file.");
    }
    if (Files.exists(path) && !Files.isRegularFile(path)) {
      return failed(
          name, "this is no regular file", "I read text files; pipe other things in with \"-\".");
    }
    try (InputStream in = Files.newInputStream(path)) {
      return read(name, in);
    } catch (NoSuchFileException e) {
      return failed(name, "there is no such file", "");
    } catch (IOException e) {
      return failed(name, "this file cannot be read", "Is it there, and may you read it?");
    }
  }

  /** Reads a stream to its end, which stays open. */
  public static Reading<Source> read(String name, InputStream in) {
    byte[] bytes;
    try {
      bytes = in.readNBytes(MOST_BYTES + 1);
    } catch (IOException e) {
      return failed(name, "this cannot be read", "");
    }
    if (bytes.length > MOST_BYTES) {
      return failed(name, "more than 1 MB", "I read texts of at most 1 MB. Is it the right file?");
    }
    return decode(name, bytes);
  }

  private static Reading<Source> decode(String name, byte[] bytes) {
    CharBuffer text = CharBuffer.allocate(bytes.length);
    CoderResult result =
        StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes), text, true);
    String read = text.flip().toString();
    if (!result.isError() && read.indexOf('\0') < 0) {
      String plain = read.startsWith("\uFEFF") ? read.substring(1) : read;
      return Reading.of(new Source(name, plain.replace("\r\n", "\n").replace('\r', '\n')));
    }
    if (startsWith(bytes, 0xFF, 0xFE) || startsWith(bytes, 0xFE, 0xFF)) {
      return failed(name, "this is UTF-16 text", "Save it as UTF-8.");
    }
    for (byte b : bytes) {
      if (b >= 0 && b < ' ' && "\t\n\r\f".indexOf(b) < 0) {
        return failed(name, "this is not a text file", "I expected a plain text in UTF-8.");
      }
    }
    long line = 1 + read.chars().filter(c -> c == '\n').count();
    return failed(
        name,
        "line " + line + " is not UTF-8",
        "The text was saved in another encoding, perhaps Latin-1. Save it as UTF-8.");
  }

  private static boolean startsWith(byte[] bytes, int first, int second) {
    return bytes.length >= 2 && (bytes[0] & 0xFF) == first && (bytes[1] & 0xFF) == second;
  }

  private static <T> Reading<T> failed(String name, String message, String expected) {
    Problems problems = new Problems(new Source(name, ""));
    problems.add(new Span(0, 0), message, expected);
    return problems.reading(() -> null);
  }
}
