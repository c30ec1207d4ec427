package hingetone.backing;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.score.Note;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.List;

/** The clicks before bar 1: every beat, the first of a bar loudest, strong ones louder. */
final class CountIn {
  /** Side stick: it sounds in every bank, the JDK's built-in one included. */
  private static final int CLICK = 37;

  private CountIn() {}

  /** How long it is, in quarter notes. */
  static Beats length(Chart chart, Form form) {
    return form.bars().get(0).meter().barLength().times(chart.countIn());
  }

  static List<Note> clicks(Chart chart, Form form) {
    Meter meter = form.bars().get(0).meter();
    List<Note> clicks = new ArrayList<>();
    for (int bar = chart.countIn(); bar > 0; bar--) {
      Beats start = meter.barLength().times(-bar);
      for (Beats beat : meter.beats()) {
        Beats onset = start.plus(meter.toQuarters(beat.minus(Beats.ONE)));
        int velocity = beat.equals(Beats.ONE) ? 120 : meter.isStrong(beat) ? 100 : 84;
        clicks.add(new Note(onset, Beats.of(1, 8), CLICK, velocity));
      }
    }
    return clicks;
  }
}
