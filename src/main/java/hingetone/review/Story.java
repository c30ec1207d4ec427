package hingetone.review;

import hingetone.review.ReviewedPhrase.Landing;
import hingetone.review.ReviewedPhrase.Return;
import hingetone.review.ReviewedPhrase.Role;
import hingetone.take.PlacedNote;
import hingetone.theory.Chord;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** What was played in plain sentences, bar numbers first, with the reason why it worked. */
public final class Story {
  /** Below this a statement is made with a "perhaps". */
  private static final double SURE = 0.6;

  /** So many landings in place are good; strokes spread further are uneven; our own bounds. */
  private static final double GOOD = 0.75;

  private static final double UNEVEN_MS = 35;

  /** A last note belongs to the key in which it sounds until this close to its end, in quarters. */
  private static final double RINGS_OUT = 0.5;

  private static final List<String> NUMBERS =
      List.of("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine");

  private final Review review;
  private final Map<Integer, Played.Bar> bars;

  private Story(Review review) {
    this.review = review;
    this.bars = review.played().byNumber();
  }

  /**
   * An observation.
   *
   * @param sentence a sentence or two
   * @param phrase the phrase that it is about, where it is about one
   */
  public record Told(String sentence, Optional<ReviewedPhrase> phrase) {
    private static Told of(String sentence) {
      return new Told(sentence, Optional.empty());
    }
  }

  /** The sentences, one an observation, in order of the bars; the whole last. */
  public static List<String> of(Review review) {
    return told(review).stream().map(Told::sentence).toList();
  }

  /** The same, each with what it is about. */
  public static List<Told> told(Review review) {
    return new Story(review).told();
  }

  private List<Told> told() {
    if (review.phrases().isEmpty()) {
      return List.of(Told.of("Nothing was played."));
    }
    List<Told> told = new ArrayList<>();
    review.remark().ifPresent(remark -> told.add(Told.of(remark(remark))));
    int next = 0;
    for (ReviewedPhrase phrase : review.phrases()) {
      while (next < review.lines().size()
          && review.lines().get(next).atBar() <= phrase.start().bar()) {
        told.add(Told.of(line(review.lines().get(next++))));
      }
      told.add(new Told(phrase(phrase), Optional.of(phrase)));
      phrase.remark().ifPresent(remark -> told.add(Told.of(remark(remark))));
    }
    for (; next < review.lines().size(); next++) {
      told.add(Told.of(line(review.lines().get(next))));
    }
    told.add(Told.of(timing()));
    worked().map(Told::of).ifPresent(told::add);
    toTry().map(Told::of).ifPresent(told::add);
    return told;
  }

  // Phrases

  private String phrase(ReviewedPhrase phrase) {
    StringBuilder words = new StringBuilder(bars(phrase.start(), phrase.end())).append(": ");
    words.append(phrase.roleConfidence() < SURE ? "perhaps " : "").append(role(phrase));
    phrase.landing().ifPresent(landing -> words.append(landing(phrase, landing)));
    if (phrase.role() != Role.OTHER) {
      words.append(ending(phrase));
    }
    words.append('.');
    phrase.returns().ifPresent(returns -> words.append(' ').append(returns(returns)));
    return words.toString();
  }

  private static String remark(String remark) {
    return "Remark: " + remark;
  }

  private static String role(ReviewedPhrase phrase) {
    return switch (phrase.role()) {
      case STATEMENT -> "a statement";
      case REPLY -> phrase.repliesTo().map(i -> "a reply to phrase " + i).orElse("a reply");
      case OTHER -> "a line in between";
    };
  }

  private String landing(ReviewedPhrase phrase, Landing landing) {
    Key key = keyAt(landing.at());
    int chroma = Math.floorMod(landing.pitch(), 12);
    String degree =
        chordAt(landing.at())
            .flatMap(chord -> chord.degreeOf(chroma).map(d -> "the " + d + " of " + chord.symbol()))
            .orElseGet(() -> "the " + key.degreeOf(chroma) + " of the key");
    String on =
        landing.at().beat().equals(Beats.ONE) ? "on the bar line" : "on " + landing.at().counted();
    int before = notesBefore(phrase, landing);
    String pickup =
        before == 0
            ? ""
            : " after " + (before == 1 ? "a note" : number(before) + " notes") + " of pickup";
    return " that lands on " + LiveWords.name(chroma, key) + ", " + degree + ", " + on + pickup;
  }

  /** How many strokes of a phrase come before its landing. */
  private int notesBefore(ReviewedPhrase phrase, Landing landing) {
    Played.Bar bar = barOf(landing.at());
    double place = bar.start() + (landing.at().beat().toDouble() - 1) * bar.beatLength();
    double slack = LineWay.TOGETHER * bar.beatLength();
    int strokes = 0;
    double last = Double.NEGATIVE_INFINITY;
    for (PlacedNote note : notes(phrase)) {
      boolean landed = note.pitch() == landing.pitch() && note.at() > place - bar.beatLength() / 2;
      if (landed || note.at() >= place) {
        break;
      }
      strokes += note.at() - last > slack ? 1 : 0;
      last = note.at();
    }
    return strokes;
  }

  private List<PlacedNote> notes(ReviewedPhrase phrase) {
    return review.played().notes().subList(phrase.span().from(), phrase.span().to());
  }

