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
 * Sees to it that two files of Debian's packages that are not on Maven Central are in Maven's local
 * repository, and that each is the very file that the build names by its hash, on every build and
 * wherever it comes from: JFugue (LGPL 2.1 or later), without which nothing is built, and a small
 * bank of sounds (public domain), without which the program plays on another.
 *
 * <ol>
 *   <li>the file given, itself or Debian's package;
 *   <li>the local repository, the usual case;
 *   <li>where Debian installs it;
 *   <li>{@code apt-get download}, which needs no root and no earlier {@code apt-get update}.
 * </ol>
 *
 * <p>Usage: {@code java FetchFromDebian.java LOCAL_REPOSITORY WORK_FOLDER JFUGUE_SHA256 BANK_SHA256
 * [JFUGUE_FILE]}. Status 0 where JFugue is there, else 1 with the reason.
 */
class FetchFromDebian {
  private static final String VERSION = "4.0.3";
  private static final String POM =
      """
      <project xmlns="http://maven.apache.org/POM/4.0.0">
        <modelVersion>4.0.0</modelVersion>
        <groupId>org.jfugue</groupId><artifactId>jfugue</artifactId><version>%s</version>
        <licenses><license><name>LGPL-2.1-or-later</name></license></licenses>
      </project>
      """
          .formatted(VERSION);
  private static final String NO_JFUGUE =
      """
      JFugue %1$s is needed and was not found. Do one of these, then build again:
        Debian, Ubuntu:  sudo apt-get install libjfugue-java
        elsewhere:       get Debian's package libjfugue-java or its jfugue-%1$s.jar and run
                         mvn -Djfugue.jar=/path/to/jfugue-%1$s.jar package
      """
          .formatted(VERSION);
  private static final String NO_BANK =
      """
      No bank of sounds was found to ship. The program plays on one of the system's, else on Java's own sounds.
      Debian, Ubuntu: sudo apt-get install csound-soundfont, then build again.
      """;

  /**
   * A file that is wanted.
   *
   * @param label what it is called where it is told of
   * @param file its name
   * @param packaged the name of Debian's package
   * @param folder where it lies in that package, from the root
   * @param installed where the system may have it
   * @param target where it goes
   * @param hash its SHA-256 in hexadecimal
   * @param pom what stands beside it for Maven; empty for nothing
   * @param nowhere what is said where it is nowhere
   * @param needed whether nothing is built without it
   */
  record Wanted(
      String label,
      String file,
      String packaged,
      String folder,
      Path installed,
      Path target,
      String hash,
      String pom,
      String nowhere,
      boolean needed) {
    static Wanted jfugue(Path repository, String hash, Path installed) {
      return new Wanted(
          "JFugue",
          "jfugue-" + VERSION + ".jar",
          "libjfugue-java",
          "usr/share/java",
          installed,
          repository.resolve("org/jfugue/jfugue").resolve(VERSION),
          hash,
          POM,
          NO_JFUGUE,
          true);
    }

    static Wanted bank(Path repository, String hash, Path installed) {
      return new Wanted(
          "bank of sounds",
          "sf_GMbank.sf2",
          "csound-soundfont",
          "usr/share/sounds/sf2",
          installed,
          repository.resolve("hingetone/sounds"),
          hash,
          "",
          NO_BANK,
          false);
    }
  }

  private final Wanted wanted;
  private final Path work;
  private final Path unpacking;
  private final String aptGet;
  private final PrintStream out;

  /**
   * A fetch.
   *
   * @param aptGet the command that downloads Debian's package
   * @param out where it is told what happens
   */
  FetchFromDebian(Wanted wanted, Path work, String aptGet, PrintStream out) {
    this.wanted = wanted;
    this.work = work.toAbsolutePath();
    this.unpacking = this.work.resolve("unpacking");
    this.aptGet = aptGet;
    this.out = out;
  }

  public static void main(String[] args) throws Exception {
    Path repository = Path.of(args[0]);
    Path work = Path.of(args[1]);
    Path jar = Path.of("/usr/share/java", "jfugue-" + VERSION + ".jar");
    Path bank = Path.of("/usr/share/sounds/sf2/sf_GMbank.sf2");
    int status =
        new FetchFromDebian(
                Wanted.jfugue(repository, args[2], jar), work, "apt-get", System.err)
            .run(args.length > 4 ? args[4] : "");
    int ofBank =
        new FetchFromDebian(Wanted.bank(repository, args[3], bank), work, "apt-get", System.err)
            .run("");
    System.exit(status + ofBank);
  }

