package hingetone.sound;

import hingetone.text.FileNames;
import java.io.IOException;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.FileSystemNotFoundException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Where SoundFonts usually lie, the user's own folders first and the program's last.
 *
 * @param folders folders to look into, best first
 */
record SoundFontFolders(List<Path> folders) {
  /** Fonts below this size are single instruments or test files rather than a whole bank. */
  private static final long SMALLEST_BANK_BYTES = 1_000_000;

  SoundFontFolders {
    folders = List.copyOf(folders);
  }

  /** The folders of this system, and last the one where the program's own small bank lies. */
  static SoundFontFolders ofThisSystem() {
    SoundFontFolders system =
        of(System.getProperty("os.name"), FileNames.home(), FileNames::variable);
    return new SoundFontFolders(
        Stream.concat(system.folders.stream(), program().flatMap(SoundFontFolders::beside).stream())
            .toList());
  }

  /** Where the program runs from: a jar, or a folder of classes. */
  private static Optional<Path> program() {
    try {
      URL code = SoundFontFolders.class.getProtectionDomain().getCodeSource().getLocation();
      return Optional.of(Path.of(code.toURI()));
    } catch (URISyntaxException | IllegalArgumentException | FileSystemNotFoundException e) {
      return Optional.empty();
    }
  }

  /** The folder of libraries beside a jar; empty beside a folder of classes. */
  static Optional<Path> beside(Path program) {
    return Files.isRegularFile(program)
        ? Optional.of(program.resolveSibling("lib"))
        : Optional.empty();
  }

  /** The folders of a system with this name, home and environment. */
  static SoundFontFolders of(
      String system, Path home, Function<String, Optional<String>> environment) {
    String name = system.toLowerCase(Locale.ROOT);
    List<Path> folders = new ArrayList<>();
    if (name.startsWith("windows")) {
      folders.add(home.resolve("Documents").resolve("SoundFonts"));
      folders.add(home.resolve("SoundFonts"));
      String common = environment.apply("ProgramData").orElse("C:\\ProgramData");
      folders.add(FileNames.path(common).resolve("SoundFonts"));
      folders.add(Path.of("C:\\SoundFonts"));
    } else if (name.startsWith("mac")) {
      folders.add(home.resolve("Library/Audio/Sounds/Banks"));
      folders.add(Path.of("/Library/Audio/Sounds/Banks"));
      folders.add(Path.of("/opt/homebrew/share/soundfonts"));
      folders.add(Path.of("/usr/local/share/soundfonts"));
    } else {
      Path data =
          environment
              .apply("XDG_DATA_HOME")
              .map(FileNames::path)
              .orElse(home.resolve(".local/share"));
      folders.add(data.resolve("soundfonts"));
      folders.add(data.resolve("sounds/sf2"));
      folders.add(Path.of("/usr/local/share/soundfonts"));
      folders.add(Path.of("/usr/share/soundfonts"));
      folders.add(Path.of("/usr/share/sounds/sf2"));
    }
    return new SoundFontFolders(folders);
  }

  /** The whole banks found, those named as General MIDI first, then by folder and name. */
  List<Path> soundFonts() {
    List<Path> found = new ArrayList<>();
    for (Path folder : folders) {
      try (Stream<Path> files = Files.list(folder)) {
        files
            .filter(SoundFontFolders::isBank)
            .sorted(
                Comparator.comparing(SoundFontFolders::isNamedGeneralMidi)
                    .reversed()
                    .thenComparing(Path::getFileName))
            .forEach(found::add);
      } catch (IOException e) {
        continue; // a folder that is not there holds no fonts
      }
    }
    return found;
  }

  private static boolean isBank(Path file) {
    try {
      String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
      return name.endsWith(".sf2") && Files.size(file) >= SMALLEST_BANK_BYTES;
    } catch (IOException e) {
      return false;
    }
  }

  private static boolean isNamedGeneralMidi(Path file) {
    return file.getFileName().toString().toLowerCase(Locale.ROOT).contains("gm");
  }
}
