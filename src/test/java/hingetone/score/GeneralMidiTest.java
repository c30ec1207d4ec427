package hingetone.score;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Checked against General MIDI level 1 (RP-003) as listed in Debian's libmidi-perl. */
class GeneralMidiTest {
  private static final Path REFERENCE = Path.of("src/test/resources/reference");

  @Test
  void every_program_has_its_number() throws IOException {
    List<String> lines = Files.readAllLines(REFERENCE.resolve("gm-programs.tsv"));
    assertThat(lines).hasSize(128);
    for (String line : lines) {
      String[] fields = line.split("\t");
      assertThat(GeneralMidi.program(fields[1])).as(line).hasValue(Integer.parseInt(fields[0]));
    }
  }

  @Test
  void every_percussion_instrument_has_its_key() throws IOException {
    List<String> lines = Files.readAllLines(REFERENCE.resolve("gm-percussion.tsv"));
    assertThat(lines).hasSize(47);
    for (String line : lines) {
      String[] fields = line.split("\t");
      assertThat(GeneralMidi.percussionKey(fields[1]))
          .as(line)
          .hasValue(Integer.parseInt(fields[0]));
    }
  }

  @Test
  void case_and_punctuation_do_not_matter() {
    assertThat(GeneralMidi.program("electric guitar clean")).hasValue(27);
    assertThat(GeneralMidi.percussionKey("closed hi hat")).hasValue(42);
    assertThat(GeneralMidi.program("banjolele")).isEmpty();
  }
}
