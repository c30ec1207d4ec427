package hingetone.backing;

import hingetone.chart.Form;
import hingetone.groove.Feel;
import hingetone.groove.Fill;
import hingetone.groove.Groove;
import hingetone.score.Fullness;
import hingetone.time.Beats;
import java.util.Optional;

/**
 * What the band has agreed on for one bar of a lap.
 *
 * @param bar the bar of the form
 * @param groove its groove
 * @param feel the groove's feel, or the chart's swing
 * @param band how full the band plays
 * @param level how much it gives in this lap, from −1 (light) over 0 (normal) to 1 (full)
 * @param moment what it does for whoever speaks, or for the line that comes
 * @param leadsOn whether another section, or the next lap, starts after it
 * @param crossing whether another key starts after it
 * @param turnaround whether it is one of the dominant bars that lead to the next section's tonic
 * @param fill the drum fill at its end
 * @param stop whether the band stops after its first beat
 */
record BarPlan(
    Form.Bar bar,
    Groove groove,
    Feel feel,
    Fullness band,
    double level,
    Moment moment,
    boolean leadsOn,
    boolean crossing,
    boolean turnaround,
    Optional<Fill> fill,
    boolean stop) {

  /** A place in the bar as it is played, swing included, in quarter notes from the lap's start. */
  Beats played(Beats inBar) {
    return bar.start().plus(feel.place(inBar, bar.meter()));
  }

  /**
   * How loud the band plays here, 1 being as drawn: by as much as it gives from 0.82 to 1.07, as
   * the moment asks, louder into the next section and, more, in a turnaround.
   */
  double loudness() {
    double loudness = 1 + (level < 0 ? 0.18 : 0.07) * level;
    double here = leadsOn ? Math.max(1.04, moment.loudness()) : moment.loudness();
    return loudness * (turnaround ? 1.2 : here);
  }

  /** A velocity as drawn, at this bar's loudness. */
  int velocity(int drawn) {
    return Math.max(1, Math.min(127, (int) Math.round(drawn * loudness())));
  }
}
