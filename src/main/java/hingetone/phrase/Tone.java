package hingetone.phrase;

import hingetone.theory.Pitch;
import hingetone.time.Beats;
import java.util.Optional;

/**
 * One note of a phrase.
 *
 * @param onset where it starts, in quarter notes from the phrase's landing; negative in the pickup
 * @param length how long it sounds, in quarter notes, positive
 * @param pitch the note that is struck, spelled
 * @param bend the pitch that the string is bent to, where it is bent
 */
public record Tone(Beats onset, Beats length, Pitch pitch, Optional<Pitch> bend) {
  public Tone {
    if (!length.isPositive()) {
      throw new IllegalArgumentException("a note needs a length: " + length);
    }
  }

  public static Tone of(Beats onset, Beats length, Pitch pitch) {
    return new Tone(onset, length, pitch, Optional.empty());
  }

  public Beats end() {
    return onset.plus(length);
  }

  /** The pitch that it counts as: a bent note is the note it reaches. */
  public Pitch reached() {
    return bend.orElse(pitch);
  }

  public Tone withOnset(Beats newOnset) {
    return new Tone(newOnset, length, pitch, bend);
  }

  public Tone withLength(Beats newLength) {
    return new Tone(onset, newLength, pitch, bend);
  }

  /** The same note at another pitch, unbent. */
  public Tone withPitch(Pitch newPitch) {
    return new Tone(onset, length, newPitch, Optional.empty());
  }

  public Tone withBend(Pitch reached) {
    return new Tone(onset, length, pitch, Optional.of(reached));
  }
}
