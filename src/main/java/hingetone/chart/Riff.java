package hingetone.chart;

import hingetone.score.Note;
import hingetone.time.Beats;
import java.util.List;

/**
 * A section's own line, in the section's key, which replaces the groove's and repeats through it.
 *
 * @param bass the bass line, its onsets in quarter notes from the section's start; empty where the
 *     groove's is kept
 * @param bassLength its length in quarter notes, whole bars; 0 where there is none
 * @param chords the chord part's line; empty where the groove's is kept
 * @param chordsLength its length in quarter notes, whole bars; 0 where there is none
 */
public record Riff(List<Note> bass, Beats bassLength, List<Note> chords, Beats chordsLength) {
  public Riff {
    bass = List.copyOf(bass);
    chords = List.copyOf(chords);
  }
}
