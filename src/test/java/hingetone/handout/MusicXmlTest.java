package hingetone.handout;

import static hingetone.handout.NotationFile.elements;
import static hingetone.handout.NotationFile.parsed;
import static hingetone.handout.NotationFile.schema;
import static hingetone.handout.NotationFile.textOf;
import static hingetone.handout.NotationFile.validate;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.ground.Ground;
import hingetone.neck.Fretboard;
import hingetone.neck.Tuning;
import hingetone.phrase.Tone;
import hingetone.phrase.maker.PhraseMaker;
import hingetone.plan.Plan;
import hingetone.plan.Prompt;
import hingetone.text.reading.Source;
import hingetone.theory.Chord;
import hingetone.theory.ChordQuality;
import hingetone.theory.NoteName;
import hingetone.theory.Pitch;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.xml.validation.Schema;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

class MusicXmlTest {
  private static Chart chart(Path file) {
    return ChartReader.readFile(file.toString()).value().orElseThrow();
  }

  private static List<Path> demoCharts() throws Exception {
    try (Stream<Path> files = Files.list(Path.of("demo-charts"))) {
      return files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList();
    }
  }

  private static PhraseMaker maker(Chart chart, Plan plan) {
    Fretboard neck = Fretboard.of(chart.tuning(), chart.capo());
    return PhraseMaker.of(plan, Ground.of(plan.form(), neck), chart.seed());
  }

  private static String xml(Chart chart, int laps) {
    Plan plan = Plan.of(chart, Form.of(chart));
    return MusicXml.of(chart, plan, maker(chart, plan), laps);
  }

  @Test
  void every_demo_chart_is_valid_by_the_schema_of_4_0() throws Exception {
    Schema schema = schema();
    for (Path file : demoCharts()) {
      for (long seed = 1; seed <= 5; seed++) {
        validate(schema, xml(chart(file).withSeed(seed), 2));
      }
      validate(schema, xml(chart(file).withTuning(Tuning.parse("D A D G A D").orElseThrow()), 1));
      validate(schema, xml(chart(file).withCapo(2).withCountIn(0), 1));
    }
  }

  @Test
  void a_file_with_an_element_out_of_place_is_not_valid() throws Exception {
    String broken =
        xml(chart(demoCharts().get(0)), 1).replaceFirst("<step>", "<octave>4</octave><step>");
    Schema schema = schema();
    assertThatThrownBy(() -> validate(schema, broken)).isInstanceOf(SAXException.class);
  }

  @Test
  void odd_meters_and_a_change_of_meter_are_valid_and_fill_their_bars() throws Exception {
    String yaml =
        """
        title: "Odd & <even>"
        sections:
          a: { key: F minor, meter: 7/8, bars: "| Fm7 | Bbm7 | Fm7 | C7#9 |" }
          b: { key: G blues, meter: 12/8, bars: "| G7 | C7 | G7 | D7 |" }
          c: { key: Bb major, meter: 5/4, bars: "| Bbmaj7 | N.C. | F/A |" }
        """;
    String block =
        yaml.replaceAll("bars: \"(.*?)\" }", "bars: X$1X }")
            .replace("{ ", "\n    ")
            .replace(", meter", "\n    meter")
            .replace(", bars: X", "\n    bars: |\n      ")
            .replace("X }", "");
    Chart chart = ChartReader.read(new Source("odd", block)).value().orElseThrow();
    Schema schema = schema();
    for (long seed = 1; seed <= 10; seed++) {
      String text = xml(chart.withSeed(seed), 2);
      validate(schema, text);
      everyBarIsFull(text, Form.of(chart), 1);
    }
  }

  @Test
  void every_bar_of_both_parts_is_as_long_as_its_meter_says() throws Exception {
    for (Path file : demoCharts()) {
      Chart chart = chart(file);
      everyBarIsFull(xml(chart, 2), Form.of(chart), chart.countIn());
    }
  }

  @Test
  void every_chord_of_the_chart_has_its_symbol_once() throws Exception {
    for (Path file : demoCharts()) {
      Chart chart = chart(file);
      int chords =
          Form.of(chart).bars().stream().mapToInt(bar -> bar.chords().chords().size()).sum();
      Element score = parsed(xml(chart, 2)).getDocumentElement();
      assertThat(elements(score, "harmony")).as("%s", file).hasSize(2 * chords);
    }
  }

