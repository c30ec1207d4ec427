package hingetone.backing;

import hingetone.chart.ChartBar;
import hingetone.chart.Form;
import hingetone.chart.Section;
import hingetone.groove.Feel;
import hingetone.groove.Fill;
import hingetone.groove.Groove;
import hingetone.score.Fullness;
import hingetone.theory.Chord;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Function;

/**
 * Agrees with the band, bar by bar, on what concerns everybody: fills, stops, how full to play.
 *
 * @param form the form
 * @param grooves the groove of each section
 * @param seed the chart's seed
 * @param arc how much the band gives when
 */
record BandLeader(Form form, Function<Section, Groove> grooves, long seed, Arc arc) {
  private static final int SMALL_FILL_PERCENT = 60;

  /** How often there is no fill into a section in the same key, only the crash. */
  private static final int NO_FILL_PERCENT = 12;

  private static final int NO_FILL_WHEN_LIGHT_PERCENT = 35;

  /** The plan of a lap; of the last lap the last bar leads into the ending. */
  List<BarPlan> plan(int lap, boolean lastLap) {
    Dice dice = new Dice(seed, lap);
    List<BarPlan> plan = new ArrayList<>();
    List<Moment> moments = arc.moments(lap);
    for (Form.Bar bar : form.bars()) {
      plan.add(plan(bar, moments.get(bar.number() - 1), dice, lastLap));
    }
    return List.copyOf(plan);
  }

  private BarPlan plan(Form.Bar bar, Moment moment, Dice dice, boolean lastLap) {
    Section section = bar.section();
    Groove groove = grooves.apply(section);
    Feel feel = section.swing().map(groove.feel()::withPercent).orElse(groove.feel());
    Fullness band = arc.band(bar, dice.lap());
    boolean ends = lastLap && bar.number() == form.bars().size();
    boolean crossing = !ends && !form.bar(bar.number() + 1).key().equals(bar.key());
    Random chance = dice.at("leader", bar.number());
    boolean stop = crossing && chance.nextInt(100) < groove.drums().stopPercent();
    Optional<Fill.Size> size = size(bar, band, crossing || ends, stop, chance);
    Optional<Fill> fill =
        size.flatMap(wanted -> chosen(fitting(groove, bar, band, wanted, stop), bar, dice.lap()));
    return new BarPlan(
        bar,
        groove,
        feel,
        band,
        arc.level(section, dice.lap()),
        moment,
        bar.isLastOfSection(),
        crossing,
        isTurnaround(bar),
        fill,
        stop);
  }

  /** Whether a bar and all that follow in its section stay on a dominant of the next tonic. */
  private boolean isTurnaround(Form.Bar bar) {
    int last = bar.number() + bar.section().bars().size() - bar.inSection();
    List<ChartBar.Slot> ending = form.bar(last).chords().chords();
    Optional<Chord> dominant = ending.get(ending.size() - 1).chord();
    return dominant.filter(c -> c.isDominantOf(form.bar(last + 1).key().tonic())).isPresent()
        && form.bars().subList(bar.number() - 1, last).stream()
            .allMatch(b -> b.isLastOfSection() || isFilledBy(b, dominant));
  }

  private static boolean isFilledBy(Form.Bar bar, Optional<Chord> chord) {
    return bar.chords().chords().stream().allMatch(slot -> slot.chord().equals(chord));
  }

  /**
   * How big a fill the bar ends with: after a stop a short one, so that the stop is heard; now and
   * then none into a section in the same key, more often when the band is light.
   */
  private static Optional<Fill.Size> size(
      Form.Bar bar, Fullness band, boolean big, boolean stop, Random chance) {
    if (bar.isLastOfSection()) {
      int none = band == Fullness.LIGHT ? NO_FILL_WHEN_LIGHT_PERCENT : NO_FILL_PERCENT;
      boolean plain = !big && chance.nextInt(100) < none;
      return plain
          ? Optional.empty()
          : Optional.of(big && !stop ? Fill.Size.BIG : Fill.Size.MEDIUM);
    }
    boolean within = bar.inSection() % 4 == 0 && chance.nextInt(100) < SMALL_FILL_PERCENT;
    return within ? Optional.of(Fill.Size.SMALL) : Optional.empty();
  }

  private Optional<Fill> chosen(List<Fill> fitting, Form.Bar bar, int lap) {
    List<Fill> shuffled = new ArrayList<>(fitting);
    Collections.shuffle(shuffled, new Dice(seed, 0).at("fills", bar.number()));
    return shuffled.isEmpty() ? Optional.empty() : Optional.of(shuffled.get(lap % shuffled.size()));
  }

  /** The fills of the wanted size, or the next smaller one that the groove has. */
  private static List<Fill> fitting(
      Groove groove, Form.Bar bar, Fullness band, Fill.Size wanted, boolean halfABar) {
    for (int size = wanted.ordinal(); size >= 0; size--) {
      Fill.Size tried = Fill.Size.values()[size];
      List<Fill> fitting =
          groove.drums().fills().stream()
              .filter(fill -> fill.size() == tried && fill.use().fits(bar.meter()))
              .filter(fill -> fill.use().band().map(band::equals).orElse(true))
              .filter(fill -> !halfABar || 2 * fill.beats() <= bar.meter().beatsPerBar())
              .toList();
      if (!fitting.isEmpty()) {
        return fitting;
      }
    }
    return List.of();
  }
}
