package hingetone.backing;

import hingetone.chart.Form;
import hingetone.chart.Section;
import hingetone.groove.Feel;
import hingetone.groove.Fill;
import hingetone.groove.Groove;
import hingetone.groove.Thickness;
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
 */
record Leader(Form form, Function<Section, Groove> grooves, long seed) {
  private static final int SMALL_FILL_PERCENT = 60;

  /** The plan of a lap; of the last lap the last bar leads into the ending. */
  List<BarPlan> plan(int lap, boolean lastLap) {
    Dice dice = new Dice(seed, lap);
    List<BarPlan> plan = new ArrayList<>();
    for (Form.Bar bar : form.bars()) {
      plan.add(plan(bar, dice, lastLap));
    }
    return List.copyOf(plan);
  }

  private BarPlan plan(Form.Bar bar, Dice dice, boolean lastLap) {
    Section section = bar.section();
    Groove groove = grooves.apply(section);
    Feel feel = section.swing().map(groove.feel()::withPercent).orElse(groove.feel());
    Thickness band = Thickness.valueOf(section.band().name());
    boolean ends = lastLap && bar.number() == form.bars().size();
    boolean crossing = !ends && !form.bar(bar.number() + 1).key().equals(bar.key());
    Random chance = dice.at("leader", bar.number());
    boolean stop = crossing && chance.nextInt(100) < groove.drums().stopPercent();
    return new BarPlan(
        bar,
        groove,
        feel,
        band,
        bar.isLastOfSection(),
        crossing,
        fill(bar, groove, band, crossing || ends, dice.lap(), chance),
        stop);
  }

  private Optional<Fill> fill(
      Form.Bar bar, Groove groove, Thickness band, boolean big, int lap, Random chance) {
    boolean within =
        bar.inSection() % 4 == 0
            && !bar.isLastOfSection()
            && chance.nextInt(100) < SMALL_FILL_PERCENT;
    if (!bar.isLastOfSection() && !within) {
      return Optional.empty();
    }
    Fill.Size wanted = within ? Fill.Size.SMALL : big ? Fill.Size.BIG : Fill.Size.MEDIUM;
    List<Fill> fitting = fitting(groove, bar, band, wanted);
    if (fitting.isEmpty()) {
      return Optional.empty();
    }
    Collections.shuffle(fitting, new Dice(seed, 0).at("fills", bar.number()));
    return Optional.of(fitting.get(lap % fitting.size()));
  }

  /** The fills of the wanted size, or the next smaller one that the groove has. */
  private static List<Fill> fitting(Groove groove, Form.Bar bar, Thickness band, Fill.Size wanted) {
    for (int size = wanted.ordinal(); size >= 0; size--) {
      Fill.Size tried = Fill.Size.values()[size];
      List<Fill> fitting =
          new ArrayList<>(
              groove.drums().fills().stream()
                  .filter(fill -> fill.size() == tried && fill.use().fits(bar.meter()))
                  .filter(fill -> fill.use().band().map(band::equals).orElse(true))
                  .toList());
      if (!fitting.isEmpty()) {
        return fitting;
      }
    }
    return List.of();
  }
}
