package hingetone.exchange;

import hingetone.time.Beats;

/**
 * A note's place in a rhythm, before it has a pitch.
 *
 * @param onset in quarter notes from the landing
 * @param length in quarter notes
 */
record Stroke(Beats onset, Beats length) {
  Beats end() {
    return onset.plus(length);
  }
}
