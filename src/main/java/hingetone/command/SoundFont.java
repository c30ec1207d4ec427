package hingetone.command;

import hingetone.sound.SoundBank;
import hingetone.sound.SoundFailure;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** The sounds that were asked for, or none in particular. */
final class SoundFont {
  @Option(
      names = "--soundfont",
      paramLabel = "FILE.sf2",
      converter = ToFile.class,
      description = "The sounds to use; without it one found on this system, or Java's own.")
  Optional<Path> file = Optional.empty();

  /**
   * The bank to play with.
   *
   * @throws CommandFailure when the file that was named is no bank: that is wrong input
   * @throws SoundFailure when none was named and this system has none that works
   */
  SoundBank bank() throws SoundFailure {
    try {
      return SoundBank.find(file);
    } catch (SoundFailure e) {
      if (file.isPresent()) {
        throw CommandFailure.wrongInput(e.getMessage());
      }
      throw e;
    }
  }

  /** Reads the name of a file that is there. */
  static final class ToFile implements ITypeConverter<Path> {
    @Override
    public Path convert(String text) {
      Path file = Path.of(text);
      if (!Files.exists(file)) {
        throw new TypeConversionException("there is no file " + text);
      }
      if (Files.isDirectory(file) || !Files.isReadable(file)) {
        throw new TypeConversionException(text + " cannot be read");
      }
      return file;
    }
  }
}
