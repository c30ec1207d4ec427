package hingetone;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.command.Main;
import java.io.IOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.Method;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The program that the build calls for the libraries' licences. */
class CheckLicencesTest {
  private static final Path LICENCES = Path.of("src/build/licences");

  @TempDir static Path classes;
  private static Constructor<?> check;
  private static Method faults;

  @TempDir Path lib;

  @BeforeAll
  static void compile() throws Exception {
    Class<?> program = BuildProgram.compiled("CheckLicences", classes);
    check = program.getDeclaredConstructor(Path.class);
    check.setAccessible(true);
    faults = program.getDeclaredMethod("faults");
    faults.setAccessible(true);
  }

  @BeforeEach
  void write() throws IOException {
    write("alder-1.0.jar", "beech-core-2.13.1.jar", "licences/MIT.txt", "licences/LICENSE.txt");
    Files.writeString(
        lib.resolve("licences/NOTICE.txt"),
        "this program\n\nand its libraries\n\nalder, beech-core\nMIT.txt\nby somebody\n");
  }

  private void write(String... names) throws IOException {
    for (String name : names) {
      Files.createDirectories(lib.resolve(name).getParent());
      Files.writeString(lib.resolve(name), name);
    }
  }

  private List<?> faults() throws Exception {
    return (List<?>) faults.invoke(check.newInstance(lib));
  }

  @Test
  void a_folder_where_every_jar_has_its_text_is_right() throws Exception {
    assertThat(faults()).isEmpty();
  }

  @Test
  void a_jar_without_a_word_and_a_text_that_is_missing_or_empty_are_faults() throws Exception {
    write("cedar-nut-3.jar", "licences/BSD.txt");
    Files.delete(lib.resolve("alder-1.0.jar"));
    Files.writeString(lib.resolve("licences/MIT.txt"), "");
    assertThat(faults().stream().map(Object::toString))
        .containsExactlyInAnyOrder(
            "cedar-nut ships and does not stand in NOTICE.txt",
            "alder stands in NOTICE.txt and does not ship",
            "the text MIT.txt is not there",
            "the text BSD.txt goes with no jar");
  }

  @Test
  void the_programs_own_licence_stands_in_its_jar() throws Exception {
    Path program = Path.of(Main.class.getProtectionDomain().getCodeSource().getLocation().toURI());
    for (String name : List.of("LICENSE.txt", "NOTICE.txt")) {
      assertThat(program.resolve("META-INF").resolve(name))
          .hasSameTextualContentAs(LICENCES.resolve(name));
    }
    assertThat(LICENCES.resolve("LICENSE.txt")).content().contains("Apache License", "Version 2.0");
  }
}
