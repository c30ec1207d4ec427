package hingetone.handout;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.handout.WrittenBars.Event;
import hingetone.neck.Spot;
import hingetone.theory.Pitch;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** How bars are written out; the expected spellings are common practice of engraving. */
class CuttingTest {
  private static final int EIGHTH = NoteSign.DIVISIONS / 2;

  private static Cutting in(String meter) {
    return new Cutting(Meter.parse(meter).orElseThrow());
  }

  /** The lengths, in eighths, in which a stretch of so many eighths is written. */
  private static List<Integer> written(String meter, boolean rest, int from, int length) {
    List<Integer> signs = new ArrayList<>();
    for (int at = from; at < from + length; at += signs.get(signs.size() - 1)) {
      int room = (from + length - at) * EIGHTH;
      NoteSign sign = rest ? in(meter).rest(at * EIGHTH, room) : in(meter).note(at * EIGHTH, room);
      signs.add(sign.length() / EIGHTH);
    }
    return signs;
  }

  @Test
  void rests_show_the_groups_of_the_bar() {
    assertThat(written("4/4", true, 0, 8)).containsExactly(4, 4);
    assertThat(written("4/4", true, 2, 4)).containsExactly(2, 2);
    assertThat(written("4/4", true, 0, 3)).containsExactly(2, 1);
    assertThat(written("6/8", true, 0, 6)).containsExactly(3, 3);
    assertThat(written("6/8", true, 1, 2)).containsExactly(1, 1);
    assertThat(written("7/8", true, 0, 7)).containsExactly(2, 2, 3);
    assertThat(written("7/8", true, 3, 4)).containsExactly(1, 3);
  }

  @Test
  void notes_go_on_tied_where_a_sign_would_hide_a_group() {
    assertThat(written("4/4", false, 0, 8)).containsExactly(8);
    assertThat(written("4/4", false, 2, 4)).as("quarter half quarter").containsExactly(4);
    assertThat(written("4/4", false, 2, 3)).containsExactly(2, 1);
    assertThat(written("4/4", false, 1, 2)).containsExactly(1, 1);
    assertThat(written("6/8", false, 0, 6)).containsExactly(6);
    assertThat(written("6/8", false, 1, 4)).containsExactly(2, 2);
    assertThat(written("7/8", false, 2, 5)).containsExactly(2, 3);
    assertThat(written("12/8", false, 0, 12)).containsExactly(12);
  }

  @Test
  void whatever_is_written_fills_its_place_and_no_triplet_stands_where_none_is() {
    for (String meter : List.of("2/4", "3/4", "4/4", "5/4", "6/8", "7/8", "9/8", "12/8")) {
      int bar = (int) Meter.parse(meter).orElseThrow().barLength().toUnits(NoteSign.DIVISIONS);
      for (int step : List.of(12, 16)) {
        for (int from = 0; from < bar; from += step) {
          for (int to = from + step; to <= bar; to += step) {
            for (int at = from; at < to; ) {
              NoteSign note = in(meter).note(at, to - at);
              NoteSign rest = in(meter).rest(at, to - at);
              assertThat(note.length()).isBetween(1, to - at);
              assertThat(rest.length()).isBetween(1, to - at);
              assertThat(step == 12 && (note.triplet() || rest.triplet())).isFalse();
              at += at % 24 == 0 ? note.length() : rest.length();
            }
          }
        }
      }
    }
  }

  private static Event note(int length) {
    NoteSign sign = NoteSign.longest(s -> s.length() == length).orElseThrow();
    Pitch a = Pitch.parse("A4").orElseThrow();
    SheetNote note = SheetNote.picked(Beats.ZERO, Beats.ONE, a, new Spot(2, 10), List.of());
    return new Event(sign, List.of(note), false, false, Optional.empty());
  }

  private static Event rest(int length) {
    return Event.rest(NoteSign.longest(s -> s.length() == length).orElseThrow());
  }

  private static List<String> beams(String meter, Event... bar) {
    return Beaming.of(Meter.parse(meter).orElseThrow(), List.of(bar)).stream()
        .map(levels -> String.join("+", levels))
        .toList();
  }

  @Test
  void notes_of_a_beat_hang_together_and_a_rest_parts_them() {
    assertThat(beams("4/4", note(24), note(12), note(12), note(48), rest(24), note(24), note(48)))
        .containsExactly("begin", "continue+begin", "end+end", "", "", "", "");
    assertThat(beams("2/4", note(36), note(12), note(12), note(36)))
        .containsExactly("begin", "end+backward hook", "begin+forward hook", "end");
  }

  @Test
  void in_compound_and_odd_meters_a_group_hangs_together() {
    assertThat(beams("6/8", Stream.generate(() -> note(24)).limit(6).toArray(Event[]::new)))
        .containsExactly("begin", "continue", "end", "begin", "continue", "end");
    assertThat(beams("7/8", Stream.generate(() -> note(24)).limit(7).toArray(Event[]::new)))
        .containsExactly("begin", "end", "begin", "end", "begin", "continue", "end");
  }
}
