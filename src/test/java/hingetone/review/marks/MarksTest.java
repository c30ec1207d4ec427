package hingetone.review.marks;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.neck.PatternNumbers;
import hingetone.review.Evening;
import hingetone.review.Marks;
import hingetone.review.Played;
import hingetone.review.Review;
import hingetone.review.ReviewedPhrase;
import hingetone.review.ReviewedPhrase.Role;
import hingetone.review.Story;
import hingetone.take.PlacedNote;
import hingetone.text.reading.BrokenFiles;
import hingetone.text.reading.Diagnostic;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import hingetone.time.Position;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

class MarksTest {
  private static final BrokenFiles BROKEN = new BrokenFiles("broken-marks", MarksTest::read);

  private static Reading<Marks> read(Source source) {
    try {
      return MarksReader.read(source, Evening.played());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Review marked(String text) throws IOException {
    Reading<Marks> marks = read(new Source("marks.yaml", text));
    assertThat(marks.problems()).extracting(Diagnostic::report).isEmpty();
    return Review.of(
        Evening.played(),
        Evening.chart(),
        marks.value().orElseThrow(),
        PatternNumbers.FROM_THE_TONIC);
  }

  @Test
  void what_the_program_writes_is_read_as_the_same_phrases() throws IOException {
    Review own = Evening.review();
    Review again = marked(MarksText.of(own));

    assertThat(again.phrases()).hasSameSizeAs(own.phrases());
    for (int i = 0; i < own.phrases().size(); i++) {
      ReviewedPhrase one = own.phrases().get(i);
      ReviewedPhrase other = again.phrases().get(i);
      assertThat(other.span().from()).isEqualTo(one.span().from());
      assertThat(other.role()).isEqualTo(one.role());
      assertThat(other.repliesTo()).isEqualTo(one.repliesTo());
      assertThat(other.landing()).isEqualTo(one.landing());
      assertThat(other.roleConfidence()).isEqualTo(1);
    }
    assertThat(MarksText.of(again)).isEqualTo(MarksText.of(own));
  }

  /** Notes at any distance, some together; the bars played once, or a bar twice. */
  @Test
  void every_note_has_a_place_that_leads_back_to_it() throws IOException {
    Random random = new Random(7);
    List<PlacedNote> notes = new ArrayList<>();
    for (double at = 2.3; at < 38; at += 0.03 + random.nextDouble() * 0.8) {
      notes.add(new PlacedNote(at, at + 0.2, 60, 60, 90));
    }
    List<Played.Bar> once = Evening.played().bars();
    List<Played.Bar> twice = new ArrayList<>();
    for (int i = 0; i < once.size(); i++) {
      Played.Bar of = once.get(i < 5 ? i : i - 2);
      twice.add(new Played.Bar(of.number(), of.of(), 0, once.get(i).start()));
    }
    for (List<Played.Bar> bars : List.of(once, twice)) {
      Played played = new Played(bars, notes, Evening.played().tempos());
      for (int i = 0; i < notes.size(); i++) {
        assertThat(MarkPlace.of(played, i, i - 1).note(played, i - 1)).contains(i);
      }
    }
  }

  @Test
  void boundaries_and_roles_are_those_marked_and_remarks_stand_in_the_story() throws IOException {
    Review review =
        marked(
            "remark: it's calm\nphrases:\n  - from: bar 0 beat 4\n    role: other\n"
                + "  - {from: bar 5 beat 1, role: reply, to: 1, remark: louder here}\n");

    assertThat(review.phrases()).hasSize(2);
    assertThat(review.phrases().get(0).role()).isEqualTo(Role.OTHER);
    assertThat(review.phrases().get(1).start()).isEqualTo(Position.of(5, 1));
    assertThat(review.phrases().get(1).repliesTo()).contains(1);
    assertThat(Story.of(review))
        .startsWith("Remark: it's calm")
        .contains("Remark: louder here")
        .noneMatch(line -> line.contains("perhaps"));
    assertThat(MarksText.of(review)).contains("remark: 'it''s calm'\n");
  }

  @Test
  void a_file_of_remarks_alone_leaves_the_phrases_as_they_are() throws IOException {
    assertThat(marked("remark: well done\n").phrases()).isEqualTo(Evening.review().phrases());
  }

  @TestFactory
  Stream<DynamicTest> each_broken_file_gives_its_report() throws IOException {
    return BROKEN.tests();
  }

  @Test
  void the_page_lists_the_keys_that_the_reader_takes_and_its_example_is_read() throws IOException {
    String page = Files.readString(MarksPage.FILE);
    assertThat(page).isEqualTo(MarksPage.withTable(page));
    String example = page.substring(page.indexOf("```yaml\n") + 8, page.indexOf("```\n\n"));
    assertThat(marked(example).phrases()).hasSize(2);
  }

  /** Writes the reports anew. */
  public static void main(String[] args) throws IOException {
    BROKEN.writeReports();
  }
}
