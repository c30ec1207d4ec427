import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Sees to it that JFugue (LGPL 2.1 or later; not on Maven Central) is in Maven's local repository
 * and is the very file that the build names by its hash, on every build and wherever it comes from:
 *
 * <ol>
 *   <li>the file given, a jar or Debian's package;
 *   <li>the local repository, the usual case;
 *   <li>{@code /usr/share/java}, where Debian installs it;
 *   <li>{@code apt-get download}, which needs no root and no earlier {@code apt-get update}.
 * </ol>
 *
 * <p>Usage: {@code java FetchJfugue.java LOCAL_REPOSITORY WORK_FOLDER SHA256 [FILE]}. Status 0 where
 * it is there, else 1 with the reason.
 */
class FetchJfugue {
  private static final String VERSION = "4.0.3";
  private static final String NAME = "jfugue-" + VERSION + ".jar";
  private static final String PACKAGE = "libjfugue-java";
  private static final String POM =
      """
      <project xmlns="http://maven.apache.org/POM/4.0.0">
        <modelVersion>4.0.0</modelVersion>
        <groupId>org.jfugue</groupId><artifactId>jfugue</artifactId><version>%s</version>
        <licenses><license><name>LGPL-2.1-or-later</name></license></licenses>
      </project>
      """
          .formatted(VERSION);
  private static final String NOWHERE =
      """
      JFugue %1$s is needed and was not found. Do one of these, then build again:
        Debian, Ubuntu:  sudo apt-get install %2$s
        elsewhere:       get Debian's package %2$s or its jfugue-%1$s.jar and run
                         mvn -Djfugue.jar=/path/to/jfugue-%1$s.jar package
      """
          .formatted(VERSION, PACKAGE);

  private final Path target;
  private final Path work;
  private final Path unpacking;
  private final String hash;
  private final Path installed;
  private final String aptGet;
  private final PrintStream out;

  /**
   * A fetch into a repository.
   *
   * @param installed where the system may have the jar
   * @param aptGet the command that downloads Debian's package
   * @param out where it is told what happens
   */
  FetchJfugue(
      Path repository, Path work, String hash, Path installed, String aptGet, PrintStream out) {
    this.target = repository.resolve("org/jfugue/jfugue").resolve(VERSION);
    this.work = work.toAbsolutePath();
    this.unpacking = this.work.resolve("unpacking");
    this.hash = hash;
    this.installed = installed;
    this.aptGet = aptGet;
    this.out = out;
  }

  public static void main(String[] args) throws Exception {
    FetchJfugue fetch =
        new FetchJfugue(
            Path.of(args[0]),
            Path.of(args[1]),
            args[2],
            Path.of("/usr/share/java", NAME),
            "apt-get",
            System.err);
    System.exit(fetch.run(args.length > 3 ? args[3] : ""));
  }

  /** Fetches it from a file, or where that is empty from wherever it is. */
  int run(String given) throws IOException, InterruptedException {
    try {
      Path there = target.resolve(NAME);
      if (given.isEmpty() && Files.exists(there)) {
        check(there, there, "Delete it and build again.");
        writePom();
        return 0;
      }
      install(given.isEmpty() ? found() : givenJar(Path.of(given)));
      return 0;
    } catch (Refusal refusal) {
      refusal.getMessage().lines().forEach(this::say);
      return 1;
    } finally {
      delete(unpacking);
    }
  }

  private Path givenJar(Path file) throws IOException, InterruptedException, Refusal {
    if (!Files.isRegularFile(file)) {
      throw new Refusal("-Djfugue.jar=" + file + ": there is no such file.");
    }
    return file.toString().endsWith(".deb") ? unpacked(file) : file;
  }

  private Path found() throws IOException, InterruptedException, Refusal {
    if (Files.exists(installed)) {
      return installed;
    }
    Optional<Path> downloaded = downloaded();
    if (downloaded.isEmpty()) {
      throw new Refusal(NOWHERE);
    }
    return unpacked(downloaded.get());
  }

  /** Copies it beside its place, checks the copy and only then puts it there. */
  private void install(Path jar) throws IOException, Refusal {
    Files.createDirectories(target);
    Path copy = Files.createTempFile(target, ".jfugue", ".jar");
    try {
      Files.copy(jar, copy, StandardCopyOption.REPLACE_EXISTING);
      check(copy, jar, "It is not used.");
      writePom();
      Files.move(copy, target.resolve(NAME), StandardCopyOption.REPLACE_EXISTING);
      say("JFugue " + VERSION + " from " + jar + " is now in " + target);
    } finally {
      Files.deleteIfExists(copy);
    }
  }

