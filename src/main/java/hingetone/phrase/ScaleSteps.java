package hingetone.phrase;

import hingetone.theory.Interval;
import hingetone.theory.Key;
import hingetone.theory.Pitch;
import hingetone.theory.Scale;

/**
 * A scale as a ladder without end: its notes counted in steps, step 0 being the tonic in octave 4.
 * A note between two rungs counts as the rung below it, so many semitones raised.
 *
 * @param scale the scale
 */
record ScaleSteps(Scale scale) {
  private static final int BASE_OCTAVE = 4;

  /** A place on the ladder: a step and the semitones above it, 0 for a note of the scale. */
  record Rung(int step, int raised) {}

  private int size() {
    return scale.type().intervals().size();
  }

  private Pitch tonic() {
    return new Pitch(scale.tonic(), BASE_OCTAVE);
  }

  Rung of(Pitch pitch) {
    int above = pitch.midi() - tonic().midi();
    int octave = Math.floorDiv(above, 12);
    int inOctave = Math.floorMod(above, 12);
    int step = size() - 1;
    while (semitones(step) > inOctave) {
      step--;
    }
    return new Rung(octave * size() + step, inOctave - semitones(step));
  }

  private int semitones(int step) {
    return scale.type().intervals().get(step).semitones();
  }

  /** The pitch at a step. */
  Pitch at(int step) {
    int octave = Math.floorDiv(step, size());
    Interval interval = scale.type().intervals().get(Math.floorMod(step, size()));
    return tonic().plus(new Interval(interval.fifths(), interval.octaves() + octave));
  }

  /** The pitch at a rung, a raised one spelled as a key writes it. */
  Pitch at(Rung rung, Key key) {
    Pitch below = at(rung.step);
    return rung.raised == 0 ? below : key.spell(below.midi() + rung.raised);
  }
}
