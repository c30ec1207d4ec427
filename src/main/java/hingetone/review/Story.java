package hingetone.review;

import hingetone.review.ReviewedPhrase.Landing;
import hingetone.review.ReviewedPhrase.Return;
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

  private final Review review;
  private final Map<Integer, Played.Bar> bars;

  private Story(Review review) {
    this.review = review;
    this.bars = review.played().byNumber();
  }

  /** The sentences, one an observation, in order of the bars; the timing last. */
  public static List<String> of(Review review) {
    return new Story(review).sentences();
  }

  private List<String> sentences() {
    if (review.phrases().isEmpty()) {
      return List.of("Nothing was played.");
    }
    List<String> sentences = new ArrayList<>();
    review.remark().ifPresent(remark -> sentences.add(remark(remark)));
    int next = 0;
    for (ReviewedPhrase phrase : review.phrases()) {
      while (next < review.lines().size()
          && review.lines().get(next).atBar() <= phrase.start().bar()) {
        sentences.add(line(review.lines().get(next++)));
      }
      sentences.add(phrase(phrase));
      phrase.remark().ifPresent(remark -> sentences.add(remark(remark)));
    }
    for (; next < review.lines().size(); next++) {
      sentences.add(line(review.lines().get(next)));
    }
    sentences.add(timing());
    return sentences;
  }

  private String phrase(ReviewedPhrase phrase) {
    StringBuilder words = new StringBuilder(bars(phrase.start(), phrase.end())).append(": ");
    words.append(phrase.roleConfidence() < SURE ? "perhaps " : "").append(role(phrase));
    phrase.landing().ifPresent(landing -> words.append(landing(landing, phrase.pickupBeats())));
    phrase.returns().ifPresent(returns -> words.append(returns(returns)));
    return words.append('.').toString();
  }

  private static String remark(String remark) {
    return "Remark: " + remark;
  }

  private static String role(ReviewedPhrase phrase) {
    return switch (phrase.role()) {
      case STATEMENT -> "a statement";
      case REPLY -> phrase.repliesTo().map(i -> "a reply to phrase " + i).orElse("a reply");
      case OTHER -> "a figure on its own";
    };
  }

  private String landing(Landing landing, double pickup) {
    String run =
        pickup >= 0.5 ? ", a pickup of " + number(pickup) + (pickup > 1 ? " beats" : " beat") : "";
    Key key = keyAt(landing.at());
    int chroma = Math.floorMod(landing.pitch(), 12);
    String degree =
        chordAt(landing.at())
            .flatMap(
                chord -> chord.degreeOf(chroma).map(d -> ", the " + d + " of " + chord.symbol()))
            .orElseGet(() -> ", the " + key.degreeOf(chroma));
    String on = landing.at().beat().equals(Beats.ONE) ? "on the bar line" : landing.at().counted();
    return run + ", lands " + on + " on " + LiveWords.name(chroma, key) + degree;
  }

  private static String returns(Return returns) {
    String moved =
        returns.semitones() % 12 != 0
            ? " in the other key"
            : returns.semitones() > 0
                ? " an octave up"
                : returns.semitones() < 0 ? " an octave down" : "";
    String shifted = returns.shiftBeats() == 0 ? "" : " on another beat";
    String ending = returns.sameEnding() ? "" : " with another ending";
    return "; phrase " + returns.of() + " comes back" + moved + shifted + ending;
  }

  private static String line(CrossedLine line) {
    String words = "Into bar " + line.atBar() + ", " + line.from() + " to " + line.to() + ": ";
    LineWay way = line.way();
    String landed =
        way.landed().map(n -> ", landing on " + LiveWords.note(n, line.to())).orElse("");
    return words
        + switch (way.kind()) {
          case HOLD ->
              LiveWords.note(way.held().orElseThrow(), line.to())
                  + " held over the line"
                  + (line.holdsCommon() ? "; both keys have it, so it carries across." : ".");
          case RUN ->
              String.format(
                  Locale.ROOT,
                  "a run, %.1f notes a beat after %.1f%s; what is outside is short.",
                  way.densityInto(),
                  way.densityBefore(),
                  landed);
          case REST -> "the line left open.";
          case PLAIN -> "straight over" + landed + ".";
        };
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

  private static String number(double beats) {
    return beats == Math.rint(beats) ? Long.toString(Math.round(beats)) : Double.toString(beats);
  }
}
