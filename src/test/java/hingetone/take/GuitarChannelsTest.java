package hingetone.take;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class GuitarChannelsTest {
  /** Notes of ten each on these channels, each beginning five after the one before. */
  private static List<PlayedNote> on(int... channels) {
    List<PlayedNote> notes = new ArrayList<>();
    for (int channel : channels) {
      long at = 5L * notes.size();
      notes.add(new PlayedNote(at, at + 10, channel, 60, 90, List.of()));
    }
    return notes;
  }

  @Test
  void a_string_a_channel_is_told_from_one_channel_and_from_a_keyboard() {
    assertThat(GuitarChannels.first(on(0, 1, 0, 1, 2))).hasValue(0);
    assertThat(GuitarChannels.first(on(10, 15, 10))).hasValue(10);
    assertThat(GuitarChannels.first(on(0))).isEmpty();
    assertThat(GuitarChannels.first(on(0, 0, 1))).isEmpty();
  }
}
