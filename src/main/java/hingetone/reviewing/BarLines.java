package hingetone.reviewing;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.hearing.Alignment;
import hingetone.hearing.HeardNote;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.Position;
import hingetone.time.TempoMap;
import java.util.List;

/**
 * Finds the bar lines of notes whose beat is known to a half: of all places half beats apart the
 * one where most of their time is in the chart's keys and chords and begins on beats and on bar
 * lines. The weights are our own.
 */
final class BarLines {
  private static final double IN_CHORD = 0.5;
  private static final double ON_BEAT = 0.5;
  private static final double ON_BAR = 0.4;

  /** How much better than the expected place another must be. */
  private static final double CLEARLY = 0.05;

  private static final int MOST_HALF_BEATS = 128;
  private static final double NEAR = 0.15;
  private static final double LONGEST = 1;

  private final Form form;
  private final TempoMap tempos;
  private final List<HeardNote> notes;
  private final double beat;

  private BarLines(Chart chart, TempoMap tempos, List<HeardNote> notes) {
    this.form = Form.of(chart);
    this.tempos = tempos;
    this.notes = notes;
    this.beat = form.bar(1).meter().beatLength().toDouble();
  }

  /**
   * The place of bar 1, in seconds from where the notes count.
   *
   * @param tempos the chart's, as fast as they were taken
   * @param found a place that is right but for half beats
   */
  static double of(Chart chart, TempoMap tempos, List<HeardNote> notes, double found) {
    BarLines lines = new BarLines(chart, tempos, notes);
    double half = lines.beat / 2 * 60 / tempos.quartersPerMinute(Beats.ZERO).toDouble();
    double best = lines.fit(found) + CLEARLY;
    double place = found;
    for (int k = 1; k <= MOST_HALF_BEATS; k++) {
      for (double there : new double[] {found + k * half, found - k * half}) {
        double fit = lines.fit(there);
        if (fit > best + 1e-9) {
          best = fit;
          place = there;
        }
      }
    }
    return place;
  }

  private double fit(double bar1) {
    Alignment alignment = Alignment.at(bar1, tempos, List.of());
    double sum = 0;
    double all = 0;
    for (HeardNote note : notes) {
      double quarters = alignment.quarters(note.at());
      Position place = form.position(Beats.of(Math.round(quarters * 4), 4));
      double beats = quarters / beat;
      boolean onBeat = Math.abs(beats - Math.rint(beats)) < NEAR;
      boolean onBar = onBeat && place.beat().equals(Beats.ONE);
      Key key = form.bar(place.bar()).key();
      int chroma = Math.floorMod(Math.round(note.reached()), 12);
      double in = key.scale().degreeOf(chroma).isPresent() ? 1 : 0;
      boolean inChord =
          form.bar(place.bar()).chordAt(place.beat()).flatMap(c -> c.degreeOf(chroma)).isPresent();
      in += inChord ? IN_CHORD : 0;
      double length = Math.min(LONGEST, note.end() - note.at());
      sum += length * (in + (onBeat ? ON_BEAT : 0) + (onBar ? ON_BAR : 0));
      all += length;
    }
    return all == 0 ? 0 : sum / all;
  }
}
