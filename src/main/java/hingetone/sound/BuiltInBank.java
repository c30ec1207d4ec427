package hingetone.sound;

import hingetone.text.FileNames;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.reflect.InvocationTargetException;
import java.nio.ByteBuffer;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.zip.CRC32;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Soundbank;

/**
 * The JDK's emergency bank, which makes its waves by calculation, and where it is kept.
 *
 * <p>The file is the bank as a SoundFont, then its CRC-32 in eight bytes. One that is damaged, cut
 * off or of an older program is replaced. Programs that start together may each make the bank: the
 * files appear whole, the last one stays.
 */
final class BuiltInBank {
  private static final String FILE = "built-in-sounds.sf2";
  private static final int CHECKSUM_BYTES = Long.BYTES;
  private static final long MOST_BYTES = 64_000_000;

  /** Making the bank takes a second or two: what is unfinished after this will stay so. */
  private static final Duration ABANDONED = Duration.ofMinutes(10);

  private BuiltInBank() {}

  /** The user's cache folder for this program on this system. */
  static Path cacheFolder() {
    return cacheFolder(System.getProperty("os.name"), FileNames.home(), FileNames::variable);
  }

  static Path cacheFolder(
      String system, Path home, Function<String, Optional<String>> environment) {
    String name = system.toLowerCase(Locale.ROOT);
    String variable = name.startsWith("windows") ? "LOCALAPPDATA" : "XDG_CACHE_HOME";
    Path usual = home.resolve(name.startsWith("mac") ? "Library/Caches" : ".cache");
    return environment.apply(variable).map(FileNames::path).orElse(usual).resolve("hingetone");
  }

  /** Where the bank is kept in a folder. */
  static Path file(Path folder) {
    return folder.resolve(FILE);
  }

  /** Makes a bank. */
  @FunctionalInterface
  interface Maker {
    Soundbank make() throws SoundFailure;
  }

  /** The bank kept in a folder; made and kept there anew when it is not whole. */
  static Soundbank kept(Path folder, Maker maker) throws SoundFailure {
    Path file = file(folder);
    Optional<Soundbank> kept = whole(file);
    if (kept.isPresent()) {
      return kept.get();
    }
    Soundbank made = maker.make();
    try {
      keep(made, folder, file);
    } catch (IOException | RuntimeException e) {
      return made; // nothing can be kept here: the samples differ at the next start
    }
    return whole(file).orElse(made);
  }

  /** The bank in a file, if that is there and its checksum is right. */
  private static Optional<Soundbank> whole(Path file) {
    try {
      if (!Files.isRegularFile(file) || Files.size(file) > MOST_BYTES) {
        return Optional.empty();
      }
      byte[] bytes = Files.readAllBytes(file);
      int length = bytes.length - CHECKSUM_BYTES;
      if (length < 0 || ByteBuffer.wrap(bytes).getLong(length) != checksum(bytes, length)) {
        return Optional.empty();
      }
      return Optional.of(MidiSystem.getSoundbank(new ByteArrayInputStream(bytes, 0, length)));
    } catch (IOException | InvalidMidiDataException | RuntimeException e) {
      return Optional.empty();
    }
  }

  private static long checksum(byte[] bytes, int length) {
    CRC32 sum = new CRC32();
    sum.update(bytes, 0, length);
    return sum.getValue();
  }

  private static void keep(Soundbank bank, Path folder, Path file) throws IOException {
    Files.createDirectories(folder);
    deleteAbandoned(folder);
    byte[] bytes = bytes(bank);
    ByteBuffer sum = ByteBuffer.allocate(CHECKSUM_BYTES).putLong(checksum(bytes, bytes.length));
    CacheFile.write(
        file,
        out -> {
          out.write(bytes);
          out.write(sum.array());
        });
  }

  /** Takes away what programs left that were ended while they wrote. */
  private static void deleteAbandoned(Path folder) throws IOException {
    Instant before = Instant.now().minus(ABANDONED);
    try (DirectoryStream<Path> parts =
        Files.newDirectoryStream(folder, FILE + "*" + CacheFile.UNFINISHED)) {
      for (Path part : parts) {
        if (Files.getLastModifiedTime(part).toInstant().isBefore(before)) {
          Files.deleteIfExists(part);
        }
      }
    }
  }

  private static byte[] bytes(Soundbank bank) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      bank.getClass().getMethod("save", OutputStream.class).invoke(bank, bytes);
    } catch (ReflectiveOperationException e) {
      throw new IOException("the built-in sounds cannot be kept", e);
    }
    return bytes.toByteArray();
  }

  /** The bank made anew; its samples differ from one time to the next. */
  static Soundbank made() throws SoundFailure {
    try {
      return (Soundbank)
          Class.forName("com.sun.media.sound.EmergencySoundbank")
              .getMethod("createSoundbank")
              .invoke(null);
    } catch (InvocationTargetException e) {
      throw new SoundFailure("This Java cannot make its built-in sounds.", e.getCause());
    } catch (ReflectiveOperationException e) {
      throw new SoundFailure(
          "This Java's built-in sounds cannot be reached; start the program with java -jar on an"
              + " OpenJDK of 17 or later, or name a sound font with --soundfont.",
          e);
    }
  }
}
