package hingetone.handout;

import static hingetone.handout.NotationFile.elements;
import static hingetone.handout.NotationFile.parsed;
import static hingetone.handout.NotationFile.schema;
import static hingetone.handout.NotationFile.textOf;
import static hingetone.handout.NotationFile.validate;
import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.hearing.Alignment;
import hingetone.hearing.HeardNote;
import hingetone.hearing.HeardNote.Point;
import hingetone.hearing.Technique;
import hingetone.hearing.Transcription;
import hingetone.hearing.Transcription.Placed;
import hingetone.neck.Fretboard;
import hingetone.neck.Spot;
import hingetone.neck.Tuning;
import hingetone.print.HeardBars;
import hingetone.print.ReviewedBars;
import hingetone.review.Evening;
import hingetone.review.Review;
import hingetone.text.reading.Source;
import hingetone.time.Beats;
import hingetone.time.Position;
import hingetone.time.TempoMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

/** Without a chart a quarter note lasts half a second. */
class HeardSheetTest {
  private static final Fretboard NECK = Fretboard.of(Tuning.STANDARD, 0);

  @Test
  void every_technique_is_written_by_an_element_of_its_own_and_the_file_is_valid()
      throws Exception {
    String text =
        xml(
            note(0, 0.5, 62, 62, Technique.PLAIN),
            note(0.5, 1, 62, 64, Technique.BEND),
            note(1, 1.5, 62, 62.5, Technique.CURL),
            note(1.5, 2, 64, 62, Technique.PREBEND),
            note(2, 2.5, 62, 62, Technique.RELEASE),
            note(2.5, 3, 65, 65, Technique.LEGATO),
            note(3, 3.5, 64, 64, Technique.LEGATO),
            note(3.5, 4, 64, 67, Technique.SLIDE),
            note(4.5, 5.5, 60, 62, Technique.SLIDE));
    validate(schema(), text);
    List<Element> notes = elements(tab(text), "note");
    assertThat(signs(notes.get(0))).isEmpty();
    assertThat(signs(notes.get(1))).containsExactly("bend-alter 2");
    assertThat(signs(notes.get(2))).containsExactly("bend-alter 0.5");
    assertThat(signs(notes.get(3)))
        .containsExactly("bend-alter 2", "pre-bend", "bend-alter -2", "release");
    assertThat(signs(notes.get(4)))
        .containsExactly("bend-alter 2", "bend-alter -2", "release", "hammer-on start");
    assertThat(signs(notes.get(5))).containsExactly("hammer-on stop", "pull-off start");
    assertThat(signs(notes.get(6))).containsExactly("slide start", "pull-off stop");
    assertThat(signs(notes.get(7))).containsExactly("slide stop");
    assertThat(elements(notes.get(8), "rest")).hasSize(1);
    assertThat(signs(notes.get(9))).containsExactly("grace", "slide start");
    assertThat(textOf(notes.get(9), "fret")).isEqualTo("1");
    assertThat(signs(notes.get(10))).containsExactly("slide stop");
  }

  @Test
  void a_reviewed_take_has_its_bends_chords_sections_and_the_names_of_its_phrases()
      throws Exception {
    Review review = Evening.bent();
    HeardBars bars = ReviewedBars.of(review).bars();
    String text = MusicXml.of("Wet slate", NECK, bars, Map.of(Position.of(0, 4), "phrase 1"));
    validate(schema(), text);
    List<Element> notes =
        elements(tab(text), "note").stream().filter(n -> elements(n, "rest").isEmpty()).toList();
    assertThat(signs(notes.get(0))).containsExactly("bend-alter 2");
    assertThat(signs(notes.get(1)))
        .containsExactly("bend-alter 2", "pre-bend", "bend-alter -2", "release");
    assertThat(textOf(notes.get(0), "string")).isEqualTo("3");
    assertThat(text).contains("<words>phrase 1<", "<rehearsal>high<", "<root-step>C<");
  }

  @Test
  void vibrato_waves_from_the_first_of_tied_notes_to_the_last() throws Exception {
    HeardNote plain = note(0, 4.5, 62, 62, Technique.PLAIN);
    HeardNote swinging =
        new HeardNote(0, 4.5, -20, 62, 62, Technique.PLAIN, true, plain.curve(), 0.9);
    String text = xml(swinging);
    validate(schema(), text);
    List<String> waves =
        elements(tab(text), "wavy-line").stream().map(wave -> wave.getAttribute("type")).toList();
    assertThat(waves).containsExactly("start", "continue", "continue", "stop");
  }

  @Test
  void lengths_fill_bars_and_short_silences_are_no_rests() throws Exception {
    String text =
        xml(
            note(3, 3.4, 62, 62, Technique.PLAIN),
            note(3.51, 3.7, 64, 64, Technique.PLAIN),
            note(3.76, 3.98, 65, 65, Technique.PLAIN),
            note(4.02, 4.4, 67, 67, Technique.PLAIN));
    List<Element> notes = elements(tab(text), "note");
    assertThat(notes.stream().map(n -> textOf(n, "type")).toList())
        .containsExactly("quarter", "eighth", "eighth", "quarter", "quarter");
    assertThat(elements(tab(text), "measure")).hasSize(1);
    assertThat(elements(notation(text), "per-minute").get(0).getTextContent()).isEqualTo("120");
    assertThat(elements(notation(text), "harmony")).isEmpty();
    assertThat(elements(notation(text), "rehearsal")).isEmpty();
  }

