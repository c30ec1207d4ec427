package hingetone;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Holds the packages to the arrows that DEVELOPERS.md draws. */
class PackageArrowsTest {
  private static final Path SOURCES = Path.of("src/main/java");
  private static final Pattern IMPORT =
      Pattern.compile("(?m)^import (?:static )?([a-z_0-9.]+)\\.[A-Z]");

  private static final String PRINT_IMPORTS =
      "base notation neck chart groove ground backing exchange hearing take drill journal";

  /** For each package the packages it may import; base is theory, time, text and score. */
  private static final Map<String, String> ARROWS =
      Map.ofEntries(
          Map.entry("theory", ""),
          Map.entry("time", ""),
          Map.entry("text", ""),
          Map.entry("score", "theory time"),
          Map.entry("notation", "base"),
          Map.entry("midi", "base"),
          Map.entry("neck", "theory time"),
          Map.entry("chart", "base notation neck"),
          Map.entry("groove", "base notation"),
          Map.entry("ground", "base chart neck"),
          Map.entry("backing", "base chart groove"),
          Map.entry("sound", "base midi"),
          Map.entry("hearing", "base neck"),
          Map.entry("transport", "base midi sound"),
          Map.entry("exchange", "base notation chart neck ground"),
          Map.entry("take", "base chart neck ground midi"),
          Map.entry("drill", "base chart ground exchange take"),
          Map.entry("journal", "theory time"),
          Map.entry("print", PRINT_IMPORTS),
          Map.entry("screen", "print " + PRINT_IMPORTS),
          Map.entry("screen.terminal", "screen print " + PRINT_IMPORTS),
          Map.entry("handout", "print " + PRINT_IMPORTS));

  /** Outside libraries that only the named packages may touch. */
  private static final Map<String, Set<String>> LIBRARIES =
      Map.of(
          "org.jfugue", Set.of("notation"),
          "javax.sound", Set.of("midi", "sound", "transport"),
          "org.jline", Set.of("screen.terminal"),
          "org.jtransforms", Set.of("hearing"),
          "org.jflac", Set.of("sound"),
          "java.sql", Set.of("journal"));

  @Test
  void every_import_follows_the_arrows() throws IOException {
    Set<String> wrong = new TreeSet<>();
    imports()
        .forEach(
            (file, imported) -> {
              String from = packageOf(file);
              for (String name : imported) {
                if (name.startsWith("hingetone.") && !mayImport(from, name.substring(10))) {
                  wrong.add(from + " -> " + name + " in " + file);
                }
              }
            });
    assertThat(wrong).isEmpty();
  }

  @Test
  void each_outside_library_is_touched_by_its_own_packages_only() throws IOException {
    Set<String> wrong = new TreeSet<>();
    imports()
        .forEach(
            (file, imported) -> {
              for (String name : imported) {
                LIBRARIES.forEach(
                    (library, owners) -> {
                      if (name.startsWith(library) && !owners.contains(packageOf(file))) {
                        wrong.add(file + " imports " + name);
                      }
                    });
              }
            });
    assertThat(wrong).isEmpty();
  }

  @Test
  void every_package_says_what_lives_there() throws IOException {
    for (Path file : imports().keySet()) {
      assertThat(file.resolveSibling("package-info.java")).exists();
    }
  }

  private static boolean mayImport(String from, String to) {
    if (from.equals("command") || from.equals(to)) {
      return true;
    }
    String arrows = ARROWS.getOrDefault(from, "").replace("base", "theory time text score");
    return List.of(arrows.split(" ")).contains(to);
  }

  private static String packageOf(Path file) {
    return SOURCES.resolve("hingetone").relativize(file.getParent()).toString().replace('/', '.');
  }

  private static Map<Path, Set<String>> imports() throws IOException {
    Map<Path, Set<String>> all = new TreeMap<>();
    try (Stream<Path> files = Files.walk(SOURCES)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
        Matcher found = IMPORT.matcher(Files.readString(file));
        Set<String> names = new TreeSet<>();
        while (found.find()) {
          names.add(found.group(1));
        }
        all.put(file, names);
      }
    }
    assertThat(all).isNotEmpty();
    return all;
  }
}
