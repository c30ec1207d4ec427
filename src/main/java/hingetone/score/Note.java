package hingetone.score;

import hingetone.time.Beats;

/**
 * One sounding note of a part.
 *
 * @param onset where it starts, in quarter notes from the start of its score; may be negative (a
 *     count-in or a pickup)
 * @param length how long it sounds, in quarter notes, positive
 * @param key MIDI note number, 0 to 127; in a drum part a General MIDI percussion key
 * @param velocity MIDI velocity, 1 to 127
 * @param offsetMicros how much later (or, negative, earlier) than its place it is played, in
 *     microseconds: the human part of its timing
 */
public record Note(Beats onset, Beats length, int key, int velocity, long offsetMicros)
    implements Comparable<Note> {
  public Note {
    if (!length.isPositive()) {
      throw new IllegalArgumentException("a note needs a length: " + length);
    }
    if (key < 0 || key > 127 || velocity < 1 || velocity > 127) {
      throw new IllegalArgumentException("no such MIDI note: " + key + " velocity " + velocity);
    }
  }

  public Note(Beats onset, Beats length, int key, int velocity) {
    this(onset, length, key, velocity, 0);
  }

  /** Where it ends, in quarter notes. */
  public Beats end() {
    return onset.plus(length);
  }

  public Note withOnset(Beats newOnset) {
    return new Note(newOnset, length, key, velocity, offsetMicros);
  }

  public Note withLength(Beats newLength) {
    return new Note(onset, newLength, key, velocity, offsetMicros);
  }

  public Note withKey(int newKey) {
    return new Note(onset, length, newKey, velocity, offsetMicros);
  }

  public Note withVelocity(int newVelocity) {
    return new Note(onset, length, key, newVelocity, offsetMicros);
  }

  public Note withOffsetMicros(long newOffsetMicros) {
    return new Note(onset, length, key, velocity, newOffsetMicros);
  }

  /** By onset, then key. */
  @Override
  public int compareTo(Note other) {
    int byOnset = onset.compareTo(other.onset);
    return byOnset != 0 ? byOnset : Integer.compare(key, other.key);
  }
}
