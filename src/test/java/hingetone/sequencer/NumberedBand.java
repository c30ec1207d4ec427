package hingetone.sequencer;

import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.List;

/**
 * Bands whose every note says where it belongs: drums and bass differ from beat to beat and from
 * band to band, chords from lap to lap. The first lap has a bar of count-in, which is clicked.
 */
final class NumberedBand {
  static final int BARS = 4;

  private NumberedBand() {}

  static int lapOf(int bar) {
    return Math.floorDiv(bar - 1, BARS) + 1;
  }

  static int chord(int lap) {
    return 60 + lap % 12;
  }

  /** How much later than its place a chord is played, in microseconds. */
  static long spread(int lap) {
    return lap % 2 == 0 ? 9000 : -9000;
  }

  /**
   * The drum on a beat.
   *
   * @param bar any bar of the form, laps counted on
   */
  static int drum(int band, int bar, int beat) {
    return 35 + (17 * band + place(bar, beat)) % 40;
  }

  static int bass(int band, int bar, int beat) {
    return 30 + (13 * band + place(bar, beat)) % 32;
  }

  private static int place(int bar, int beat) {
    return 4 * Math.floorMod(bar - 1, BARS) + beat - 1;
  }

  static Score lap(int number, int band) {
    List<Note> drums = new ArrayList<>();
    List<Note> basses = new ArrayList<>();
    List<Note> chords = new ArrayList<>();
    for (int i = 0; i < 4 * BARS; i++) {
      Beats at = Beats.of(i);
      int bar = i / 4 + 1;
      int beat = i % 4 + 1;
      drums.add(new Note(at, Beats.of(1, 8), drum(band, bar, beat), 90));
      // The bass is held into the next note, every eighth of them into the next bar but one.
      Beats length = i % 8 == 0 ? Beats.of(5) : Beats.of(1 + i % 2, 1);
      basses.add(new Note(at, length, bass(band, bar, beat), 90));
      chords.add(
          new Note(at.plus(Beats.of(1, 3)), Beats.of(2, 3), chord(number), 70)
              .withOffsetMicros(spread(number)));
    }
    return new Score(
        "Test",
        number == 1 ? Beats.of(4) : Beats.ZERO,
        Beats.of(4L * BARS),
        List.of(),
        List.of(
            new Part(Role.DRUMS, Sound.of(0), drums),
            new Part(Role.BASS, Sound.of(33), basses),
            new Part(Role.CHORDS, Sound.of(4), chords)));
  }
}
