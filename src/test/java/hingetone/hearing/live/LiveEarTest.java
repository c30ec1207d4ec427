package hingetone.hearing.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.hearing.PluckedStrings;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class LiveEarTest {
  private static List<LiveEar.Event> heard(float[] sound, int block) {
    LiveEar ear = new LiveEar();
    List<LiveEar.Event> events = new ArrayList<>();
    for (int from = 0; from < sound.length; from += block) {
      events.addAll(
          ear.hear(Arrays.copyOfRange(sound, from, Math.min(sound.length, from + block))));
    }
    return events;
  }

  private static List<LiveEar.Struck> struck(List<LiveEar.Event> events) {
    return events.stream()
        .filter(LiveEar.Struck.class::isInstance)
        .map(LiveEar.Struck.class::cast)
        .toList();
  }

  @Test
  void each_stroke_has_its_pitch_and_place_and_ends_with_the_next_or_in_silence() {
    int[] keys = {45, 52, 57, 60, 64, 69};
    float[][] parts = new float[keys.length + 2][];
    parts[0] = PluckedStrings.silence(0.2);
    for (int i = 0; i < keys.length; i++) {
      int key = keys[i];
      parts[i + 1] = PluckedStrings.picked(t -> key, 0.4);
    }
    parts[keys.length + 1] = PluckedStrings.silence(0.5);
    List<LiveEar.Event> events = heard(PluckedStrings.inTurn(parts), 300);
    List<LiveEar.Struck> struck = struck(events);
    assertThat(struck).hasSize(keys.length);
    for (int i = 0; i < keys.length; i++) {
      assertThat(struck.get(i).midi()).isCloseTo(keys[i], within(0.2));
      assertThat(struck.get(i).at()).isCloseTo(0.2 + 0.4 * i, within(0.012));
    }
    assertThat(events).filteredOn(LiveEar.Ended.class::isInstance).hasSize(keys.length);
    assertThat(events.get(events.size() - 1)).isInstanceOf(LiveEar.Ended.class);
  }

  @Test
  void a_bend_is_followed_to_where_it_goes() {
    float[] sound =
        PluckedStrings.inTurn(
            PluckedStrings.silence(0.2),
            PluckedStrings.picked(t -> 67 + 2 * Math.max(0, Math.min(1, (t - 0.2) / 0.15)), 0.9));
    List<LiveEar.Event> events = heard(sound, 441);
    assertThat(struck(events)).hasSize(1);
    assertThat(struck(events).get(0).midi()).isCloseTo(67, within(0.2));
    List<Double> path =
        events.stream()
            .filter(LiveEar.Moved.class::isInstance)
            .map(event -> ((LiveEar.Moved) event).midi())
            .toList();
    assertThat(path).isSorted();
    assertThat(path.get(path.size() - 1)).isCloseTo(69, within(0.2));
  }

  @Test
  void silence_and_hiss_are_no_notes() {
    Random random = new Random(4);
    float[] hiss = new float[22_050];
    for (int i = 0; i < hiss.length; i++) {
      hiss[i] = (float) (0.001 * random.nextGaussian());
    }
    assertThat(heard(PluckedStrings.silence(1), 256)).isEmpty();
    assertThat(struck(heard(hiss, 256))).isEmpty();
  }
}
