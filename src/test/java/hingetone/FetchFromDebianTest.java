package hingetone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.lang.reflect.Constructor;
import java.lang.reflect.Method;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The program that the build calls for JFugue and a bank of sounds: every way in is checked against
 * the hash.
 */
class FetchFromDebianTest {
  private static final String RIGHT = "the jar that the build names";
  private static final String WRONG = "some other jar";
  private static final String AT = "org/jfugue/jfugue/4.0.3/jfugue-4.0.3";

  @TempDir static Path classes;
  private static Constructor<?> fetch;
  private static Method jfugue;
  private static Method bank;
  private static Method run;

  @TempDir Path folder;
  private Path repository;
  private Path installed;
  private String aptGet = "there-is-no-such-command";
  private String said = "";

  @BeforeAll
  static void compile() throws Exception {
    Class<?> program = BuildProgram.compiled("FetchFromDebian", classes);
    Class<?> wanted = program.getClassLoader().loadClass("FetchFromDebian$Wanted");
    jfugue = wanted.getDeclaredMethod("jfugue", Path.class, String.class, Path.class);
    bank = wanted.getDeclaredMethod("bank", Path.class, String.class, Path.class);
    fetch = program.getDeclaredConstructor(wanted, Path.class, String.class, PrintStream.class);
    run = program.getDeclaredMethod("run", String.class);
    List.of(jfugue, bank, fetch, run).forEach(member -> member.setAccessible(true));
  }

  @BeforeEach
  void folders() {
    repository = folder.resolve("repository");
    installed = folder.resolve("system/jfugue-4.0.3.jar");
  }

  private int fetched(String given) throws Exception {
    return fetched(jfugue, given);
  }

  private int fetched(Method what, String given) throws Exception {
    byte[] hash = MessageDigest.getInstance("SHA-256").digest(RIGHT.getBytes());
    ByteArrayOutputStream told = new ByteArrayOutputStream();
    Object wanted = what.invoke(null, repository, HexFormat.of().formatHex(hash), installed);
    Object program =
        fetch.newInstance(wanted, folder.resolve("work"), aptGet, new PrintStream(told));
    int status = (int) run.invoke(program, given);
    said = told.toString();
    return status;
  }

