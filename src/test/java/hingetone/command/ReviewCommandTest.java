package hingetone.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The take is the one beside the tests, composed for them. */
class ReviewCommandTest extends ProgramRun {
  private static final String TAKE = "src/test/resources/takes/evening.mid";

  @TempDir Path folder;

  private Path file(String name) {
    return folder.resolve(name);
  }

  @Test
  void marks_are_written_as_a_start_and_read_again() throws IOException {
    String marks = file("marks.yaml").toString();
    assertThat(run("review", TAKE, "--marks-out", marks)).isZero();
    assertThat(run("review", TAKE, "--marks-out", marks)).isZero();

    String edited = Files.readString(file("marks.yaml")).replaceFirst("role: \\w+", "role: other");
    Files.writeString(file("marks.yaml"), edited);
    assertThat(run("review", TAKE, "--marks-out", marks)).isEqualTo(2);
    assertThat(err.toString()).contains("was changed after hingetone wrote it");
    assertThat(run("review", TAKE, "--marks", marks)).isZero();
    assertThat(out.toString()).contains("a line in between");

    Files.writeString(file("marks.yaml"), "phrases:\n  - from: bar 99 beat 1\n");
    assertThat(run("review", TAKE, "--marks", marks)).isEqualTo(2);
    assertThat(err.toString()).contains("marks.yaml:2:11").contains("no note begins");
  }

  @Test
  void what_it_writes_as_midi_is_reviewed_again_in_the_same_bars_and_phrases() throws IOException {
    String copy = file("copy.mid").toString();
    assertThat(run("review", TAKE, "-o", copy)).isZero();
    String chart = TAKE.replace(".mid", ".yaml");
    Path first = file("first.yaml");
    Path again = file("again.yaml");
    assertThat(run("review", TAKE, "--marks-out", first.toString())).isZero();
    assertThat(run("review", copy, "--chart", chart, "--marks-out", again.toString())).isZero();
    assertThat(Files.readString(again)).contains("role: reply").isEqualTo(Files.readString(first));
  }

  @Test
  void the_page_has_the_story_the_density_and_each_phrase_as_tab() throws IOException {
    String page = file("page.txt").toString();
    assertThat(run("review", TAKE, "-o", page)).isZero();
    assertThat(Files.readString(file("page.txt")))
        .startsWith("Wet slate\n\nWhere phrases begin")
        .contains("\n1  Bars 0 to 2: a statement that lands on C")
        .contains("bar      0     1     2     3     4\n", "notes    ...2  1.21  ...2  112.  ..44\n")
        .contains("On the neck: frets 6 to 8, pattern 5 from its b7, upper strings.\n")
        .contains("B3   |-6---8-----|-----------8-----6-\n");
    assertThat(run("review", TAKE, "-o", file("page.wav").toString())).isEqualTo(2);
  }

  @Test
  void a_phrase_that_is_kept_is_known_to_plan_and_never_written_over() throws IOException {
    Path file = Folders.data().resolve("phrases/kept.yaml");
    Files.deleteIfExists(file);
    try {
      assertThat(run("review", TAKE, "--keep", "1=slate-song")).isZero();
      assertThat(out.toString()).contains("slate-song, slate-song-ending-2");
      String kept = Files.readString(file);
      assertThat(kept).contains("  # B3   |-6---8-----|", "notes: \"F4i G4i | C5q. Ri Bb4i");
      assertThat(run("review", TAKE, "--keep", "1=slate-song")).isEqualTo(2);
      assertThat(err.toString()).contains("\"slate-song\" stands in").contains("already");
      assertThat(Files.readString(file)).isEqualTo(kept);
      assertThat(run("review", TAKE, "--keep", "2=answer")).isZero();
      assertThat(Files.readString(file)).startsWith(kept).contains("  answer:\n");
      assertThat(run("check", file.toString())).isZero();
      assertThat(Folders.bank().read().value().orElseThrow())
          .anyMatch(statement -> statement.name().equals("slate-song"));
      assertThat(run("plan", TAKE.replace(".mid", ".yaml"))).isZero();
      assertThat(run("review", TAKE, "--keep", "9=none")).isEqualTo(2);
      assertThat(err.toString()).contains("There is no phrase 9: the take has 5.");
      Files.writeString(file, "statements: {\n");
      assertThat(run("review", TAKE, "--keep", "2=other")).isEqualTo(2);
      assertThat(Files.readString(file)).isEqualTo("statements: {\n");
    } finally {
      Files.deleteIfExists(file);
    }
  }

  @Test
  void two_takes_are_compared_in_a_table_a_sentence_each_and_as_json() throws IOException {
    String other = "src/test/resources/takes/morning.mid";
    assertThat(run("review", TAKE, other)).isZero();
    assertThat(out.toString())
        .contains("evening.mid")
        .containsPattern("notes +31 +\\d+")
        .containsPattern("crossings, hold +1 +0")
        .containsPattern("Timing: .*\\RLandings: .*\\RCrossings: .*\\RReturns: ")
        .contains("Crossings: into bar 9 a rest instead of a hold; one as before.");
    out.getBuffer().setLength(0);
    assertThat(run("review", TAKE, other, "--json")).isZero();
    JsonNode answer = new ObjectMapper().readTree(out.toString());
    assertThat(answer.at("/figures/0/notes").asInt()).isEqualTo(31);
    assertThat(answer.at("/crossingsChanged/0").toString())
        .isEqualTo("{\"atBar\":9,\"first\":\"hold\",\"second\":\"rest\"}");
    assertThat(answer.get("story")).hasSize(4);
    assertThat(run("review", TAKE, other, "--keep", "1=one")).isEqualTo(2);
    assertThat(err.toString()).contains("go with one");
  }
}
