package hingetone.backing;

import hingetone.groove.BassStyle;
import hingetone.groove.ChordStyle;
import hingetone.groove.Groove;
import hingetone.score.Note;
import hingetone.score.Role;
import hingetone.theory.Chord;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The bar after the last lap: everybody strikes the home chord once and lets it ring. */
final class FinalBar {
  private static final int BASS_DRUM = 36;
  private static final int CRASH = 49;
  private static final int VELOCITY = 106;

  private FinalBar() {}

  /** A bar of the first section's meter. */
  static Beats length(LapPlan lap) {
    return lap.plans().get(0).bar().meter().barLength();
  }

  /**
   * A part's notes of the ending, onsets from the start of the lap.
   *
   * @param before the part's notes of the lap, in order
   */
  static List<Note> notes(Role role, LapPlan lap, List<Note> before) {
    BarPlan first = lap.plans().get(0);
    Groove groove = first.groove();
    Chord home = lap.home();
    List<Note> notes = new ArrayList<>();
    switch (role) {
      case DRUMS -> {
        notes.add(new Note(lap.length(), Beats.of(1, 4), BASS_DRUM, VELOCITY));
        notes.add(new Note(lap.length(), Beats.of(1, 4), CRASH, VELOCITY));
      }
      case BASS -> notes.add(ringing(lap, bassKey(groove.bass(), home, before)));
      case CHORDS ->
          chordKeys(groove.chords(), home, first, before)
              .forEach(key -> notes.add(ringing(lap, key)));
      default -> throw new IllegalArgumentException(role + " plays no ending");
    }
    return notes;
  }

  /** The lowest root within an octave of where the bass has just been. */
  private static int bassKey(BassStyle style, Chord home, List<Note> before) {
    List<Integer> roots = Bassist.keys(style, home.lowest().chroma());
    int last = before.isEmpty() ? roots.get(0) : before.get(before.size() - 1).key();
    return roots.stream()
        .filter(root -> Math.abs(root - last) <= 12)
        .findFirst()
        .orElse(roots.get(0));
  }

  /** The voicing of the home chord that is nearest to what has just been struck. */
  private static List<Integer> chordKeys(
      ChordStyle style, Chord home, BarPlan first, List<Note> before) {
    Beats last = before.isEmpty() ? Beats.ZERO : before.get(before.size() - 1).onset();
    List<Integer> struck =
        before.stream().filter(n -> n.onset().equals(last)).map(Note::key).toList();
    return new Voicings(style)
        .of(home, first.bar().key()).stream()
            .min(
                Comparator.comparingDouble(
                    way -> way.dislike() + VoiceLeading.movement(struck, way.keys())))
            .orElseThrow()
            .keys();
  }

  private static Note ringing(LapPlan lap, int key) {
    return new Note(lap.length(), length(lap).times(Beats.of(15, 16)), key, VELOCITY - 14);
  }
}