  private Path write(String name, String text) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    return Files.writeString(file, text);
  }

  private Path jar() {
    return repository.resolve(AT + ".jar");
  }

  private void assertThatItIsRefused(String file) {
    assertThat(said)
        .contains(file + " is not the JFugue that this build names.", "sha256 ", "expected ")
        .doesNotContain("Exception");
    assertThat(repository.resolve(AT + ".pom")).doesNotExist();
  }

  @Test
  void a_jar_that_is_given_goes_into_an_empty_repository_and_is_found_there_the_next_time()
      throws Exception {
    Path given = write("given.jar", RIGHT);
    assertThat(fetched(given.toString())).as(said).isZero();
    assertThat(jar()).hasContent(RIGHT);
    assertThat(repository.resolve(AT + ".pom")).content().contains("<version>4.0.3</version>");
    Files.delete(given);
    assertThat(fetched("")).isZero();
    assertThat(said).isEmpty();
  }

  @Test
  void a_given_jar_with_another_hash_is_refused() throws Exception {
    Path given = write("given.jar", WRONG);
    assertThat(fetched(given.toString())).isEqualTo(1);
    assertThatItIsRefused(given.toString());
    assertThat(jar().getParent()).isEmptyDirectory();
  }

  @Test
  void a_jar_in_the_repository_with_another_hash_is_refused_until_it_is_replaced()
      throws Exception {
    write("repository/" + AT + ".jar", WRONG);
    assertThat(fetched("")).isEqualTo(1);
    assertThatItIsRefused(jar().toString());
    assertThat(said).contains("Delete it and build again.");
    assertThat(fetched(write("given.jar", RIGHT).toString())).isZero();
    assertThat(jar()).hasContent(RIGHT);
  }

  @Test
  void the_systems_jar_is_taken_where_its_hash_is_right_and_refused_where_not() throws Exception {
    write("system/jfugue-4.0.3.jar", WRONG);
    assertThat(fetched("")).isEqualTo(1);
    assertThatItIsRefused(installed.toString());
    write("system/jfugue-4.0.3.jar", RIGHT);
    assertThat(fetched("")).as(said).isZero();
    assertThat(jar()).hasContent(RIGHT);
  }

  @Test
  void debians_package_is_unpacked_whether_given_or_downloaded_and_its_jar_checked()
      throws Exception {
    Path right = packaged("right", RIGHT);
    Path wrong = packaged("wrong", WRONG);
    assertThat(fetched(wrong.toString())).isEqualTo(1);
    assertThatItIsRefused("jfugue-4.0.3.jar");
    aptGet = downloading(wrong);
    assertThat(fetched("")).isEqualTo(1);
    assertThatItIsRefused("jfugue-4.0.3.jar");
    aptGet = downloading(right);
    assertThat(fetched("")).as(said).isZero();
    assertThat(jar()).hasContent(RIGHT);
    Files.delete(jar());
    assertThat(fetched(right.toString())).as(said).isZero();
    assertThat(jar()).hasContent(RIGHT);
    assertThat(folder.resolve("work/unpacking")).doesNotExist();
  }

  private Path packaged(String name, String text) throws Exception {
    write(name + "/usr/share/java/jfugue-4.0.3.jar", text);
    write(
        name + "/DEBIAN/control",
        "Package: libjfugue-java\nVersion: 4.0.3-0\nArchitecture: all\n"
            + "Maintainer: nobody <nobody@example.org>\nDescription: for a test\n");
    Path deb = folder.resolve(name + ".deb");
    List<String> build =
        List.of("dpkg-deb", "--build", folder.resolve(name).toString(), deb.toString());
    try {
      assumeTrue(
          new ProcessBuilder(build)
                  .redirectErrorStream(true)
                  .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                  .start()
                  .waitFor()
              == 0);
    } catch (IOException notThere) {
      assumeTrue(false, "dpkg-deb is not there");
    }
    return deb;
  }

  /** A command that does what {@code apt-get download} does, with this package. */
  private String downloading(Path deb) throws IOException {
    Path command = write("apt-get", "#!/bin/sh\ncp " + deb + " libjfugue-java_4.0.3-0_all.deb\n");
    assertThat(command.toFile().setExecutable(true)).isTrue();
    return command.toString();
  }

  @Test
  void where_it_is_nowhere_the_ways_to_get_it_are_told() throws Exception {
    assertThat(fetched("")).isEqualTo(1);
    assertThat(said)
        .contains("sudo apt-get install libjfugue-java", "mvn -Djfugue.jar=")
        .doesNotContain("Exception");
    assertThat(fetched("no-such.jar")).isEqualTo(1);
    assertThat(said).contains("-Djfugue.jar=no-such.jar: there is no such file.");
  }

  @Test
  void a_bank_is_taken_from_the_system_and_kept() throws Exception {
    installed = write("system/sf_GMbank.sf2", RIGHT);
    assertThat(fetched(bank, "")).as(said).isZero();
    Path kept = repository.resolve("hingetone/sounds/sf_GMbank.sf2");
    assertThat(kept).hasContent(RIGHT);
    assertThat(kept.getParent()).isDirectoryContaining("glob:**.sf2");
    Files.delete(installed);
    assertThat(fetched(bank, "")).isZero();
    assertThat(said).isEmpty();
  }

  @Test
  void without_a_bank_the_build_goes_on_and_looks_once() throws Exception {
    installed = write("system/sf_GMbank.sf2", WRONG);
    assertThat(fetched(bank, "")).isZero();
    assertThat(said).contains("is not the bank of sounds that this build names.");
    Files.delete(installed);
    assertThat(fetched(bank, "")).isZero();
    assertThat(said).isEmpty();
    assertThat(repository.resolve("hingetone/sounds/sf_GMbank.sf2")).doesNotExist();
  }

  @Test
  void where_no_bank_is_the_way_to_get_one_is_told() throws Exception {
    assertThat(fetched(bank, "")).isZero();
    assertThat(said).contains("sudo apt-get install csound-soundfont");
  }
}
