package hingetone.review;

import hingetone.review.ReviewedPhrase.Landing;
import hingetone.review.ReviewedPhrase.Return;
import hingetone.review.ReviewedPhrase.Role;
import hingetone.take.PlacedNote;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What each phrase does: where it lands, what comes back in it, whether it asks or answers. */
public final class PhraseReview {
  private static final int FEWEST_SAME = 4;
  private static final double LEAST_SHARE = 0.8;

  /** So many of those told are right, on the tuning part of the labelled takes. */
  private static final double RIGHT = 0.78;

  /** The ending is the same where so much of both phrases is. */
  private static final double WHOLE = 0.75;

  /** What comes back is looked for among so many phrases before. */
  private static final int REMEMBERED = 200;

  private final Played played;
  private final List<PhraseFinder.Span> spans;

  /** The notes of each phrase. */
  private final List<List<PlacedNote>> notes;

  private final Marks marks;

  private PhraseReview(Played played, Marks marks) {
    this.played = played;
    this.marks = marks;
    this.spans = marks.spans(played);
    this.notes =
        spans.stream().map(span -> played.notes().subList(span.from(), span.to())).toList();
  }

  /** The phrases in order, with what a teacher has marked. */
  public static List<ReviewedPhrase> of(Played played, Marks marks) {
    return new PhraseReview(played, marks).phrases();
  }

  private List<ReviewedPhrase> phrases() {
    List<ReviewedPhrase> phrases = new ArrayList<>();
    RoleSigns signs = new RoleSigns(played, notes);
    Optional<Role> before = Optional.empty();
    int asked = -1;
    int replies = 0;
    for (int i = 0; i < spans.size(); i++) {
      Optional<Return> returns = returns(i);
      RoleChoice own = RoleChoice.of(signs.of(i, before, replies, returns), asked >= 0);
      Optional<MarkedPhrase> marked = marks.of(i);
      RoleChoice choice =
          marked.flatMap(MarkedPhrase::role).map(role -> new RoleChoice(role, 1)).orElse(own);
      Role role = choice.role();
      Optional<Integer> last = asked < 0 ? Optional.empty() : Optional.of(asked + 1);
      Optional<Integer> to =
          role == Role.REPLY
              ? marked.flatMap(MarkedPhrase::repliesTo).or(() -> last)
              : Optional.empty();
      asked = role == Role.STATEMENT ? i : asked;
      replies = role == Role.STATEMENT ? 0 : role == Role.REPLY ? replies + 1 : replies;
      before = Optional.of(role);
      phrases.add(phrase(i, choice, to, returns));
    }
    return phrases;
  }

  private ReviewedPhrase phrase(
      int i, RoleChoice choice, Optional<Integer> to, Optional<Return> returns) {
    Role role = choice.role();
    PhraseFinder.Span span = spans.get(i);
    PlacedNote first = notes.get(i).get(0);
    double end = notes.get(i).stream().mapToDouble(PlacedNote::end).max().orElseThrow();
    Optional<PlacedNote> main =
        role == Role.OTHER ? Optional.empty() : Optional.of(main(notes.get(i)));
    Optional<Landing> landing = main.map(this::landing);
    double beat = played.barAt(first.at()).beatLength();
    double pickup = main.map(n -> Math.round((n.at() - first.at()) / beat * 2) / 2.0).orElse(0.0);
    return new ReviewedPhrase(
        i + 1,
        span,
        played.position(first.at()),
        played.position(end),
        role,
        choice.confidence(),
        to,
        pickup,
        landing,
        returns,
        marks.of(i).flatMap(MarkedPhrase::remark));
  }

  // Landing

  /** The note that weighs most: long, on a strong beat, bent, early in the phrase. */
  private PlacedNote main(List<PlacedNote> notes) {
    PlacedNote best = notes.get(0);
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < notes.size(); i++) {
      PlacedNote note = notes.get(i);
      double beat = played.barAt(note.at()).beatLength();
      double until = i + 1 < notes.size() ? notes.get(i + 1).at() : note.end();
      double length = Math.min(2, Math.max(note.length(), until - note.at()) / beat);
      double bent = Math.abs(note.reached() - note.struck()) >= 0.5 ? 0.4 : 0;
      double weight = 0.5 * length + strength(note.at()) + bent - 0.2 * i;
      if (weight > most + 1e-9) {
        most = weight;
        best = note;
      }
    }
    return best;
  }

  /** How strong a place is in its bar: the line 1.6, a strong beat 0.9, a beat 0.5. */
  private double strength(double at) {
    Position place = played.position(at, 2);
    if (!place.beat().fraction().isZero()) {
      Played.Bar bar = played.barAt(at);
      boolean push = bar.beat(at) > bar.of().meter().beatsPerBar() + 0.3;
      return push ? 0.5 : 0;
    }
    int beat = (int) place.beat().floor();
    if (beat == 1) {
      return 1.6;
    }
    return played.barAt(at).of().meter().strongBeats().contains(beat) ? 0.9 : 0.5;
  }

  private Landing landing(PlacedNote note) {
    Position place = played.position(note.at(), 2);
    Played.Bar bar = played.barAt(note.at());
    double beats = bar.beat(note.at());
    double offset = beats - Math.round(beats * 2) / 2.0;
    double ms = offset * bar.beatLength() * played.msPerQuarter(note.at());
    return new Landing(place, note.pitch(), ms);
  }

  // Returns

  /** The earlier phrase whose opening comes back, the one with most of it, of equals the latest. */
  private Optional<Return> returns(int phrase) {
    Optional<Return> best = Optional.empty();
    for (int earlier = phrase - 1; earlier >= Math.max(0, phrase - REMEMBERED); earlier--) {
      Optional<Return> found = returns(earlier, phrase);
      boolean better = found.isPresent() && best.filter(b -> !more(found.get(), b)).isEmpty();
      best = better ? found : best;
    }
    return best;
  }

  /** Whether more of an opening comes back, or as much in its own key. */
  private static boolean more(Return one, Return other) {
    boolean nearer = one.semitones() == 0 && other.semitones() != 0;
    return one.openingNotes() > other.openingNotes()
        || one.openingNotes() == other.openingNotes() && nearer;
  }

  private Optional<Return> returns(int earlier, int phrase) {
    List<PlacedNote> then = notes.get(earlier);
    List<PlacedNote> now = notes.get(phrase);
    Likeness like = Likeness.of(played, then, now);
    if (like.opening() < FEWEST_SAME || like.share() < LEAST_SHARE) {
      return Optional.empty();
    }
    boolean whole = like.all() >= WHOLE * Math.max(then.size(), now.size());
    double sure = RIGHT * like.share();
    return Optional.of(
        new Return(earlier + 1, like.semitones(), like.beats(), like.opening(), whole, sure));
  }
}
