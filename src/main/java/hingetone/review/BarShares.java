package hingetone.review;

import hingetone.ground.Ground;
import hingetone.ground.scales.FittingScale;
import hingetone.take.PlacedNote;
import hingetone.theory.Chord;
import hingetone.theory.Scale;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the notes of a bar were to its chords, in shares of the time they sound; each counts in the
 * first class that applies, a bent one as the pitch it reaches.
 *
 * @param bar the bar as it was played
 * @param notes how many notes were struck in it
 * @param chordTone the chord has it
 * @param scaleTone the scale that fits best has it
 * @param colour an accepted addition: the sixth over minor, the flat fifth, the major third over a
 *     dominant, the curled minor third
 * @param passing outside, but short and left by step into the scale
 * @param outside the rest
 */
public record BarShares(
    Played.Bar bar,
    int notes,
    double chordTone,
    double scaleTone,
    double colour,
    double passing,
    double outside) {
  private static final int CHORD = 0;
  private static final int SCALE = 1;
  private static final int COLOUR = 2;
  private static final int PASSING = 3;
  private static final int OUTSIDE = 4;

  /** A note that passes lasts less than so many beats; our own bound. */
  private static final double SHORT = 0.6;

  /** The bars in which something sounded, in order. */
  public static List<BarShares> of(Played played, Map<Integer, Ground> grounds) {
    List<BarShares> all = new ArrayList<>();
    for (Played.Bar bar : played.bars()) {
      if (bar.number() >= 1) {
        shares(played, bar, grounds.get(bar.keyShift())).ifPresent(all::add);
      }
    }
    return all;
  }

  private static Optional<BarShares> shares(Played played, Played.Bar bar, Ground ground) {
    double[] time = new double[OUTSIDE + 1];
    int struck = 0;
    for (int i = played.firstRinging(bar.start()); i < played.firstFrom(bar.end()); i++) {
      PlacedNote note = played.notes().get(i);
      double sounds = Math.min(note.end(), bar.end()) - Math.max(note.at(), bar.start());
      if (sounds > 0) {
        time[classOf(played, i, bar, ground)] += sounds;
      }
      struck += played.barAt(note.at()) == bar ? 1 : 0;
    }
    double sum = Arrays.stream(time).sum();
    return sum == 0
        ? Optional.empty()
        : Optional.of(
            new BarShares(
                bar,
                struck,
                time[CHORD] / sum,
                time[SCALE] / sum,
                time[COLOUR] / sum,
                time[PASSING] / sum,
                time[OUTSIDE] / sum));
  }

  private static int classOf(Played played, int index, Played.Bar bar, Ground ground) {
    PlacedNote note = played.notes().get(index);
    double place = Math.max(note.at(), bar.start());
    int chroma = note.chroma();
    Optional<Chord> chord = bar.chordAt(place);
    Scale scale = scale(bar, place, ground);
    if (chord.flatMap(c -> c.degreeOf(chroma)).isPresent()) {
      return CHORD;
    }
    if (scale.degreeOf(chroma).isPresent()) {
      return SCALE;
    }
    int fromTonic = Math.floorMod(chroma - bar.key().tonic().chroma(), 12);
    boolean sixth = fromTonic == 9 && bar.key().isMinor();
    boolean third =
        chord.filter(Chord::isDominant).isPresent()
            && Math.floorMod(chroma - chord.get().root().chroma(), 12) == 3;
    if (sixth || fromTonic == 6 || third) {
      return COLOUR;
    }
    return passes(played, index, scale) ? PASSING : OUTSIDE;
  }

  private static boolean passes(Played played, int index, Scale scale) {
    PlacedNote note = played.notes().get(index);
    double beat = played.barAt(note.at()).beatLength();
    if (note.length() >= SHORT * beat || index + 1 >= played.notes().size()) {
      return false;
    }
    PlacedNote next = played.notes().get(index + 1);
    int step = Math.abs(next.pitch() - note.pitch());
    boolean soon = next.at() - note.end() < SHORT * beat;
    boolean byFret = step == 1;
    return soon && (byFret || step == 2 && scale.degreeOf(next.chroma()).isPresent());
  }

  private static Scale scale(Played.Bar bar, double at, Ground ground) {
    return ground.scalesAt(bar.of().number(), bar.exactBeat(at)).stream()
        .findFirst()
        .map(FittingScale::scale)
        .orElse(bar.key().scale());
  }
}
