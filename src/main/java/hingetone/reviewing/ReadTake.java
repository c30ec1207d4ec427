package hingetone.reviewing;

import hingetone.hearing.HeardNote;
import hingetone.review.Played;
import java.util.List;
import java.util.Optional;

/**
 * A file as it was read.
 *
 * @param played its notes in the bars of the chart
 * @param recording the recording that they were heard in, where it is one
 */
public record ReadTake(Played played, Optional<Recording> recording) {
  /**
   * A recording.
   *
   * @param sound its file
   * @param notes its notes, those of the take in their order, in seconds
   * @param ratio how much faster than the chart it was played
   */
  public record Recording(SoundTake sound, List<HeardNote> notes, double ratio) {
    public Recording {
      notes = List.copyOf(notes);
    }
  }
}
