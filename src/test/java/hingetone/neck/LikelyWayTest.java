package hingetone.neck;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LikelyWayTest {
  private static final Fretboard NECK = Fretboard.of(Tuning.STANDARD, 0);

  @Test
  void a_scale_in_the_eighth_position_stays_under_the_hand() {
    List<Integer> frets =
        LikelyWay.over(NECK, line(60, 63, 65, 67, 70, 72)).stream()
            .map(way -> way.get(0).fret())
            .toList();
    int low = frets.stream().mapToInt(f -> f).min().orElseThrow();
    int high = frets.stream().mapToInt(f -> f).max().orElseThrow();
    assertThat(high - low).isLessThanOrEqualTo(4);
  }

  @Test
  void what_is_slid_stays_on_its_string() {
    List<List<Spot>> ways =
        LikelyWay.over(
            NECK,
            List.of(
                new LikelyWay.Moment(List.of(62), false), new LikelyWay.Moment(List.of(69), true)));
    assertThat(ways.get(0).get(0).string()).isEqualTo(ways.get(1).get(0).string());
  }

  @Test
  void two_notes_at_once_take_a_string_each() {
    List<Spot> way =
        LikelyWay.over(NECK, List.of(new LikelyWay.Moment(List.of(60, 64), false))).get(0);
    assertThat(way).hasSize(2);
    assertThat(way.get(0).string()).isNotEqualTo(way.get(1).string());
    assertThat(NECK.midi(way.get(0))).isEqualTo(60);
    assertThat(NECK.midi(way.get(1))).isEqualTo(64);
  }

  @Test
  void a_note_that_the_neck_lacks_has_no_place_and_the_rest_keep_theirs() {
    List<List<Spot>> ways = LikelyWay.over(NECK, line(60, 20, 62));
    assertThat(ways.get(1)).isEmpty();
    assertThat(ways.get(0)).hasSize(1);
    assertThat(ways.get(2)).hasSize(1);
    assertThat(LikelyWay.over(NECK, List.of())).isEmpty();
  }

  private static List<LikelyWay.Moment> line(int... keys) {
    return IntStream.of(keys).mapToObj(k -> new LikelyWay.Moment(List.of(k), false)).toList();
  }
}
