package hingetone.review;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.review.LineWay.Kind;
import hingetone.review.LineWay.Line;
import hingetone.take.PlacedNote;
import hingetone.theory.Key;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The definitions are those of the page on the program; 4/4, the line at quarter 20. */
class LineWayTest {
  private static final Line LINE = new Line(20, 16, 0, 1);
  private static final Key KEY = Key.parse("F minor").orElseThrow();

  private static PlacedNote note(double at, double length, int pitch) {
    return new PlacedNote(at, at + length, pitch, pitch, 90);
  }

  private static List<PlacedNote> quarters(double from, double to) {
    return IntStream.range(0, (int) (to - from)).mapToObj(i -> note(from + i, 0.9, 62)).toList();
  }

  private static LineWay way(List<PlacedNote> first, PlacedNote... more) {
    List<PlacedNote> all = new ArrayList<>(first);
    all.addAll(List.of(more));
    return LineWay.of(LINE, all);
  }

  @Test
  void a_note_that_sounds_half_a_beat_past_the_line_and_one_and_a_half_in_all_is_held() {
    assertThat(way(quarters(0, 16), note(19, 1.5, 69)).kind()).isEqualTo(Kind.HOLD);
    assertThat(way(quarters(0, 16), note(19, 1.4, 69)).kind()).isNotEqualTo(Kind.HOLD);
    assertThat(way(quarters(0, 16), note(19.5, 1.2, 69)).kind()).isNotEqualTo(Kind.HOLD);
    assertThat(way(quarters(0, 16), note(20, 3, 69)).kind()).isNotEqualTo(Kind.HOLD);
  }

  @Test
  void a_line_with_nothing_a_beat_around_it_is_a_rest() {
    assertThat(way(quarters(0, 19)).kind()).isEqualTo(Kind.REST);
    assertThat(way(List.of()).kind()).isEqualTo(Kind.REST);
    assertThat(way(quarters(0, 16), note(20.9, 0.5, 62)).kind()).isNotEqualTo(Kind.REST);
  }

  @Test
  void half_as_many_notes_again_or_four_single_frets_are_a_run() {
    List<PlacedNote> halves = IntStream.range(0, 8).mapToObj(i -> note(2 * i, 1.8, 62)).toList();
    PlacedNote[] three = {note(16, 0.9, 60), note(17.5, 0.9, 63), note(19, 0.9, 67)};
    LineWay run = way(halves, three);
    assertThat(run.kind()).isEqualTo(Kind.RUN);
    assertThat(run.densityBefore()).isEqualTo(0.5);
    assertThat(run.densityInto()).isEqualTo(0.75);
    List<PlacedNote> busy = IntStream.range(0, 36).mapToObj(i -> note(i / 2.0, 0.4, 62)).toList();
    PlacedNote[] frets = {
      note(18, 0.4, 60), note(18.5, 0.4, 61), note(19, 0.4, 62), note(19.5, 0.4, 63)
    };
    assertThat(way(busy, frets).kind()).isEqualTo(Kind.RUN);
    PlacedNote[] steps = {
      note(18, 0.4, 60), note(18.5, 0.4, 62), note(19, 0.4, 64), note(19.5, 0.4, 65)
    };
    assertThat(way(busy, steps).kind()).isEqualTo(Kind.PLAIN);
  }

  @Test
  void a_double_stop_counts_once() {
    List<PlacedNote> stops = new ArrayList<>(quarters(0, 20));
    quarters(0, 20).forEach(n -> stops.add(note(n.at() + 0.02, 0.9, 66)));
    LineWay way = way(stops);
    assertThat(way.densityBefore()).isEqualTo(1);
    assertThat(way.densityInto()).isEqualTo(1);
    assertThat(way.kind()).isEqualTo(Kind.PLAIN);
  }

  @Test
  void it_is_said_in_the_new_key_in_a_few_words() {
    assertThat(LiveWords.line(way(quarters(0, 16), note(19, 3, 68)), KEY))
        .isEqualTo("held Ab, the b3, over the line");
    assertThat(LiveWords.line(way(quarters(0, 20), note(20, 1, 65)), KEY))
        .isEqualTo("straight over the line, landed on F, the 1");
    assertThat(LiveWords.line(way(List.of()), KEY)).isEqualTo("left the line open");
  }

  @Test
  void a_landing_is_named_with_its_degree_and_how_it_lay() {
    assertThat(said(note(20.02, 1, 68))).isEqualTo("Ab, the b3: on it");
    assertThat(said(note(19.8, 1, 68))).isEqualTo("Ab, the b3: ahead");
    assertThat(said(note(20.2, 1, 60))).isEqualTo("C, the 5: behind");
    assertThat(said(note(19.5, 1, 60))).isEqualTo("C, the 5: pushed, half a beat early");
    assertThat(said(note(21, 1, 60))).isEqualTo("nothing landed");
    assertThat(said(note(19.5, 0.4, 63), note(20, 1, 65), note(20.02, 1, 68)))
        .isEqualTo("Ab, the b3: on it");
  }

  private static String said(PlacedNote... notes) {
    return LiveWords.landing(20, 1, 500, KEY, List.of(notes));
  }
}
