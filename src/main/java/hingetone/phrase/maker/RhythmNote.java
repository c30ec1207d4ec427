package hingetone.phrase.maker;

import hingetone.time.Beats;

/**
 * A note's place in a rhythm, before it has a pitch.
 *
 * @param onset in quarter notes from the landing
 * @param length in quarter notes
 */
record RhythmNote(Beats onset, Beats length) {
  Beats end() {
    return onset.plus(length);
  }
}
