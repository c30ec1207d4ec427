import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * Sees to it that each jar and bank of sounds that ships stands in {@code licences/NOTICE.txt} with texts that are
 * there, and that nothing else stands there.
 *
 * <p>Usage: {@code java CheckLicences.java LIB_FOLDER}. Status 0 where all is well, else 1 with
 * every fault.
 */
class CheckLicences {
  private static final String BANK = ".sf2";

  private final Path lib;
  private final Set<String> named = new TreeSet<>();
  private final Set<String> texts = new TreeSet<>(Set.of("LICENSE.txt", "NOTICE.txt"));
  private final List<String> faults = new ArrayList<>();

  CheckLicences(Path lib) {
    this.lib = lib;
  }

  public static void main(String[] args) throws IOException {
    List<String> faults = new CheckLicences(Path.of(args[0])).faults();
    faults.forEach(fault -> System.err.println("[licences] " + fault));
    if (!faults.isEmpty()) {
      System.err.println("[licences] What an earlier build left there goes with mvn clean.");
    }
    System.exit(faults.isEmpty() ? 0 : 1);
  }

  /** What is wrong, a line each; none where every jar has its licence. */
  List<String> faults() throws IOException {
    Path licences = lib.resolve("licences");
    String notice = Files.readString(licences.resolve("NOTICE.txt")).replace("\r", "");
    Stream.of(notice.split("\n\n+")).skip(2).forEach(this::read);
    Set<String> jars = new TreeSet<>();
    for (String file : names(lib)) {
      if (file.endsWith(".jar")) {
        jars.add(file.replaceFirst("-[0-9][^-]*[.]jar$", ""));
      } else if (file.endsWith(BANK)) {
        jars.add(file);
      }
    }
    // A bank ships only where the build could get it.
    named.removeIf(name -> name.endsWith(BANK) && !jars.contains(name));
    compare(jars, named, "%s ships and does not stand in NOTICE.txt");
    compare(named, jars, "%s stands in NOTICE.txt and does not ship");
    compare(texts, names(licences), "the text %s is not there");
    compare(names(licences), texts, "the text %s goes with no jar");
    return List.copyOf(faults);
  }

  /** A paragraph: jars, texts, remarks. */
  private void read(String paragraph) {
    List<String> lines = paragraph.strip().lines().toList();
    if (lines.size() < 2) {
      faults.add("NOTICE.txt names no text for " + paragraph.strip());
      return;
    }
    named.addAll(List.of(lines.get(0).split(", *")));
    texts.addAll(List.of(lines.get(1).split(", *")));
  }

  private void compare(Set<String> these, Set<String> those, String fault) {
    these.stream().filter(name -> !those.contains(name)).map(fault::formatted).forEach(faults::add);
  }

  /** The files of a folder that are not empty. */
  private static Set<String> names(Path folder) throws IOException {
    Set<String> names = new TreeSet<>();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        if (Files.size(file) > 0) {
          names.add(file.getFileName().toString());
        }
      }
    }
    return names;
  }
}