  /** Fetches it from a file, or where that is empty from wherever it is. */
  int run(String given) throws IOException, InterruptedException {
    Path missed = work.resolve(wanted.packaged + ".missed");
    try {
      Path there = wanted.target.resolve(wanted.file);
      if (given.isEmpty() && Files.exists(there)) {
        check(there, there, "Delete it and build again.");
        writePom();
      } else if (wanted.needed || !Files.exists(missed)) {
        install(given.isEmpty() ? found() : givenFile(Path.of(given)));
      }
      return 0;
    } catch (Refusal refusal) {
      refusal.getMessage().lines().forEach(this::say);
      Files.createDirectories(work);
      Files.writeString(missed, "looked for until mvn clean\n");
      return wanted.needed ? 1 : 0;
    } finally {
      delete(unpacking);
    }
  }

  private Path givenFile(Path file) throws IOException, InterruptedException, Refusal {
    if (!Files.isRegularFile(file)) {
      throw new Refusal("-Djfugue.jar=" + file + ": there is no such file.");
    }
    return file.toString().endsWith(".deb") ? unpacked(file) : file;
  }

  private Path found() throws IOException, InterruptedException, Refusal {
    if (Files.exists(wanted.installed)) {
      return wanted.installed;
    }
    Optional<Path> downloaded = downloaded();
    if (downloaded.isEmpty()) {
      throw new Refusal(wanted.nowhere);
    }
    return unpacked(downloaded.get());
  }

  /** Copies it beside its place, checks the copy and only then puts it there. */
  private void install(Path file) throws IOException, Refusal {
    Files.createDirectories(wanted.target);
    Path copy = Files.createTempFile(wanted.target, ".fetched", "");
    try {
      Files.copy(file, copy, StandardCopyOption.REPLACE_EXISTING);
      check(copy, file, "It is not used.");
      writePom();
      Files.move(copy, wanted.target.resolve(wanted.file), StandardCopyOption.REPLACE_EXISTING);
      say(wanted.file + " from " + file + " is now in " + wanted.target);
    } finally {
      Files.deleteIfExists(copy);
    }
  }

  private void writePom() throws IOException {
    Path pom = wanted.target.resolve(wanted.file.replace(".jar", ".pom"));
    if (!wanted.pom.isEmpty() && !Files.exists(pom)) {
      Files.writeString(pom, wanted.pom);
    }
  }

  private void check(Path file, Path shown, String then) throws IOException, Refusal {
    String got = sha256(Files.readAllBytes(file));
    if (!got.equalsIgnoreCase(wanted.hash)) {
      throw new Refusal(
          "ERROR: %s is not the %s that this build names.\nsha256 %s\nexpected %s\n%s"
              .formatted(shown, wanted.label, got, wanted.hash, then));
    }
  }

  private static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The file out of Debian's package. */
  private Path unpacked(Path deb) throws IOException, InterruptedException, Refusal {
    Files.createDirectories(unpacking);
    Path log = work.resolve("dpkg.log");
    String archive = deb.toAbsolutePath().toString();
    if (!runs(log, List.of("dpkg-deb", "-x", archive, unpacking.toString()))) {
      throw new Refusal(
          "ERROR: " + deb + " was not unpacked by dpkg-deb.\nUnpack it and name the file in it.");
    }
    Path file = unpacking.resolve(wanted.folder).resolve(wanted.file);
    if (!Files.exists(file)) {
      throw new Refusal(
          "ERROR: there is no " + wanted.folder + "/" + wanted.file + " in " + deb + ".");
    }
    return file;
  }

  /** Debian's package, with apt-get; empty where there is none or it fails. */
  private Optional<Path> downloaded() throws IOException, InterruptedException {
    Path state = Files.createDirectories(work).resolve("apt");
    Path log = work.resolve("apt.log");
    Files.deleteIfExists(log);
    say("looking for " + wanted.packaged + " with apt-get");
    List<String> apt = aptGet(state);
    boolean done = runs(log, with(apt, "update")) && runs(log, with(apt, "download", wanted.packaged));
    delete(state);
    if (!done && Files.exists(log)) {
      Files.readAllLines(log).forEach(this::say);
    }
    try (Stream<Path> files = Files.list(work)) {
      return files.filter(f -> f.getFileName().toString().matches(wanted.packaged + "_.*[.]deb")).findAny();
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
    out.println("[" + wanted.label + "] " + line);
  }

  /** Why it is not there. */
  private static final class Refusal extends Exception {
    private static final long serialVersionUID = 1;

    Refusal(String message) {
      super(message);
    }
  }
}
