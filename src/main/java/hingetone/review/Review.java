package hingetone.review;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.ground.Ground;
import hingetone.neck.Fretboard;
import hingetone.neck.PatternNumbers;
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
 * @param form the form it was played over, in the keys of the first bar played
 * @param neck where it lies on the neck
 */
public record Review(
    Played played,
    Timing timing,
    List<ReviewedPhrase> phrases,
    List<CrossedLine> lines,
    List<DominantHome> turnarounds,
    List<BarShares> bars,
    Optional<String> remark,
    Form form,
    PlayedNeck neck) {

  /** Reviews what was played over a chart. */
  public static Review of(Played played, Chart chart) {
    return of(played, chart, Marks.NONE, PatternNumbers.FROM_THE_TONIC);
  }

  /** Reviews what was played over a chart, with what a teacher has marked in it. */
  public static Review of(Played played, Chart chart, Marks marks, PatternNumbers patterns) {
    Fretboard board = Fretboard.of(chart.tuning(), chart.capo());
    Map<Integer, Ground> grounds = new HashMap<>();
    for (Played.Bar bar : played.bars()) {
      grounds.computeIfAbsent(
          bar.keyShift(), shift -> Ground.of(Form.of(chart.shifted(shift)), board));
    }
    List<ReviewedPhrase> phrases = PhraseReview.of(played, marks);
    return new Review(
        played,
        Timing.of(played),
        phrases,
        CrossedLine.of(played),
        DominantHome.of(played, grounds),
        BarShares.of(played, grounds),
        marks.remark(),
        grounds.get(played.bars().get(0).keyShift()).form(),
        PlayedNeck.of(played, phrases, board, patterns));
  }
}
