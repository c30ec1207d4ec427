package hingetone.play;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.hearing.live.LiveEar;
import hingetone.take.PlayedNote;
import hingetone.take.PlayedNotes;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class SoundInstrumentTest {
  @Test
  void what_is_heard_comes_back_as_the_notes_that_were_played() {
    PlayedNotes notes = new PlayedNotes();
    List<PlayedNote> ended = new ArrayList<>();
    SoundInstrument.Hand hand =
        new SoundInstrument.Hand(message -> ended.addAll(notes.take(message)));
    hand.take(new LiveEar.Struck(0, 66.94, -20), 1_000);
    hand.take(new LiveEar.Moved(0, 69.02), 2_000);
    hand.take(new LiveEar.Ended(0), 3_000);
    hand.take(new LiveEar.Struck(0, 40, -60), 4_000);
    hand.take(new LiveEar.Ended(0), 5_000);
    assertThat(ended).hasSize(2);
    assertThat(ended.get(0).on()).isEqualTo(1_000);
    assertThat(ended.get(0).off()).isEqualTo(3_000);
    assertThat(ended.get(0).placed(0, 1).struck()).isCloseTo(66.94, within(0.01));
    assertThat(ended.get(0).placed(0, 1).reached()).isCloseTo(69.02, within(0.01));
    assertThat(ended.get(1).placed(0, 1).pitch()).isEqualTo(40);
    assertThat(ended.get(1).placed(0, 1).velocity()).isEqualTo(1);
  }
}
