package hingetone.hostile;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.phrase.PhraseReader;
import hingetone.phrase.Statement;
import hingetone.text.OddFiles;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import hingetone.text.reading.TextFile;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Files that nobody meant as charts or phrases, and charts that nobody meant to be so large. */
@Timeout(20)
class HostileInputTest {
  private static final String HEAD = "sections:\n  low:\n    key: C minor\n    bars: |\n";

  @TempDir Path folder;

  private static String message(Reading<?> reading) {
    assertThat(reading.value()).isEmpty();
    String report = reading.problems().get(0).report();
    assertThat(report).doesNotContain("Exception").doesNotContain("\u001b");
    return reading.problems().get(0).message();
  }

  private String file(byte[] bytes) throws IOException {
    return message(
        ChartReader.readFile(Files.write(folder.resolve("chart.yaml"), bytes).toString()));
  }

  private String file(String text) throws IOException {
    return file(text.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void ten_thousand_bars_are_a_long_chart_and_nothing_worse() {
    String bars = "      | Cm7 | F7 | Cm7 / / Bb | Dm7b5 G7 |\n".repeat(2500);
    Chart chart = ChartReader.read(new Source("long", HEAD + bars)).value().orElseThrow();
    assertThat(Form.of(chart).bars()).hasSize(10_000);
  }

  @Test
  void more_bars_than_anybody_plays_are_refused() {
    String bars = "      |: Cm7 | F7 :| x999\n".repeat(20);
    assertThat(message(ChartReader.read(new Source("long", HEAD + bars))))
        .contains("more than 20000 bars");
  }

  @Test
  void a_line_of_a_megabyte_and_a_file_of_more_are_refused() throws IOException {
    assertThat(file("title: " + "x".repeat(1_000_000))).contains("a line of 1000007 characters");
    assertThat(file("x\n".repeat(600_000))).isEqualTo("more than 1 MB");
    Path huge = OddFiles.huge(folder.resolve("huge.yaml"));
    assertThat(message(ChartReader.readFile(huge.toString()))).isEqualTo("more than 1 MB");
  }

  @Test
  void a_bomb_of_aliases_and_a_well_of_brackets_are_refused() throws IOException {
    StringBuilder bomb = new StringBuilder("a0: &a0 [x, x]\n");
    for (int i = 1; i < 40; i++) {
      bomb.append("a%d: &a%d [*a%d, *a%d]\n".formatted(i, i, i - 1, i - 1));
    }
    assertThat(file(bomb.toString())).contains("anchor");
    assertThat(file("title: " + "[".repeat(9_000))).contains("nested more than 32 deep");
    assertThat(file("- ".repeat(4_000) + "x")).contains("nested more than 32 deep");
  }

  @Test
  void what_is_no_text_is_named_for_what_it_is() throws IOException {
    assertThat(file(new byte[] {'M', 'T', 'h', 'd', 0, 0, 0, 6})).contains("not a text file");
    assertThat(file("title: caf\u00e9\n".getBytes(StandardCharsets.ISO_8859_1)))
        .contains("line 1 is not UTF-8");
    assertThat(file("\uFEFFtitle: x\n".getBytes(StandardCharsets.UTF_16LE))).contains("UTF-16");
    assertThat(file("\uFEFFtitle: x\n".getBytes(StandardCharsets.UTF_16BE))).contains("UTF-16");
    assertThat(file("")).contains("nothing in it");
    assertThat(file(" \n\n")).contains("nothing in it");
  }

  @Test
  void windows_line_ends_and_a_byte_order_mark_do_no_harm() throws IOException {
    String chart = "\uFEFF" + (HEAD + "      | Cm7 | F7 |\n").replace("\n", "\r\n");
    Path path = Files.writeString(folder.resolve("windows.yaml"), chart);
    assertThat(ChartReader.readFile(path.toString()).value()).isPresent();
  }

  @Test
  void a_folder_and_a_missing_file_are_told_apart() {
    assertThat(message(ChartReader.readFile(folder.toString()))).isEqualTo("this is a folder");
    assertThat(message(ChartReader.readFile(folder.resolve("no.yaml").toString())))
        .isEqualTo("there is no such file");
    assertThat(message(ChartReader.readFile("a\0b"))).isEqualTo("this is no file name");
  }

  @Test
  void a_pipe_in_the_file_system_is_not_waited_for() throws Exception {
    Path pipe = OddFiles.pipe(folder.resolve("pipe"));
    assertThat(message(ChartReader.readFile(pipe.toString()))).isEqualTo("this is no regular file");
  }

  @Test
  void a_stream_that_breaks_off_and_one_that_never_ends_are_answered() {
    InputStream breaks =
        new InputStream() {
          private int given;

          @Override
          public int read() throws IOException {
            if (given++ > 100) {
              throw new IOException("the disk is gone");
            }
            return 'x';
          }
        };
    assertThat(message(TextFile.read("broken", breaks))).isEqualTo("this cannot be read");
    InputStream endless =
        new InputStream() {
          @Override
          public int read() {
            return 'x';
          }
        };
    assertThat(message(TextFile.read("endless", endless))).isEqualTo("more than 1 MB");
  }

  @Test
  void a_chart_cut_off_at_any_place_is_read_or_reported() {
    String chart =
        HEAD + "      | Cm7 | F7 / / Bb |\n    phrases: statement 1, reply 1\nform: low low\n";
    for (int end = 0; end <= chart.length(); end++) {
      InputStream cut =
          new ByteArrayInputStream(chart.substring(0, end).getBytes(StandardCharsets.UTF_8));
      Reading<Chart> reading = TextFile.read("cut", cut).then(ChartReader::read);
      assertThat(reading.value().isPresent()).isEqualTo(reading.problems().isEmpty());
    }
  }

  private static final String PHRASES = "key: C minor\nstatements:\n";

  private static Reading<List<Statement>> phrases(String text) {
    InputStream in = new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
    return TextFile.read("phrases.yaml", in).then(PhraseReader::read);
  }

  @Test
  void a_thousand_statements_are_read_and_one_more_is_refused() {
    StringBuilder text = new StringBuilder(PHRASES);
    for (int i = 1; i <= 1000; i++) {
      text.append("  s%d: {notes: G4i C5i | Eb5q C5q}\n".formatted(i));
    }
    assertThat(phrases(text.toString()).value().orElseThrow()).hasSize(1000);
    text.append("  one-more: {notes: G4i C5i | Eb5q C5q}\n");
    assertThat(message(phrases(text.toString()))).isEqualTo("too many statements");
  }

  @Test
  void statements_without_end_without_sense_or_without_bottom_are_refused() {
    String notes = PHRASES + "  s: {notes: ";
    assertThat(message(phrases(notes + "A4i | " + "C5q ".repeat(20_000) + "}\n"))).isNotBlank();
    assertThat(message(phrases(notes + "| ".repeat(5_000) + "}\n"))).isNotBlank();
    assertThat(message(phrases(notes + "A4i | || | C5q}\n"))).isNotBlank();
    assertThat(message(phrases(notes + "A4i | C5w" + "w".repeat(5_000) + "}\n"))).isNotBlank();
    assertThat(message(phrases(PHRASES + "  s: " + "{s: ".repeat(40)))).isNotBlank();
    assertThat(message(phrases(PHRASES + "  s: &s {notes: *s}\n"))).isNotBlank();
    assertThat(message(phrases(notes + "\"A4i\0 | C5q\"}\n"))).isNotBlank();
    assertThat(message(phrases("MThd\0\0\0\6"))).contains("not a text file");
    assertThat(message(phrases(""))).contains("nothing in it");
    assertThat(message(phrases("statements: []"))).isNotBlank();
  }

  @Test
  void a_file_of_phrases_cut_off_at_any_place_is_read_or_reported() throws IOException {
    String whole = Files.readString(Path.of("src/main/resources/phrases/odd.yaml"));
    for (int end = 0; end <= whole.length(); end++) {
      Reading<List<Statement>> reading = phrases(whole.substring(0, end));
      assertThat(reading.value().isPresent()).isEqualTo(reading.problems().isEmpty());
    }
  }
}
