package hingetone.review;

import hingetone.review.ReviewedPhrase.Role;
import hingetone.take.PlacedNote;
import hingetone.theory.Chord;
import java.util.List;
import java.util.Optional;

/**
 * What speaks for a phrase asking, answering or neither, each sign a number of about 0 to 1: how it
 * lies to the phrase before it, whether it takes that one's opening, whether it ends closed.
 */
final class RoleSigns {
  /** How many signs there are. */
  static final int COUNT = 18;

  private static final int OPENING = 5;
  private static final double SAME_GAP = 0.2;

  private final Played played;
  private final List<List<PlacedNote>> phrases;

  RoleSigns(Played played, List<List<PlacedNote>> phrases) {
    this.played = played;
    this.phrases = phrases;
  }

  /**
   * The signs of a phrase.
   *
   * @param before the role of the phrase before it; empty for the first
   * @param replies how many replies the last statement has had
   * @param returns what comes back in it
   */
  double[] of(int i, Optional<Role> before, int replies, Optional<ReviewedPhrase.Return> returns) {
    List<PlacedNote> notes = phrases.get(i);
    List<PlacedNote> last = phrases.get(Math.max(0, i - 1));
    double beat = played.barAt(notes.get(0).at()).beatLength();
    double gap = i == 0 ? 4 : (notes.get(0).at() - end(last)) / beat;
    double ratio = Math.log(length(notes) / length(last)) / Math.log(2);
    boolean ofBefore = returns.filter(r -> r.of() == i).isPresent();
    boolean ofEarlier = returns.filter(r -> r.of() < i).isPresent();
    return new double[] {
      1,
      is(before.equals(Optional.of(Role.STATEMENT))),
      is(before.equals(Optional.of(Role.REPLY))) * is(replies == 1),
      is(before.equals(Optional.of(Role.REPLY))) * is(replies > 1),
      is(before.equals(Optional.of(Role.OTHER))),
      Math.min(1, notes.size() / 12.0),
      is(notes.size() <= 4),
      Math.min(1, Math.max(0, gap) / 4),
      Math.min(1, Math.abs(ratio)),
      Math.max(-1, Math.min(1, ratio)),
      closed(notes),
      i == 0 ? 0 : closed(last),
      i == 0 ? 0 : sameRhythm(last, notes),
      is(ofBefore),
      is(ofEarlier && !ofBefore),
      evenness(notes),
      landsOnLine(notes),
      Math.min(1, range(notes) / 12.0)
    };
  }

  private static double is(boolean holds) {
    return holds ? 1 : 0;
  }

  private static double end(List<PlacedNote> notes) {
    return notes.get(notes.size() - 1).end();
  }

  private static double length(List<PlacedNote> notes) {
    return Math.max(0.5, end(notes) - notes.get(0).at());
  }

  /**
   * 1 where the last note is the tonic or the chord's root, half where it is another chord note.
   */
  private double closed(List<PlacedNote> notes) {
    PlacedNote last = notes.get(notes.size() - 1);
    Played.Bar bar = played.barAt(last.at());
    int chroma = last.chroma();
    Optional<Chord> chord = bar.chordAt(last.at());
    boolean tonic = chroma == bar.key().tonic().chroma();
    boolean root = chord.filter(c -> c.root().chroma() == chroma).isPresent();
    boolean ofChord = chord.flatMap(c -> c.degreeOf(chroma)).isPresent();
    return tonic || root ? 1 : ofChord ? 0.5 : 0;
  }

  /** The share of the opening whose distances of strokes are the same. */
  private double sameRhythm(List<PlacedNote> one, List<PlacedNote> other) {
    int most = Math.min(OPENING, Math.min(one.size(), other.size()));
    double beat = played.barAt(other.get(0).at()).beatLength();
    int same = 0;
    for (int i = 1; i < most; i++) {
      double gap = (one.get(i).at() - one.get(i - 1).at()) / beat;
      double otherGap = (other.get(i).at() - other.get(i - 1).at()) / beat;
      same += Math.abs(gap - otherGap) <= SAME_GAP ? 1 : 0;
    }
    return most < 2 ? 0 : same / (most - 1.0);
  }

  /** 1 where all strokes are equally far apart. */
  private double evenness(List<PlacedNote> notes) {
    if (notes.size() < 3) {
      return 0;
    }
    double beat = played.barAt(notes.get(0).at()).beatLength();
    double first = (notes.get(1).at() - notes.get(0).at()) / beat;
    int same = 0;
    for (int i = 2; i < notes.size(); i++) {
      double gap = (notes.get(i).at() - notes.get(i - 1).at()) / beat;
      same += Math.abs(gap - first) <= SAME_GAP ? 1 : 0;
    }
    return same / (notes.size() - 2.0);
  }

  /** 1 where one of the first notes lies on a bar line and has time after it. */
  private double landsOnLine(List<PlacedNote> notes) {
    for (int i = 0; i < Math.min(OPENING, notes.size()); i++) {
      double beat = played.barAt(notes.get(i).at()).beatLength();
      double until = i + 1 < notes.size() ? notes.get(i + 1).at() : notes.get(i).end();
      boolean rests = (until - notes.get(i).at()) / beat >= 0.9;
      if (rests && PhraseSigns.strength(played, notes.get(i).at()) >= 1) {
        return 1;
      }
    }
    return 0;
  }

  private static double range(List<PlacedNote> notes) {
    double low = notes.stream().mapToDouble(PlacedNote::reached).min().orElse(0);
    double high = notes.stream().mapToDouble(PlacedNote::reached).max().orElse(0);
    return high - low;
  }
}