  @Test
  void notes_faster_than_sixteenths_keep_apart() throws Exception {
    HeardNote[] notes = new HeardNote[12];
    for (int i = 0; i < notes.length; i++) {
      notes[i] = note(0.09 * i, 0.09 * i + 0.09, 62 + i % 3, 62 + i % 3, Technique.PLAIN);
    }
    String text = xml(notes);
    validate(schema(), text);
    assertThat(elements(tab(text), "chord")).isEmpty();
    long struck =
        elements(tab(text), "note").stream()
            .filter(note -> !elements(note, "fret").isEmpty())
            .filter(
                note ->
                    elements(note, "tie").stream()
                        .noneMatch(tie -> tie.getAttribute("type").equals("stop")))
            .count();
    assertThat(struck).isEqualTo(notes.length);
  }

  @Test
  void with_a_chart_its_bars_keys_tempo_and_chords_are_written() throws Exception {
    String yaml =
        "title: Slip\ntempo: 90\nmeter: 6/8\nsections:\n  a:\n    key: F minor\n    bars: |\n"
            + "      | Fm7 | Bbm7 |\n  b:\n    key: G major\n    bars: |\n      | G | C/E |\n";
    Chart chart = ChartReader.read(new Source("slip.yaml", yaml)).value().orElseThrow();
    // Ninety dotted quarters a minute: a bar lasts 4/3 seconds.
    double bar = 4.0 / 3;
    Transcription heard =
        written(
            note(1 - bar / 2, 1, 67, 67, Technique.PLAIN),
            note(1, 1 + bar, 68, 68, Technique.PLAIN),
            note(1 + 2 * bar, 1 + 3 * bar, 66, 66, Technique.PLAIN));
    TempoMap tempos = TempoMap.of(Beats.of(135));
    Alignment alignment =
        Alignment.at(1, tempos, heard.notes().stream().map(Placed::note).toList());
    String text = MusicXml.of("slip.wav", NECK, HeardBars.of(Form.of(chart), alignment, heard));
    validate(schema(), text);
    Element notation = notation(text);
    List<Element> bars = elements(notation, "measure");
    assertThat(bars.stream().map(b -> b.getAttribute("number")).toList())
        .containsExactly("0", "1", "2", "3");
    assertThat(elements(bars.get(0), "fifths").get(0).getTextContent()).isEqualTo("-4");
    assertThat(elements(bars.get(3), "fifths").get(0).getTextContent()).isEqualTo("1");
    assertThat(pitchOf(bars.get(1))).isEqualTo("A-14");
    assertThat(pitchOf(bars.get(3))).isEqualTo("F14");
    assertThat(elements(notation, "harmony")).hasSize(3);
    assertThat(elements(notation, "beat-type").get(0).getTextContent()).isEqualTo("8");
  }

  @Test
  void after_two_strings_at_once_no_note_is_joined_and_every_join_that_begins_ends()
      throws Exception {
    String text =
        xml(
            note(0, 0.5, 62, 62, Technique.PLAIN),
            note(0, 0.5, 66, 66, Technique.PLAIN),
            note(0.5, 1, 67, 67, Technique.LEGATO),
            note(1, 1.5, 65, 65, Technique.LEGATO));
    validate(schema(), text);
    List<Element> notes = elements(tab(text), "note");
    assertThat(signs(notes.get(0))).isEmpty();
    assertThat(signs(notes.get(1))).isEmpty();
    assertThat(signs(notes.get(2))).containsExactly("pull-off start");
    assertThat(signs(notes.get(3))).containsExactly("pull-off stop");
  }

  @Test
  void nothing_heard_is_a_bar_of_rest() throws Exception {
    String text = xml();
    validate(schema(), text);
    assertThat(elements(notation(text), "measure")).hasSize(1);
    assertThat(elements(notation(text), "pitch")).isEmpty();
  }

  private static String pitchOf(Element bar) {
    return elements(bar, "pitch").get(0).getTextContent().replaceAll("\\s", "");
  }

  private static HeardNote note(
      double at, double end, double struck, double reached, Technique technique) {
    double top = technique == Technique.RELEASE ? struck + 2 : reached;
    List<Point> curve = List.of(new Point(at, struck), new Point(at + 0.1, top));
    return new HeardNote(at, end, -20, struck, reached, technique, false, curve, 0.9);
  }

  private static Transcription written(HeardNote... notes) {
    List<Placed> placed = new ArrayList<>();
    for (HeardNote note : notes) {
      placed.add(new Placed(note, Optional.of(new Spot(2, note.fretted() - 59))));
    }
    return new Transcription(10, 0, placed, List.of());
  }

  private static String xml(HeardNote... notes) {
    return MusicXml.of("line.wav", NECK, HeardBars.withoutChart(written(notes)));
  }

  private static Element notation(String text) throws Exception {
    return elements(parsed(text).getDocumentElement(), "part").get(0);
  }

  private static Element tab(String text) throws Exception {
    return elements(parsed(text).getDocumentElement(), "part").get(1);
  }

  /** What is said of how a note is played, in the file's order. */
  private static List<String> signs(Element note) {
    List<String> signs = new ArrayList<>();
    for (Element element : elements(note, "*")) {
      switch (element.getTagName()) {
        case "grace", "pre-bend", "release" -> signs.add(element.getTagName());
        case "bend-alter" -> signs.add("bend-alter " + element.getTextContent());
        case "hammer-on", "pull-off", "slide" ->
            signs.add(element.getTagName() + " " + element.getAttribute("type"));
        default -> {}
      }
    }
    return signs;
  }
}
