package hingetone.backing;

import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Score;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * How much a groove's turnarounds thicken, over four laps: their bars against the other bars of the
 * same sections, the bar with the crash and bars of stop time aside.
 *
 * @param strokes notes in a bar, as a ratio
 * @param velocity mean velocity, as a ratio
 */
record Thickening(double strokes, double velocity) {
  private static final int LAPS = 4;

  /** Notes times velocity, as a ratio. */
  double whole() {
    return strokes * velocity;
  }

  /** Measured over a demo chart that is put into the groove's first meter. */
  static Thickening of(Groove groove, String chart) {
    Meter meter = groove.meters().stream().findFirst().orElse(Meter.COMMON);
    Backing backing =
        Backing.of(BandMeasure.chart(chart, groove.name(), meter), Grooves.builtIn()).exact();
    Set<Integer> places =
        backing.plan(1).stream()
            .filter(BarPlan::turnaround)
            .map(plan -> plan.bar().place())
            .collect(Collectors.toSet());
    Bars turnarounds = new Bars();
    Bars others = new Bars();
    for (int lap = 1; lap <= LAPS; lap++) {
      Score score = backing.lap(lap);
      for (BarPlan plan : backing.plan(lap)) {
        boolean plain = !plan.bar().isFirstOfSection() && !plan.stop();
        if (plain && places.contains(plan.bar().place())) {
          (plan.turnaround() ? turnarounds : others).add(plan, score);
        }
      }
    }
    return new Thickening(
        turnarounds.strokes() / others.strokes(), turnarounds.velocity() / others.velocity());
  }

  /** Bars added up. */
  private static final class Bars {
    private final List<Note> notes = new ArrayList<>();
    private int bars;

    void add(BarPlan plan, Score score) {
      bars++;
      for (Part part : score.parts()) {
        part.notes().stream()
            .filter(n -> !n.onset().isBefore(plan.bar().start()))
            .filter(n -> n.onset().isBefore(plan.bar().end()))
            .forEach(notes::add);
      }
    }

    double strokes() {
      return (double) notes.size() / bars;
    }

    double velocity() {
      return notes.stream().mapToInt(Note::velocity).average().orElseThrow();
    }
  }
}
