package hingetone.hearing;

import hingetone.neck.Fretboard;
import hingetone.neck.LikelyWay;
import hingetone.neck.Spot;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * A recording written down.
 *
 * @param seconds how long it is
 * @param tuningCents how far the whole is above A = 440 Hz; the notes' pitches count from there
 * @param notes its notes, in order of time, two that sound together low first
 * @param doubts what makes them doubtful, a sentence each
 */
public record Transcription(
    double seconds, double tuningCents, List<Placed> notes, List<String> doubts) {
  private static final double TOGETHER = 0.03;

  /**
   * A note and where it is likely played; without a place where the neck does not have it.
   *
   * @param note the note
   * @param spot its place
   */
  public record Placed(HeardNote note, Optional<Spot> spot) {}

  public Transcription {
    notes = List.copyOf(notes);
    doubts = List.copyOf(doubts);
  }

  /** Takes the drift out of notes and finds where they lie. */
  static Transcription of(
      double seconds, List<HeardNote> heard, Fretboard neck, List<String> doubts) {
    double cents = TuningDrift.cents(heard);
    List<HeardNote> notes = heard.stream().map(note -> note.lowered(cents / 100)).toList();
    List<List<HeardNote>> moments = moments(notes, note -> note);
    List<List<Spot>> ways =
        LikelyWay.over(neck, moments.stream().map(Transcription::moment).toList());
    List<Placed> placed = new ArrayList<>();
    for (int i = 0; i < moments.size(); i++) {
      for (int n = 0; n < moments.get(i).size(); n++) {
        List<Spot> way = ways.get(i);
        Optional<Spot> spot = way.isEmpty() ? Optional.empty() : Optional.of(way.get(n));
        placed.add(new Placed(moments.get(i).get(n), spot));
      }
    }
    return new Transcription(seconds, cents, placed, doubts);
  }

  /** The notes, those together that begin together. */
  public List<List<Placed>> moments() {
    return moments(notes, Placed::note);
  }

  private static <N> List<List<N>> moments(List<N> notes, Function<N, HeardNote> heard) {
    List<List<N>> moments = new ArrayList<>();
    for (N note : notes) {
      List<N> last = moments.isEmpty() ? List.of() : moments.get(moments.size() - 1);
      if (!last.isEmpty() && heard.apply(note).at() - heard.apply(last.get(0)).at() < TOGETHER) {
        last.add(note);
      } else {
        moments.add(new ArrayList<>(List.of(note)));
      }
    }
    return moments;
  }

  private static LikelyWay.Moment moment(List<HeardNote> notes) {
    HeardNote first = notes.get(0);
    boolean joined = first.technique() == Technique.LEGATO || first.technique() == Technique.SLIDE;
    return new LikelyWay.Moment(notes.stream().map(HeardNote::fretted).toList(), joined);
  }
}
