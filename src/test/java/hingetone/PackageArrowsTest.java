package hingetone;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Holds the packages to the table in DEVELOPERS.md: what each may import, and one name for one
 * thing.
 */
class PackageArrowsTest {
  private static final Path SOURCES = Path.of("src/main/java/hingetone");
  private static final Path TESTS = Path.of("src/test/java/hingetone");
  private static final Pattern IMPORT =
      Pattern.compile("(?m)^import (?:static )?([a-z_0-9.]+)\\.[A-Z]");
  private static final Pattern ROW =
      Pattern.compile("(?m)^\\| ((?:`[a-z.]+`(?:, )?)+) \\| [^|]+ \\| ([^|]+) \\|$");
  private static final Pattern NAME = Pattern.compile("`([a-z.]+)`( and its imports)?");

  /** Outside libraries that only the named packages may touch. */
  private static final Map<String, Set<String>> LIBRARIES =
      Map.of(
          "org.jfugue", Set.of("notation"),
          "javax.sound",
              Set.of(
                  "midi",
                  "port",
                  "sequencer",
                  "sound",
                  "sound.file",
                  "sound.level",
                  "take",
                  "transport"),
          "org.jline", Set.of("screen.terminal"),
          "org.jtransforms", Set.of("hearing.signal"),
          "org.jflac", Set.of("sound.file"),
          "java.sql", Set.of("journal"));

  @Test
  void every_import_follows_the_arrows() throws IOException {
    Map<String, Set<String>> arrows = arrows();
    Set<String> wrong = new TreeSet<>();
    imports()
        .forEach(
            (file, imported) -> {
              String from = packageOf(file);
              assertThat(arrows).containsKey(from);
              for (String name : imported) {
                if (name.startsWith("hingetone.")
                    && !name.substring(10).equals(from)
                    && !arrows.get(from).contains(name.substring(10))) {
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

  @Test
  void a_class_name_stands_in_one_package_only() throws IOException {
    for (Path root : List.of(SOURCES, TESTS)) {
      Map<String, List<Path>> byName =
          javaFiles(root).stream()
              .filter(f -> !f.endsWith("package-info.java"))
              .collect(Collectors.groupingBy(f -> f.getFileName().toString()));
      assertThat(byName.values()).allSatisfy(places -> assertThat(places).hasSize(1));
    }
  }

  /** A command is found by its name, however many there are. */
  @Test
  void no_package_grows_too_full_to_find_anything() throws IOException {
    Map<Path, Long> sizes =
        javaFiles(SOURCES).stream()
            .filter(f -> !f.endsWith("package-info.java"))
            .collect(Collectors.groupingBy(Path::getParent, Collectors.counting()));
    assertThat(sizes)
        .allSatisfy(
            (room, classes) ->
                assertThat(classes).isLessThanOrEqualTo(room.endsWith("command") ? 30 : 24));
  }

  /** For each package those that it may import, as DEVELOPERS.md has them. */
  private static Map<String, Set<String>> arrows() throws IOException {
    String guide = Files.readString(Path.of("DEVELOPERS.md"));
    Map<String, Set<String>> arrows = new TreeMap<>();
    Matcher row = ROW.matcher(guide);
    while (row.find()) {
      for (String name : row.group(1).replace("`", "").split(", ")) {
        arrows.put(name, imports(row.group(2), arrows));
      }
    }
    assertThat(arrows).hasSizeGreaterThan(20);
    return arrows;
  }

  private static Set<String> imports(String cell, Map<String, Set<String>> above) {
    Set<String> names = new TreeSet<>();
    if (cell.startsWith("all")) {
      names.addAll(above.keySet());
      return names;
    }
    if (cell.contains("base")) {
      names.addAll(Arrays.asList("theory", "time", "text", "text.reading", "score"));
    }
    Matcher name = NAME.matcher(cell);
    while (name.find()) {
      assertThat(above).containsKey(name.group(1));
      names.add(name.group(1));
      if (name.group(2) != null) {
        names.addAll(above.get(name.group(1)));
      }
    }
    return names;
  }

  private static String packageOf(Path file) {
    return SOURCES.relativize(file.getParent()).toString().replace('/', '.');
  }

  private static Map<Path, Set<String>> imports() throws IOException {
    Map<Path, Set<String>> all = new TreeMap<>();
    for (Path file : javaFiles(SOURCES)) {
      Matcher found = IMPORT.matcher(Files.readString(file));
      Set<String> names = new TreeSet<>();
      while (found.find()) {
        names.add(found.group(1));
      }
      all.put(file, names);
    }
    assertThat(all).isNotEmpty();
    return all;
  }

  private static List<Path> javaFiles(Path root) throws IOException {
    try (Stream<Path> files = Files.walk(root)) {
      return files.filter(f -> f.toString().endsWith(".java")).toList();
    }
  }
}
