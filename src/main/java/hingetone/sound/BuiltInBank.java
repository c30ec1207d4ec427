package hingetone.sound;

import java.io.File;
import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import java.util.Map;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Soundbank;

/** The JDK's emergency bank, which makes its waves by calculation, and where it is kept. */
final class BuiltInBank {
  private static final String FILE = "built-in-sounds.sf2";

  private BuiltInBank() {}

  /** The user's cache folder for this program on this system. */
  static Path cacheFolder() {
    return cacheFolder(
        System.getProperty("os.name"), Path.of(System.getProperty("user.home")), System.getenv());
  }

  static Path cacheFolder(String system, Path home, Map<String, String> environment) {
    String name = system.toLowerCase(Locale.ROOT);
    String variable = name.startsWith("windows") ? "LOCALAPPDATA" : "XDG_CACHE_HOME";
    String chosen = environment.getOrDefault(variable, "");
    Path usual = home.resolve(name.startsWith("mac") ? "Library/Caches" : ".cache");
    return (chosen.isEmpty() ? usual : Path.of(chosen)).resolve("hingetone");
  }

  /** The bank kept in a folder; made and kept there the first time, where that can be written. */
  static Soundbank kept(Path folder) throws SoundFailure {
    Path file = folder.resolve(FILE);
    try {
      if (!Files.isRegularFile(file)) {
        keep(made(), folder, file);
      }
      return MidiSystem.getSoundbank(file.toFile());
    } catch (IOException | InvalidMidiDataException | RuntimeException e) {
      return made();
    }
  }

  private static void keep(Soundbank bank, Path folder, Path file)
      throws IOException, SoundFailure {
    Files.createDirectories(folder);
    Path unfinished = Files.createTempFile(folder, FILE, ".part");
    try {
      bank.getClass().getMethod("save", File.class).invoke(bank, unfinished.toFile());
      Files.move(unfinished, file, StandardCopyOption.REPLACE_EXISTING);
    } catch (ReflectiveOperationException e) {
      throw new IOException("the built-in sounds cannot be kept", e);
    } finally {
      Files.deleteIfExists(unfinished);
    }
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
