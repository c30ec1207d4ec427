package hingetone.sequencer;

import hingetone.score.Score;

/** Makes the music of each lap; called ahead of time on a thread of its own. */
@FunctionalInterface
public interface LapSource {
  /**
   * The music of one lap. Every lap has the same bars; only the first may have a count-in. Notes
   * before time 0 are played at the end of the lap before.
   *
   * @param number the lap, from 1
   */
  Score lap(int number);
}
