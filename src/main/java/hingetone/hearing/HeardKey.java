package hingetone.hearing;

import hingetone.theory.Key;
import hingetone.theory.NoteName;
import hingetone.theory.ScaleType;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The key that notes are spelled in where nobody says which: the one that has most of them. */
public final class HeardKey {
  /** How much more the tonic's and the fifth's sounding time tells than that of other notes. */
  private static final double TONIC = 0.5;

  private HeardKey() {}

  /** Of the major and minor keys with up to six sharps or flats the best; C major for no notes. */
  public static Key of(List<HeardNote> notes) {
    double[] time = new double[12];
    for (HeardNote note : notes) {
      time[Math.floorMod(Math.round(note.reached()), 12)] += Math.min(2, note.end() - note.at());
    }
    return keys().stream().max(Comparator.comparingDouble(key -> fit(key, time))).orElseThrow();
  }

  private static List<Key> keys() {
    List<Key> keys = new ArrayList<>();
    for (int fifths : new int[] {0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6}) {
      keys.add(new Key(NoteName.ofFifths(fifths), ScaleType.named("major")));
      keys.add(new Key(NoteName.ofFifths(fifths + 3), ScaleType.named("minor")));
    }
    return keys;
  }

  private static double fit(Key key, double[] time) {
    double fit = TONIC * time[key.tonic().chroma()];
    for (NoteName name : key.heptatonic().notes()) {
      fit += time[name.chroma()];
    }
    return fit;
  }
}
