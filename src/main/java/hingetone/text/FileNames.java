package hingetone.text;

import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Names of files as the system has them. On Linux they are bytes, and where the locale has no
 * characters for them (in {@code C}, beyond ASCII) Java loses them: from the command line, the
 * environment and the name of the working folder. Here they are read once more from {@code /proc},
 * as UTF-8; a byte that is none is carried as a lone surrogate.
 */
public final class FileNames {
  /** What Java puts where it has no character. */
  private static final String LOST = "\uFFFD";

  private static final char ODD_BYTE = '\uDC00';

  private FileNames() {}

  /** The words the program was started with, none of their characters lost. */
  public static String[] words(String[] args) {
    if (!String.join("", args).contains(LOST)) {
      return args;
    }
    List<String> all = handedOver("cmdline");
    int first = all.size() - args.length;
    return first < 0 ? args : all.subList(first, all.size()).toArray(new String[0]);
  }

  /** A variable of the environment; empty where it is not set or empty. */
  public static Optional<String> variable(String name) {
    String value = System.getenv().getOrDefault(name, "");
    String start = name + "=";
    return Optional.of(value)
        .filter(v -> v.contains(LOST))
        .flatMap(
            v -> handedOver("environ").stream().filter(line -> line.startsWith(start)).findFirst())
        .map(line -> line.substring(start.length()))
        .or(() -> Optional.of(value))
        .filter(v -> !v.isEmpty());
  }

  /** The user's home. */
  public static Path home() {
    String home = System.getProperty("user.home");
    return path(home.contains(LOST) ? variable("HOME").orElse(home) : home);
  }

  /**
   * The file of a name.
   *
   * @throws InvalidPathException when no file can have it
   */
  public static Path path(String name) {
    try {
      Path path = Path.of(name);
      boolean strayed = System.getProperty("user.dir").contains(LOST) && !path.isAbsolute();
      return strayed ? workingFolder().resolve(path) : path;
    } catch (InvalidPathException e) {
      if (File.separatorChar != '/' || name.indexOf('\0') >= 0) {
        throw e;
      }
      return ofBytes(name);
    }
  }

  /** A URI is the one way to give Java a name in bytes. */
  private static Path ofBytes(String name) {
    String folder = name.startsWith("/") ? "" : workingFolder().toUri().getRawPath() + "/";
    StringBuilder uri = new StringBuilder("file://" + folder);
    for (byte b : bytes(name)) {
      boolean plain = b == '/' || b == '.' || Character.isLetterOrDigit(b);
      uri.append(plain ? "" + (char) b : String.format("%%%02X", b));
    }
    return Path.of(URI.create(uri.toString()));
  }

  private static Path workingFolder() {
    try {
      return Path.of("/proc/self/cwd").toRealPath();
    } catch (IOException e) {
      return Path.of("").toAbsolutePath();
    }
  }

  private static byte[] bytes(String text) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    text.codePoints()
        .forEach(
            c -> {
              if (c >= ODD_BYTE && c <= ODD_BYTE + 0xFF) {
                bytes.write(c - ODD_BYTE);
              } else {
                bytes.writeBytes(Character.toString(c).getBytes(StandardCharsets.UTF_8));
              }
            });
    return bytes.toByteArray();
  }

  /** Texts that the system keeps of this program, each ended by a zero byte. */
  private static List<String> handedOver(String what) {
    try {
      byte[] bytes = Files.readAllBytes(Path.of("/proc/self", what));
      List<String> texts = new ArrayList<>();
      int start = 0;
      for (int i = 0; i < bytes.length; i++) {
        if (bytes[i] == 0) {
          texts.add(text(Arrays.copyOfRange(bytes, start, i)));
          start = i + 1;
        }
      }
      return texts;
    } catch (IOException e) {
      return List.of();
    }
  }

  /** UTF-8, or where it is not, ASCII with every other byte as a lone surrogate. */
  static String text(byte[] bytes) {
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      StringBuilder text = new StringBuilder();
      for (byte b : bytes) {
        text.append((char) (b < 0 ? ODD_BYTE + (b & 0xFF) : b));
      }
      return text.toString();
    }
  }
}
