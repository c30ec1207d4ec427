package hingetone.print;

import static hingetone.print.Json.object;

import hingetone.review.BarShares;
import hingetone.review.CrossedLine;
import hingetone.review.DominantHome;
import hingetone.review.PhrasePlace;
import hingetone.review.Played;
import hingetone.review.Review;
import hingetone.review.ReviewedPhrase;
import hingetone.review.ReviewedPhrase.Landing;
import hingetone.review.ReviewedPhrase.Return;
import hingetone.review.Story;
import hingetone.text.Choice;
import hingetone.theory.Chord;
import hingetone.theory.Interval;
import hingetone.theory.Key;
import java.util.Map;
import java.util.Optional;

/** The JSON of {@code review}. */
public final class ReviewJson {
  private ReviewJson() {}

  /** The text of a review. */
  public static String of(Review review) {
    Map<Integer, Played.Bar> bars = review.played().byNumber();
    return Json.text(
        object(
            "version", 1,
            "notes", review.played().notes().size(),
            "remark", review.remark(),
            "timing",
                object(
                    "meanMs", tenths(review.timing().meanMs()),
                    "spreadMs", tenths(review.timing().spreadMs()),
                    "latencyMs", null),
            "phrases", review.phrases().stream().map(p -> phrase(review, p, bars)).toList(),
            "crossings", review.lines().stream().map(ReviewJson::line).toList(),
            "turnarounds", review.turnarounds().stream().map(ReviewJson::turnaround).toList(),
            "bars", review.bars().stream().map(ReviewJson::bar).toList(),
            "story", Story.of(review)));
  }

  private static Map<String, Object> phrase(
      Review review, ReviewedPhrase phrase, Map<Integer, Played.Bar> bars) {
    Optional<PhrasePlace> place = review.neck().places().get(phrase.index() - 1);
    return object(
        "index", phrase.index(),
        "start", Json.position(phrase.start()),
        "end", Json.position(phrase.end()),
        "notes", phrase.span().to() - phrase.span().from(),
        "confidence", thousandths(phrase.span().confidence()),
        "role", Choice.word(phrase.role()),
        "roleConfidence", thousandths(phrase.roleConfidence()),
        "repliesTo", phrase.repliesTo(),
        "pickupBeats", phrase.pickupBeats(),
        "landing", phrase.landing().map(landing -> landing(landing, bars)),
        "returns", phrase.returns().map(ReviewJson::returns),
        "remark", phrase.remark(),
        "place", place.map(ReviewJson::place));
  }

  private static Map<String, Object> place(PhrasePlace place) {
    return object(
        "low", place.low(),
        "high", place.high(),
        "pattern", place.pattern(),
        "start", place.start().map(Interval::toString),
        "strings", Choice.word(place.end()));
  }

  private static Map<String, Object> landing(Landing landing, Map<Integer, Played.Bar> bars) {
    Optional<Key> key = Optional.ofNullable(bars.get(landing.at().bar())).map(Played.Bar::key);
    return object(
        "at", Json.position(landing.at()),
        "note", key.map(k -> k.spell(landing.pitch()).toString()),
        "offsetMs", tenths(landing.offsetMs()));
  }

  private static Map<String, Object> returns(Return returns) {
    return object(
        "of", returns.of(),
        "semitones", returns.semitones(),
        "octaves", returns.semitones() / 12,
        "shiftBeats", returns.shiftBeats(),
        "openingNotes", returns.openingNotes(),
        "ending", returns.sameEnding() ? "same" : "different",
        "confidence", thousandths(returns.confidence()));
  }

  private static Map<String, Object> line(CrossedLine line) {
    return object(
        "atBar", line.atBar(),
        "from", line.from().toString(),
        "to", line.to().toString(),
        "kind", Choice.word(line.way().kind()),
        "confidence", 0.9,
        "held",
            line.way()
                .held()
                .map(
                    n ->
                        object(
                            "note", line.to().spell(n.pitch()).toString(),
                            "common", line.holdsCommon())),
        "densityBefore", thousandths(line.way().densityBefore()),
        "densityInto", thousandths(line.way().densityInto()),
        "chromaticNotes", line.chromaticNotes());
  }

  private static Map<String, Object> turnaround(DominantHome home) {
    return object(
        "atBar", home.atBar(),
        "densityBefore", thousandths(home.densityBefore()),
        "densityInto", thousandths(home.densityInto()));
  }

  private static Map<String, Object> bar(BarShares bar) {
    return object(
        "bar", bar.bar().number(),
        "key", bar.bar().key().toString(),
        "chord", bar.bar().of().chords().chords().get(0).chord().map(Chord::symbol),
        "notes", bar.notes(),
        "chordTone", thousandths(bar.chordTone()),
        "scaleTone", thousandths(bar.scaleTone()),
        "colour", thousandths(bar.colour()),
        "passing", thousandths(bar.passing()),
        "outside", thousandths(bar.outside()));
  }

  private static double tenths(double value) {
    return Math.rint(value * 10) / 10;
  }

  private static double thousandths(double value) {
    return Math.rint(value * 1000) / 1000;
  }
}
