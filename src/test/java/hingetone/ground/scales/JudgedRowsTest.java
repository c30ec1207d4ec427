package hingetone.ground.scales;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.ChartBar;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.text.reading.Source;
import hingetone.theory.Chord;
import hingetone.theory.Scale;
import hingetone.time.Beats;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Chords in their places with the scales that a teacher would name first, beside the program's
 * choice, in all twelve keys. The rows were written from handbooks and practice, each with its
 * source, by someone who did not know how the program chooses.
 */
class JudgedRowsTest {
  private static final Path ROWS = Path.of("src/test/resources/ground/judged.tsv");

  /** Rows of which the first choice is one that a teacher accepts; a floor, to be raised. */
  private static final int AGREED = 132;

  /** Rows that name scales to be among the first three, of which they are; a floor. */
  private static final int AMONG_THREE = 24;

  private record Row(String id, Chart chart, int bar, Beats beat, List<String> columns) {
    static Row of(String line) {
      List<String> cells = List.of(line.split("\t", -1));
      String text =
          "sections:\n  one:\n    key: %s\n    bars: \"%s\"\n"
              .formatted(cells.get(2), cells.get(4));
      Chart chart = ChartReader.read(new Source(cells.get(0), text)).value().orElseThrow();
      Beats beat = Beats.parse(cells.get(6)).orElseThrow();
      return new Row(cells.get(0), chart, Integer.parseInt(cells.get(5)), beat, cells);
    }

    /** What is offered so many half steps up, the best first, as sounds moved back down. */
    private List<Set<Integer>> offered(int up) {
      Form form = Form.of(up == 0 ? chart : chart.shifted(up));
      List<ChartBar.Slot> slots = form.bar(bar).chords().chords();
      int slot = slots.stream().map(ChartBar.Slot::beat).toList().indexOf(beat);
      ChordContext context = ChordContexts.of(form).get(bar - 1).get(slot);
      return ScaleChoice.rank(context).stream().map(fit -> sounds(fit.scale(), up)).toList();
    }

    /** The scales of a column; in the column of what must not come first there are looser words. */
    private List<Set<Integer>> column(int column) {
      return Stream.of(columns.get(column).split(" ; "))
          .flatMap(name -> Scale.parse(name.replace("!", "").strip()).stream())
          .map(scale -> sounds(scale, 0))
          .toList();
    }

    private boolean agrees() {
      return column(8).contains(offered(0).get(0));
    }

    private static Set<Integer> sounds(Scale scale, int up) {
      return scale.notes().stream()
          .map(note -> Math.floorMod(note.chroma() - up, 12))
          .collect(Collectors.toCollection(TreeSet::new));
    }
  }

  private static List<Row> rows() throws IOException {
    return Files.readAllLines(ROWS).stream().skip(1).map(Row::of).toList();
  }

  @Test
  void the_first_choice_is_a_teachers_in_as_many_rows_as_before() throws IOException {
    List<Row> rows = rows();
    List<String> missed = rows.stream().filter(row -> !row.agrees()).map(Row::id).toList();
    assertThat(rows).hasSizeGreaterThanOrEqualTo(120);
    assertThat(rows.size() - missed.size()).as("missed: %s", missed).isGreaterThanOrEqualTo(AGREED);
  }

  @Test
  void what_no_teacher_names_never_comes_first() throws IOException {
    assertThat(rows()).noneMatch(row -> row.column(10).contains(row.offered(0).get(0)));
  }

  @Test
  void what_should_be_among_three_is_in_as_many_rows_as_before() throws IOException {
    List<Row> asked = rows().stream().filter(row -> !row.column(9).isEmpty()).toList();
    List<String> missed =
        asked.stream()
            .filter(row -> !row.offered(0).stream().limit(3).toList().containsAll(row.column(9)))
            .map(Row::id)
            .toList();
    assertThat(asked.size() - missed.size())
        .as("missed: %s", missed)
        .isGreaterThanOrEqualTo(AMONG_THREE);
  }

  /** Common practice: where something of the chord is left out it is the blues that says so. */
  @Test
  void a_first_choice_without_the_chords_root_third_or_seventh_names_the_practice()
      throws IOException {
    int lacking = 0;
    for (Row row : rows()) {
      for (List<ChordContext> bar : ChordContexts.of(Form.of(row.chart()))) {
        for (ChordContext context : bar) {
          FittingScale first = ScaleChoice.rank(context).get(0);
          boolean lacks = context.chord().filter(chord -> lacks(first.scale(), chord)).isPresent();
          assertThat(first.why().contains("as blues and rock have it"))
              .as("%s %s over %s", row.id(), first.scale(), context.chord())
              .isEqualTo(lacks);
          lacking += lacks ? 1 : 0;
        }
      }
    }
    assertThat(lacking).isBetween(20, 100);
  }

  private static boolean lacks(Scale scale, Chord chord) {
    return chord.quality().intervals().stream()
        .filter(interval -> List.of(1, 3, 7).contains(interval.number()))
        .anyMatch(interval -> !scale.contains(chord.root().plus(interval)));
  }

  @Test
  void in_every_other_key_the_choice_is_the_same() throws IOException {
    for (Row row : rows()) {
      List<Set<Integer>> here = row.offered(0);
      for (int up = 1; up < 12; up++) {
        assertThat(row.offered(up)).as("%s, %d up", row.id(), up).isEqualTo(here);
      }
    }
  }
}
