package hingetone.time;

import java.util.ArrayList;
import java.util.List;

/**
 * Where each place of a score lies on the clock: constant tempos, each from its place onwards.
 *
 * <p>The first tempo also holds before its place, so that a count-in is counted in the tempo that
 * follows. Example: at 120 quarters a minute {@code micros(Beats.of(2))} is 1,000,000.
 *
 * @param steps the tempos in order of place, at least one
 */
public record TempoMap(List<Step> steps) {
  /** A tempo of exact quarter notes a minute, and where it starts. */
  public record Step(Beats at, Beats quartersPerMinute) {
    public Step {
      if (!quartersPerMinute.isPositive()) {
        throw new IllegalArgumentException("a tempo is above 0, not " + quartersPerMinute);
      }
    }
  }

  public TempoMap {
    steps = List.copyOf(steps);
    if (steps.isEmpty()) {
      throw new IllegalArgumentException("a tempo map needs a tempo");
    }
  }

  /** One tempo throughout. */
  public static TempoMap of(Beats quartersPerMinute) {
    return new TempoMap(List.of(new Step(Beats.ZERO, quartersPerMinute)));
  }

  /** The tempo that holds at a place, in quarter notes a minute. */
  public Beats quartersPerMinute(Beats at) {
    return stepAt(at).quartersPerMinute();
  }

  private Step stepAt(Beats at) {
    Step found = steps.get(0);
    for (Step step : steps) {
      if (!step.at().isAfter(at)) {
        found = step;
      }
    }
    return found;
  }

  /** Microseconds from place 0 to a place, negative before it; computed from the place at once. */
  public double micros(Beats at) {
    return sinceFirst(at) - sinceFirst(Beats.ZERO);
  }

  /** The frame nearest to a place and a shift from it, counted from place 0. */
  public long frame(Beats at, long offsetMicros, int sampleRate) {
    return Math.round((micros(at) + offsetMicros) * sampleRate / 1e6);
  }

  private double sinceFirst(Beats at) {
    double micros = 0;
    List<Step> passed = new ArrayList<>(steps.subList(0, 1));
    steps.stream().skip(1).filter(step -> step.at().isBefore(at)).forEach(passed::add);
    for (int i = 0; i < passed.size(); i++) {
      Beats end = i + 1 < passed.size() ? passed.get(i + 1).at() : at;
      Beats length = end.minus(passed.get(i).at());
      micros += length.dividedBy(passed.get(i).quartersPerMinute()).toDouble() * 60e6;
    }
    return micros;
  }
}