  private void writePom() throws IOException {
    Path pom = target.resolve(NAME.replace(".jar", ".pom"));
    if (!Files.exists(pom)) {
      Files.writeString(pom, POM);
    }
  }

  private void check(Path file, Path shown, String then) throws IOException, Refusal {
    String got = sha256(Files.readAllBytes(file));
    if (!got.equalsIgnoreCase(hash)) {
      throw new Refusal(
          "ERROR: %s is not the JFugue that this build names.\nsha256 %s\nexpected %s\n%s"
              .formatted(shown, got, hash, then));
    }
  }

  private static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The jar out of Debian's package. */
  private Path unpacked(Path deb) throws IOException, InterruptedException, Refusal {
    Files.createDirectories(unpacking);
    Path log = work.resolve("dpkg.log");
    String archive = deb.toAbsolutePath().toString();
    if (!runs(log, List.of("dpkg-deb", "-x", archive, unpacking.toString()))) {
      throw new Refusal(
          "ERROR: " + deb + " was not unpacked by dpkg-deb.\nUnpack it and name the jar in it.");
    }
    Path jar = unpacking.resolve("usr/share/java").resolve(NAME);
    if (!Files.exists(jar)) {
      throw new Refusal("ERROR: there is no usr/share/java/" + NAME + " in " + deb + ".");
    }
    return jar;
  }

  /** Debian's package, with apt-get; empty where there is none or it fails. */
  private Optional<Path> downloaded() throws IOException, InterruptedException {
    Path state = Files.createDirectories(work).resolve("apt");
    Path log = work.resolve("apt.log");
    Files.deleteIfExists(log);
    say("looking for " + PACKAGE + " with apt-get");
    List<String> apt = aptGet(state);
    boolean done = runs(log, with(apt, "update")) && runs(log, with(apt, "download", PACKAGE));
    delete(state);
    if (!done && Files.exists(log)) {
      Files.readAllLines(log).forEach(this::say);
    }
    try (Stream<Path> files = Files.list(work)) {
      return files.filter(f -> f.getFileName().toString().matches(PACKAGE + "_.*[.]deb")).findAny();
    }
  }

  /**
   * apt-get with state of its own. As root it would else drop to a user who may not write here;
   * the contents of packages would be big lists.
   */
  private List<String> aptGet(Path state) throws IOException {
    Files.createDirectories(state.resolve("lists/partial"));
    Files.createDirectories(state.resolve("cache/archives/partial"));
    Files.writeString(state.resolve("status"), "");
    List<String> command = new ArrayList<>(List.of(aptGet, "-q"));
    for (String option :
        List.of(
            "Dir::State=" + state,
            "Dir::State::lists=" + state.resolve("lists"),
            "Dir::State::status=" + state.resolve("status"),
            "Dir::Cache=" + state.resolve("cache"),
            "Dir::Log=" + state,
            "APT::Sandbox::User=root",
            "Acquire::Languages=none",
            "Acquire::IndexTargets::deb::Contents-deb::DefaultEnabled=false",
            "Debug::NoLocking=1",
            "Acquire::Retries=2")) {
      command.addAll(List.of("-o", option));
    }
    return command;
  }

  private static List<String> with(List<String> command, String... more) {
    List<String> whole = new ArrayList<>(command);
    whole.addAll(List.of(more));
    return whole;
  }

  /** Whether a command is there and ends well; what it says goes to the log. */
  private boolean runs(Path log, List<String> command) throws IOException, InterruptedException {
    ProcessBuilder builder =
        new ProcessBuilder(command)
            .directory(work.toFile())
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()));
    try {
      return builder.start().waitFor() == 0;
    } catch (IOException notThere) {
      return false;
    }
  }

  private static void delete(Path folder) throws IOException {
    if (Files.exists(folder)) {
      try (Stream<Path> files = Files.walk(folder)) {
        for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(file);
        }
      }
    }
  }

  private void say(String line) {
    out.println("[jfugue] " + line);
  }

  /** Why there is no JFugue to build with. */
  private static final class Refusal extends Exception {
    private static final long serialVersionUID = 1;

    Refusal(String message) {
      super(message);
    }
  }
}
