package hingetone.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OutputCharsetTest {
  /** Names of locales as POSIX.1-2017, 8.2 writes them: language_territory.codeset@modifier. */
  @ParameterizedTest
  @CsvSource({
    "LANG=de_DE.UTF-8, US-ASCII, UTF-8",
    "LANG=en_US.utf8, US-ASCII, UTF-8",
    "LANG=C.UTF-8, US-ASCII, UTF-8",
    "LANG=fr_FR.ISO-8859-1, US-ASCII, ISO-8859-1",
    "LANG=fr_FR.ISO-8859-15@euro, US-ASCII, ISO-8859-15",
    "LANG=ja_JP.eucJP, US-ASCII, EUC-JP",
    "LANG=C, UTF-8, US-ASCII",
    "LANG=POSIX, UTF-8, US-ASCII",
    "LANG=de_DE, ISO-8859-1, ISO-8859-1",
    "LANG=de_DE.no-such-set, ISO-8859-1, ISO-8859-1",
    "LANG=, US-ASCII, US-ASCII",
    "LANG=, windows-1252, windows-1252",
    "LC_ALL=C LANG=de_DE.UTF-8, UTF-8, US-ASCII",
    "LC_ALL= LC_CTYPE=C.UTF-8 LANG=C, US-ASCII, UTF-8",
  })
  void the_first_locale_that_is_set_decides_then_java(String variables, String java, String set) {
    Map<String, String> environment = new HashMap<>();
    for (String variable : variables.split(" ")) {
      environment.put(variable.replaceFirst("=.*", ""), variable.replaceFirst(".*=", ""));
    }
    Map<String, String> properties = Map.of("native.encoding", java);
    assertThat(OutputCharset.of(environment, properties::get)).hasToString(set);
  }

  @ParameterizedTest
  @CsvSource({"UTF-8, cp850", "cp850, cp1252"})
  void a_console_has_its_own_where_there_are_no_locales(String console, String system) {
    Map<String, String> properties =
        Map.of("sun.stdout.encoding", console, "native.encoding", system);
    assertThat(OutputCharset.of(Map.of(), properties::get).aliases())
        .contains(console.replace("UTF-8", "UTF8"));
  }
}
