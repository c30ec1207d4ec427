package hingetone.ground.ways;

import hingetone.chart.ChartBar.Slot;
import hingetone.chart.Form;
import hingetone.ground.scales.FittingScale;
import hingetone.ground.scales.Weights;
import hingetone.path.CheapestPath;
import hingetone.theory.Scale;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The scale whose shape the neck shows through a lap: it changes with the key and otherwise as
 * seldom as a hand would move, so that a passing chord lights other notes and leaves the shape.
 *
 * <p>Of all ways to cut each key's bars into stretches of two bars or more it is the one on which
 * the chords lose least of their best scales' fit, a change costing {@link Weights#NECK_CHANGES}. A
 * stretch begins with a chord of two beats or more.
 */
public final class NeckScales {
  private static final Beats LEAST_CHORD = Beats.of(2);
  private static final double LEAST_BARS = 2;

  /** So many scales to choose from in one key, those that lead over most of its bars. */
  private static final int MOST_SCALES = 8;

  /** A chord in its bar. */
  private record Stop(Form.Bar bar, Slot slot, List<FittingScale> fitting, boolean newKey) {
    Scale best() {
      return fitting.get(0).scale();
    }

    double bars() {
      return slot.beats().toDouble() / bar.meter().beatsPerBar();
    }

    /** Where it starts, in bars from the top. */
    double start() {
      return bar.number() + slot.beat().minus(Beats.ONE).toDouble() / bar.meter().beatsPerBar();
    }

    /** What is lost of the best scale's fit where another is shown, for as long as it lasts. */
    double loss(Scale scale) {
      double fit =
          fitting.stream()
              .filter(f -> f.scale().equals(scale))
              .mapToDouble(FittingScale::fit)
              .findFirst()
              .orElse(Weights.NOT_OFFERED);
      return bars() * (fitting.get(0).fit() - fit);
    }
  }

  /**
   * What the neck shows over a chord.
   *
   * @param since the stop at which it came; {@link #LONG_SINCE} where it may change again
   */
  private record Shown(Scale scale, int since) {
    static final int LONG_SINCE = -1;
  }

  private final List<Stop> stops = new ArrayList<>();

  private NeckScales(Form form, List<List<List<FittingScale>>> fitting) {
    for (Form.Bar bar : form.bars()) {
      List<Slot> slots = bar.chords().chords();
      boolean newKey = bar.number() == 1 || !form.bar(bar.number() - 1).key().equals(bar.key());
      for (int i = 0; i < slots.size(); i++) {
        List<FittingScale> here = fitting.get(bar.number() - 1).get(i);
        stops.add(new Stop(bar, slots.get(i), here, newKey && i == 0));
      }
    }
  }

  /**
   * The scale for each chord of each bar.
   *
   * @param form the bars
   * @param fitting for each bar, for each of its chords, the scales that fit it, the best first
   */
  public static List<List<Scale>> of(Form form, List<List<List<FittingScale>>> fitting) {
    List<Shown> way = new NeckScales(form, fitting).calmest();
    List<List<Scale>> scales = new ArrayList<>();
    int stop = 0;
    for (List<List<FittingScale>> bar : fitting) {
      scales.add(way.subList(stop, stop + bar.size()).stream().map(Shown::scale).toList());
      stop += bar.size();
    }
    return scales;
  }

  private List<Shown> calmest() {
    List<List<Shown>> choices = new ArrayList<>();
    List<Scale> scales = List.of();
    int key = 0;
    for (int i = 0; i < stops.size(); i++) {
      if (stops.get(i).newKey) {
        key = i;
        scales = scalesFrom(i);
      }
      choices.add(choices(i, key, scales));
    }
    return CheapestPath.through(
        choices, (stop, shown) -> stops.get(stop).loss(shown.scale), this::change);
  }

  /** The scales that lead over most of a key's bars, from its first stop on. */
  private List<Scale> scalesFrom(int first) {
    Map<Scale, Double> led = new HashMap<>();
    for (int i = first; i < stops.size() && (i == first || !stops.get(i).newKey); i++) {
      led.merge(stops.get(i).best(), stops.get(i).bars(), Double::sum);
    }
    return led.entrySet().stream()
        .sorted(
            Map.Entry.<Scale, Double>comparingByValue(Comparator.reverseOrder())
                .thenComparing(entry -> entry.getKey().toString()))
        .limit(MOST_SCALES)
        .map(Map.Entry::getKey)
        .toList();
  }

  private List<Shown> choices(int stop, int key, List<Scale> scales) {
    List<Integer> since = new ArrayList<>(List.of(stop));
    for (int i = stop - 1; i >= key && !isLongBefore(i, stop); i--) {
      since.add(i);
    }
    since.add(Shown.LONG_SINCE);
    List<Integer> possible = stops.get(stop).newKey ? List.of(stop) : since;
    return possible.stream()
        .flatMap(from -> scales.stream().map(scale -> new Shown(scale, from)))
        .toList();
  }

  private boolean isLongBefore(int since, int stop) {
    return stops.get(stop).start() - stops.get(since).start() >= LEAST_BARS;
  }

  private double change(int stop, Shown from, Shown to) {
    if (stops.get(stop).newKey) {
      return 0;
    }
    boolean free = from.since == Shown.LONG_SINCE || isLongBefore(from.since, stop);
    if (to.since == stop) {
      boolean mayChange = free && !stops.get(stop).slot.beats().isBefore(LEAST_CHORD);
      return mayChange ? Weights.NECK_CHANGES : Double.POSITIVE_INFINITY;
    }
    boolean staysSo = to.equals(free ? new Shown(from.scale, Shown.LONG_SINCE) : from);
    return staysSo ? 0 : Double.POSITIVE_INFINITY;
  }
}
