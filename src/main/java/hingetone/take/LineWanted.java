package hingetone.take;

import java.util.Optional;

/**
 * Which line of notes of a file is wanted.
 *
 * @param track the number of the track or part, from 1
 * @param channel the MIDI channel, from 1
 */
public record LineWanted(Optional<Integer> track, Optional<Integer> channel) {
  /** The one named Lead, else the one most like a melody. */
  public static final LineWanted ANY = new LineWanted(Optional.empty(), Optional.empty());
}
