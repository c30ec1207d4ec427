package hingetone.ground.scales;

import hingetone.theory.Chord;
import hingetone.theory.Interval;
import hingetone.theory.Key;
import hingetone.theory.NoteName;
import hingetone.theory.Scale;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a blues does with its two thirds over each of its chords, where a scale alone does not say
 * it (common practice, from memory).
 */
final class BluesReason {
  private static final Interval SIXTH = Interval.ofNumber(6, 0);
  private static final Interval FLAT_FIFTH = Interval.ofNumber(5, -1);
  private static final int TONIC = 0;
  private static final int FOURTH_DEGREE = 5;

  private final Chord chord;
  private final Scale scale;
  private final List<String> parts = new ArrayList<>();

  private BluesReason(Chord chord, Scale scale) {
    this.chord = chord;
    this.scale = scale;
  }

  /**
   * What is said over a chord.
   *
   * @param home the key that the chord is heard in first
   */
  static List<String> of(Key home, Chord chord, Scale scale) {
    BluesReason reason = new BluesReason(chord, scale);
    boolean curls = reason.curl();
    int degree = Math.floorMod(chord.root().chroma() - home.tonic().chroma(), 12);
    if (home.isBlues() && chord.isDominant()) {
      reason.inBlues(home, degree, curls);
    }
    return reason.parts;
  }

  /** The minor third in place of the chord's own major one. */
  private boolean curl() {
    Optional<NoteName> blueThird = BlueThird.of(chord, scale);
    NoteName major = chord.root().plus(Interval.MAJOR_THIRD);
    blueThird.ifPresent(minor -> parts.add(curled(minor, major)));
    return blueThird.isPresent();
  }

  private void inBlues(Key home, int degree, boolean curls) {
    if (curls) {
      parts.add(named(chord.root().plus(Interval.MAJOR_THIRD)) + " is to arrive on");
    }
    if (curls && degree == TONIC) {
      NoteName sixth = home.tonic().plus(SIXTH);
      NoteName flatFifth = home.tonic().plus(FLAT_FIFTH);
      parts.add(named(sixth) + " (6) sweetens it");
      parts.add(named(flatFifth) + " (b5) only passes");
    }
    if (degree == FOURTH_DEGREE) {
      NoteName tonicsThird = home.tonic().plus(Interval.MAJOR_THIRD);
      NoteName seventh = home.tonic().plus(Interval.MINOR_THIRD);
      NoteName third = chord.root().plus(Interval.MAJOR_THIRD);
      if (!scale.contains(tonicsThird)) {
        parts.add(named(tonicsThird) + " is left alone as " + named(seventh) + " is its seventh");
      }
      if (!scale.contains(third)) {
        parts.add(named(third) + ", its third, is to arrive on");
      }
    }
  }

  private static String curled(NoteName minor, NoteName major) {
    return named(minor) + " is curled up towards " + named(major) + " as blues and rock have it";
  }

  private static String named(NoteName note) {
    return note.simplified().toString();
  }
}
