package hingetone.groove;

import hingetone.time.Meter;

/** One of several things that a player may play in a bar or over several. */
public interface Pattern {
  /** When it is played. */
  PatternUse use();

  /** How many bars it lasts. */
  int length();

  /** How many strokes or notes it has in a bar, for choosing a busier one. */
  int strokes(Meter meter);
}
