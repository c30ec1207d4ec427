package hingetone.chart;

import hingetone.score.Note;
import hingetone.theory.Key;
import hingetone.time.Beats;
import java.util.List;
import java.util.function.IntUnaryOperator;

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

  /**
   * The riff moved from one key to another along the scales: a note of the first key's seven-note
   * scale becomes the note on the same step of the other's, any other keeps its distance from its
   * step. Where the modes are the same this is plain transposition. The tonic goes the shorter way,
   * a tritone up: {@code A2 C3 D3} from A minor becomes {@code E2 G2 A2} in E minor and {@code C3
   * E3 F3} in C major.
   */
  Riff moved(Key from, Key to) {
    int tonic = Math.floorMod(to.tonic().chroma() - from.tonic().chroma() + 5, 12) - 5;
    return withKeys(
        key -> {
          int step = from.tonic().to(from.spell(key).name()).steps();
          return key + tonic + semitones(to, step) - semitones(from, step);
        });
  }

  private static int semitones(Key key, int step) {
    return key.heptatonic().type().intervals().get(step).semitones();
  }

  /** The riff a number of semitones up or down. */
  Riff shifted(int semitones) {
    return withKeys(key -> key + semitones);
  }

  private Riff withKeys(IntUnaryOperator change) {
    return new Riff(withKeys(bass, change), bassLength, withKeys(chords, change), chordsLength);
  }

  private static List<Note> withKeys(List<Note> notes, IntUnaryOperator change) {
    return notes.stream().map(n -> n.withKey(withinMidi(change.applyAsInt(n.key())))).toList();
  }

  /** A note that would leave the range of MIDI comes back by octaves. */
  private static int withinMidi(int key) {
    return key < 0 ? Math.floorMod(key, 12) : key > 127 ? 116 + Math.floorMod(key - 116, 12) : key;
  }
}