  /** A phrase that ends on the tonic is closed, any other open. */
  private String ending(ReviewedPhrase phrase) {
    List<PlacedNote> notes = notes(phrase);
    PlacedNote last = notes.get(notes.size() - 1);
    Key key = review.played().barAt(Math.max(last.at(), last.end() - RINGS_OUT)).key();
    boolean same = review.played().barAt(last.at()).key().equals(key);
    String of = same ? "" : " of " + key;
    boolean closed = last.chroma() == key.tonic().chroma();
    String note = LiveWords.name(last.chroma(), key);
    return closed
        ? ", and closes on " + note + ", the 1" + of
        : ", and stays open on " + note + ", the " + key.degreeOf(last.chroma()) + of;
  }

  /** What comes back, and why that works. */
  private static String returns(Return returns) {
    boolean otherKey = returns.semitones() % 12 != 0;
    String moved =
        otherKey
            ? " in another key"
            : returns.semitones() > 0
                ? " an octave up"
                : returns.semitones() < 0 ? " an octave down" : "";
    String shifted = returns.shiftBeats() == 0 ? "" : " on another beat";
    String ending = returns.sameEnding() ? "" : " with another ending";
    String why =
        returns.shiftBeats() != 0
            ? "known notes pull against the bar"
            : otherKey
                ? "the tune binds the two keys"
                : !returns.sameEnding()
                    ? "a known opening makes the new ending heard"
                    : returns.semitones() != 0
                        ? "the same words in another voice"
                        : "what is repeated is remembered";
    String perhaps = returns.confidence() < SURE ? "Perhaps phrase " : "Phrase ";
    return perhaps + returns.of() + " comes back" + moved + shifted + ending + ": " + why + ".";
  }

  // Changes of key

  private static String line(CrossedLine line) {
    String words = "Into bar " + line.atBar() + ", " + line.from() + " to " + line.to() + ": ";
    LineWay way = line.way();
    String landed =
        way.landed().map(n -> ", landing on " + LiveWords.note(n, line.to())).orElse("");
    return words
        + switch (way.kind()) {
          case HOLD -> held(line);
          case RUN ->
              String.format(
                  Locale.ROOT,
                  "a run, %.1f notes a beat after %.1f before%s%s.",
                  way.densityInto(),
                  way.densityBefore(),
                  landed,
                  outside(line.chromaticNotes()));
          case REST -> "the line left open.";
          case PLAIN -> "straight over" + landed + ".";
        };
  }

  private static String held(CrossedLine line) {
    int chroma = line.way().held().orElseThrow().chroma();
    return LiveWords.name(chroma, line.to())
        + " held over the line, the "
        + line.to().degreeOf(chroma)
        + " of "
        + line.to()
        + (line.holdsCommon() ? "; both keys have it, so it carries across." : ".");
  }

  private static String outside(int notes) {
    return notes == 0
        ? ""
        : notes == 1
            ? "; one note is in neither key and passes"
            : "; " + number(notes) + " notes are in neither key and pass";
  }

  // The whole

  /** What worked, where something did. */
  private Optional<String> worked() {
    List<String> good = new ArrayList<>();
    TakeFigures figures = TakeFigures.of(review);
    if (figures.landings() > 1 && figures.onPlace() >= GOOD * figures.landings()) {
      good.add(figures.onPlace() + " of " + figures.landings() + " landings are in place");
    }
    long bound = review.lines().stream().filter(CrossedLine::holdsCommon).count();
    if (bound > 0) {
      good.add("a note that both keys have carries over a change of key");
    }
    long replies = review.phrases().stream().filter(p -> p.role() == Role.REPLY).count();
    long asked = review.phrases().stream().filter(p -> p.role() == Role.STATEMENT).count();
    if (asked > 1 && replies >= asked) {
      good.add("what is asked is answered");
    }
    return good.isEmpty()
        ? Optional.empty()
        : Optional.of("What worked: " + String.join("; ", good) + ".");
  }

  /** One thing to try next: the first that is missing. */
  private Optional<String> toTry() {
    TakeFigures figures = TakeFigures.of(review);
    List<LineWay.Kind> ways = review.lines().stream().map(l -> l.way().kind()).distinct().toList();
    String idea = "";
    if (figures.timing().tells() && figures.timing().spreadMs() > UNEVEN_MS) {
      idea = "the same slower, until the strokes lie closer together";
    } else if (review.lines().size() > 1 && ways.size() == 1) {
      idea =
          ways.get(0) == LineWay.Kind.HOLD
              ? "run over the next change of key instead of holding a note"
              : "hold one note that both keys have over the next change of key";
    } else if (figures.phrases() > 3 && figures.returns() == 0) {
      idea = "bring an opening back later, with another ending";
    }
    return idea.isEmpty() ? Optional.empty() : Optional.of("To try: " + idea + ".");
  }

  private String timing() {
    if (!review.timing().tells()) {
      return "Timing: too few notes on a beat to tell.";
    }
    long mean = Math.round(review.timing().meanMs());
    String where =
        Math.abs(mean) < 5
            ? "on the beat"
            : Math.abs(mean) + " ms " + (mean > 0 ? "behind" : "ahead of") + " the beat";
    return "Timing: "
        + where
        + " on average, spread "
        + Math.round(review.timing().spreadMs())
        + " ms.";
  }

  private static String bars(Position from, Position to) {
    boolean one = from.bar() >= to.bar();
    return one ? "Bar " + from.bar() : "Bars " + from.bar() + " to " + to.bar();
  }

  private Key keyAt(Position place) {
    return barOf(place).key();
  }

  private Optional<Chord> chordAt(Position place) {
    return barOf(place).of().chordAt(place.beat());
  }

  private Played.Bar barOf(Position place) {
    return bars.getOrDefault(place.bar(), review.played().bars().get(0));
  }

  private static String number(int count) {
    return count < NUMBERS.size() ? NUMBERS.get(count) : Integer.toString(count);
  }
}
