package hingetone.ground.ways;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.ChartBar.Slot;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.ground.Ground;
import hingetone.ground.GroundCharts;
import hingetone.neck.Fretboard;
import hingetone.neck.Shape;
import hingetone.neck.Tuning;
import hingetone.text.reading.Source;
import hingetone.time.Beats;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** How calm the neck is: that a shape stays is what a player asks for, common practice. */
class NeckScalesTest {
  private static final Path CHARTS = Path.of("demo-charts");
  private static final Path ROWS = Path.of("src/test/resources/ground/judged.tsv");

  private static String neck(Ground ground, int bar, int beat) {
    return ground.neckAt(bar, Beats.of(beat)).scale().toString();
  }

  @Test
  void a_chord_of_one_beat_leaves_the_shape() {
    Ground ground = GroundCharts.one("E minor", "Em7 / / B7b9 | Em7 | Am7 / D7 G7 | Em7");
    assertThat(ground.scalesAt(1, Beats.of(4)).get(0).scale()).hasToString("B phrygian dominant");
    for (int bar = 1; bar <= 4; bar++) {
      for (Slot slot : ground.form().bar(bar).chords().chords()) {
        assertThat(ground.neckAt(bar, slot.beat())).isEqualTo(ground.neckAt(1, Beats.ONE));
      }
    }
  }

  @Test
  void a_chord_that_stands_long_enough_has_its_own_shape() {
    Ground ground = GroundCharts.one("Eb major", "Ebmaj7 | % | % | % | Gb7#11 | % | % | % ");
    assertThat(neck(ground, 2, 1)).startsWith("Eb major");
    assertThat(neck(ground, 6, 1)).isEqualTo(ground.scalesAt(5, Beats.ONE).get(0).scale() + "");
    assertThat(neck(ground, 6, 1)).startsWith("Gb lydian");
  }

  @Test
  void a_new_key_has_a_new_shape_at_once() {
    Ground ground =
        GroundCharts.two("C minor", "Cm7", "F# minor", "F#m7", Fretboard.of(Tuning.STANDARD, 0));
    assertThat(neck(ground, 1, 1)).isEqualTo("C minor pentatonic");
    assertThat(neck(ground, 2, 1)).isEqualTo("F# minor pentatonic");
  }

  @Test
  void inside_a_key_no_shape_goes_before_two_bars_and_none_comes_with_a_short_chord()
      throws IOException {
    for (Form form : forms()) {
      Ground ground = Ground.of(form, Fretboard.of(Tuning.STANDARD, 0));
      double changed = 1;
      Shape before = ground.neckAt(1, Beats.ONE);
      for (Form.Bar bar : form.bars()) {
        boolean newKey = !form.bar(Math.max(1, bar.number() - 1)).key().equals(bar.key());
        for (Slot slot : bar.chords().chords()) {
          Shape here = ground.neckAt(bar.number(), slot.beat());
          double at = bar.number() + (slot.beat().toDouble() - 1) / bar.meter().beatsPerBar();
          boolean keyLine = newKey && slot.beat().equals(Beats.ONE);
          if (!here.equals(before) && !keyLine) {
            assertThat(at - changed).as("bar %s of %s", at, form).isGreaterThanOrEqualTo(2);
            assertThat(slot.beats()).isGreaterThanOrEqualTo(Beats.of(2));
          }
          changed = here.equals(before) && !keyLine ? changed : at;
          before = here;
        }
      }
    }
  }

  /** The demo charts, and the judged rows as one section each. */
  private static List<Form> forms() throws IOException {
    List<String> texts = new ArrayList<>();
    try (Stream<Path> files = Files.list(CHARTS)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList()) {
        texts.add(Files.readString(file));
      }
    }
    Files.readAllLines(ROWS).stream()
        .skip(1)
        .map(row -> row.split("\t", -1))
        .map(cells -> "sections:\n" + GroundCharts.section("one", cells[2], bars(cells[4])))
        .forEach(texts::add);
    return texts.stream()
        .flatMap(text -> ChartReader.read(new Source("chart", text)).value().stream())
        .map((Chart chart) -> Form.of(chart))
        .toList();
  }

  private static String bars(String cell) {
    return cell.substring(1, cell.length() - 1);
  }
}
