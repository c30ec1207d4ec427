package hingetone.review;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.ground.Ground;
import hingetone.neck.Fretboard;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All that is understood of what was played.
 *
 * @param played the notes in their bars
 * @param timing how they lie against the beat
 * @param phrases the phrases, in order
 * @param lines the changes of key, in order
 * @param turnarounds the dominants that lead home, in order
 * @param bars what the notes were to the chords, for each bar in which something sounded
 * @param remark what a teacher remarks on the whole
 */
public record Review(
    Played played,
    Timing timing,
    List<ReviewedPhrase> phrases,
    List<CrossedLine> lines,
    List<DominantHome> turnarounds,
    List<BarShares> bars,
    Optional<String> remark) {

  /** Reviews what was played over a chart. */
  public static Review of(Played played, Chart chart) {
    return of(played, chart, Marks.NONE);
  }

  /** Reviews what was played over a chart, with what a teacher has marked in it. */
  public static Review of(Played played, Chart chart, Marks marks) {
    Fretboard board = Fretboard.of(chart.tuning(), chart.capo());
    Map<Integer, Ground> grounds = new HashMap<>();
    for (Played.Bar bar : played.bars()) {
      grounds.computeIfAbsent(
          bar.keyShift(), shift -> Ground.of(Form.of(chart.shifted(shift)), board));
    }
    return new Review(
        played,
        Timing.of(played),
        PhraseReview.of(played, marks),
        CrossedLine.of(played),
        DominantHome.of(played, grounds),
        BarShares.of(played, grounds),
        marks.remark());
  }
}
