package hingetone.chart;

import hingetone.score.Note;
import hingetone.theory.Chord;
import hingetone.theory.Key;
import hingetone.time.Beats;
import java.util.ArrayList;
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
  private static final int OCTAVE = 12;

  /** E1, the lowest string of a bass. */
  private static final int LOWEST_STRING = 28;

  public Riff {
    bass = List.copyOf(bass);
    chords = List.copyOf(chords);
  }

  /**
   * One section's riff in another: moved along the scales, repeated to the section's end, and
   * fitted to its chords: a note that belonged to the chord it was written over goes to the nearest
   * note of the chord that it is now played over; any other is left as it is.
   */
  Riff of(Section from, Section to) {
    Riff moved = moved(from.key(), to.key());
    return new Riff(
        fitted(bass, moved.bass, bassLength, from, to),
        bass.isEmpty() ? Beats.ZERO : to.length(),
        fitted(chords, moved.chords, chordsLength, from, to),
        chords.isEmpty() ? Beats.ZERO : to.length());
  }

  private static List<Note> fitted(
      List<Note> written, List<Note> moved, Beats length, Section from, Section to) {
    List<Note> fitted = new ArrayList<>();
    for (Beats turn = Beats.ZERO;
        !written.isEmpty() && turn.isBefore(to.length());
        turn = turn.plus(length)) {
      for (int i = 0; i < written.size(); i++) {
        Note note = written.get(i);
        Beats onset = note.onset().plus(turn);
        boolean belonged = from.chordAt(note.onset()).filter(c -> has(c, note.key())).isPresent();
        if (onset.isBefore(to.length())) {
          int key = moved.get(i).key();
          int nearest =
              to.chordAt(onset).filter(c -> belonged).map(c -> nearest(c, key)).orElse(key);
          fitted.add(moved.get(i).withOnset(onset).withKey(nearest));
        }
      }
    }
    return fitted;
  }

  private static boolean has(Chord chord, int key) {
    int chroma = Math.floorMod(key, OCTAVE);
    return chord.degreeOf(chroma).isPresent() || chord.lowest().chroma() == chroma;
  }

  /** The nearest key that belongs to a chord, of two equally near ones the lower. */
  private static int nearest(Chord chord, int key) {
    for (int away = 0; away < OCTAVE; away++) {
      if (has(chord, key - away) && key >= away) {
        return key - away;
      }
      if (has(chord, key + away) && key + away <= 127) {
        return key + away;
      }
    }
    return key;
  }

  /** The riff moved from one key to another note by note, the tonic going the shorter way. */
  Riff transposed(Key from, Key to) {
    return shifted(tonicMove(from, to));
  }

  /**
   * The riff moved from one key to another along the scales: a note of the first key's seven-note
   * scale becomes the note on the same step of the other's, any other keeps its distance from its
   * step. Where the modes are the same this is plain transposition. The tonic goes the shorter way,
   * a tritone up: {@code C3 Eb3 F3} from C minor becomes {@code G2 Bb2 C3} in G minor and {@code
   * Eb3 G3 Ab3} in Eb major.
   */
  Riff moved(Key from, Key to) {
    int tonic = tonicMove(from, to);
    return withKeys(
        key -> {
          int step = from.tonic().to(from.spell(key).name()).steps();
          return key + tonic + semitones(to, step) - semitones(from, step);
        });
  }

  private static int tonicMove(Key from, Key to) {
    return Math.floorMod(to.tonic().chroma() - from.tonic().chroma() + 5, OCTAVE) - 5;
  }

  private static int semitones(Key key, int step) {
    return key.heptatonic().type().intervals().get(step).semitones();
  }

  /** The riff a number of semitones up or down. */
  Riff shifted(int semitones) {
    return withKeys(key -> key + semitones);
  }

  /** A bass that would go below the lowest string of a bass, where it was not before, goes up. */
  private Riff withKeys(IntUnaryOperator change) {
    List<Note> moved = withKeys(bass, change);
    boolean low = lowest(moved) < LOWEST_STRING && lowest(bass) >= LOWEST_STRING;
    List<Note> within = low ? withKeys(moved, key -> key + OCTAVE) : moved;
    return new Riff(within, bassLength, withKeys(chords, change), chordsLength);
  }

  private static int lowest(List<Note> notes) {
    return notes.stream().mapToInt(Note::key).min().orElse(LOWEST_STRING);
  }

  private static List<Note> withKeys(List<Note> notes, IntUnaryOperator change) {
    return notes.stream().map(n -> n.withKey(withinMidi(change.applyAsInt(n.key())))).toList();
  }

  /** A note that would leave the range of MIDI comes back by octaves. */
  private static int withinMidi(int key) {
    return key < 0 ? Math.floorMod(key, 12) : key > 127 ? 116 + Math.floorMod(key - 116, 12) : key;
  }
}