  private static void everyBarIsFull(String text, Form form, int countIn) throws Exception {
    Document document = parsed(text);
    NodeList measures = document.getElementsByTagName("measure");
    int bars = measures.getLength() / 2;
    for (int i = 0; i < measures.getLength(); i++) {
      int number = i % bars + 1 - countIn;
      Element measure = (Element) measures.item(i);
      assertThat(measure.getAttribute("number")).isEqualTo(Integer.toString(number));
      long sum = 0;
      for (Element note : elements(measure, "note")) {
        if (elements(note, "chord").isEmpty()) {
          sum += Long.parseLong(textOf(note, "duration"));
        }
      }
      long bar = form.bar(number).meter().barLength().toUnits(NoteSign.DIVISIONS);
      assertThat(sum).as("bar %s", number).isEqualTo(bar);
    }
  }

  @Test
  void the_notes_of_both_parts_are_the_phrases_and_the_tab_sounds_like_the_notation()
      throws Exception {
    for (Path file : demoCharts()) {
      Chart chart = chart(file);
      Plan plan = Plan.of(chart, Form.of(chart));
      PhraseMaker maker = maker(chart, plan);
      List<Integer> expected = new ArrayList<>();
      for (Prompt prompt : plan.promptsOfLap(1)) {
        if (!prompt.isRest()) {
          for (Tone tone : maker.make(prompt).phrase().tones()) {
            expected.add(tone.pitch().midi());
          }
        }
      }
      List<Integer> notation = new ArrayList<>();
      List<Integer> tab = new ArrayList<>();
      for (Element note : elements(parsed(xml(chart, 1)).getDocumentElement(), "note")) {
        boolean struck =
            elements(note, "rest").isEmpty()
                && elements(note, "tie").stream()
                    .noneMatch(tie -> tie.getAttribute("type").equals("stop"));
        boolean isTab = !elements(note, "fret").isEmpty();
        if (struck) {
          (isTab ? tab : notation).add(isTab ? fretted(chart, note) : pitch(note));
        }
      }
      assertThat(notation).as("%s", file).containsExactlyInAnyOrderElementsOf(expected);
      assertThat(tab).as("%s", file).isEqualTo(notation);
    }
  }

  private static int pitch(Element note) {
    String alter = elements(note, "alter").isEmpty() ? "0" : textOf(note, "alter");
    String name = textOf(note, "step") + "#".repeat(Math.max(0, Integer.parseInt(alter)));
    Pitch natural = Pitch.parse(name + textOf(note, "octave")).orElseThrow();
    return natural.midi() + Math.min(0, Integer.parseInt(alter));
  }

  /** By the MusicXML reference string 1 is the highest, fret 0 the open string. */
  private static int fretted(Chart chart, Element note) {
    List<Pitch> strings = chart.tuning().strings();
    int string = Integer.parseInt(textOf(note, "string"));
    int fret = Integer.parseInt(textOf(note, "fret"));
    return strings.get(strings.size() - string).midi() + chart.capo() + fret;
  }

  @Test
  void every_chord_quality_is_a_kind_with_the_degrees_that_make_it_whole() {
    for (ChordQuality quality : ChordQuality.ALL) {
      Chord chord = new Chord(NoteName.parse("C").orElseThrow(), quality, Optional.empty());
      HarmonyKind kind = HarmonyKind.of(chord);
      List<String> degrees =
          new ArrayList<>(
              kind.intervals().stream().map(i -> i.number() + ":" + i.alteration()).toList());
      for (HarmonyKind.Degree degree : kind.differences(chord)) {
        List<String> same =
            degrees.stream().filter(d -> d.startsWith(degree.value() + ":")).toList();
        switch (degree.type()) {
          case "subtract" -> degrees.remove(same.get(0));
          case "alter" -> {
            int from = Integer.parseInt(same.get(0).split(":")[1]);
            degrees.remove(same.get(0));
            degrees.add(degree.value() + ":" + (from + degree.alter()));
          }
          default -> {
            int dominant = degree.value() == 7 ? -1 : 0;
            degrees.add(degree.value() + ":" + (dominant + degree.alter()));
          }
        }
      }
      assertThat(degrees)
          .as("%s as %s", quality.suffix(), kind.name())
          .containsExactlyInAnyOrderElementsOf(
              quality.intervals().stream().map(i -> i.number() + ":" + i.alteration()).toList());
    }
  }
}
