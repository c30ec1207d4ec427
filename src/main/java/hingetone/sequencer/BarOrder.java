package hingetone.sequencer;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/** In which order the bars are played. */
final class BarOrder {
  /**
   * The next bar.
   *
   * @param bar the bar, counted on through the laps
   * @param broken whether it does not follow from the bar before
   * @param again whether a lap or a loop starts over with it
   */
  record Step(int bar, boolean broken, boolean again) {}

  private final Lap form;
  private final int barsPerLap;
  private final int top;
  private final OptionalInt laps;
  private final int endingBars;
  private Optional<Command.Loop> loop = Optional.empty();
  private OptionalInt target;
  private int last;
  private OptionalInt targetBefore = OptionalInt.empty();
  private int lastBefore;

  /**
   * A route over a form.
   *
   * @param form the first lap, whose bars all laps have
   * @param setup says after how many laps it ends
   */
  BarOrder(Lap form, PlaySetup setup) {
    this.form = form;
    this.barsPerLap = form.bars().size();
    this.top = 1 - form.countIn().size();
    this.laps = setup.laps();
    this.endingBars = setup.endingBars();
    goTo(top);
  }

  int top() {
    return top;
  }

  int lapOf(int bar) {
    return Math.max(1, Math.floorDiv(bar - 1, barsPerLap) + 1);
  }

  /** A bar as a lap has it; the count-in as the first lap has it. */
  Lap.Bar bar(Lap lap, int bar) {
    return bar < 1 ? lap.countIn().get(bar - top) : lap.bars().get((bar - 1) % barsPerLap);
  }

  /** The first bar in the next new key after a bar; empty when the key never changes. */
  OptionalInt nextCrossing(int after) {
    int from = Math.max(1, after);
    return IntStream.rangeClosed(from + 1, from + barsPerLap)
        .filter(bar -> !bar(form, bar).key().equals(bar(form, bar - 1).key()))
        .findFirst();
  }

  /** The next bar in this lap that opens a section, else the first in this lap. */
  OptionalInt sectionStart(String name, int after) {
    int first = (lapOf(after) - 1) * barsPerLap + 1;
    int[] starts =
        IntStream.range(first, first + barsPerLap)
            .filter(bar -> bar(form, bar).opensSection())
            .filter(bar -> bar(form, bar).section().filter(name::equals).isPresent())
            .toArray();
    OptionalInt next = IntStream.of(starts).filter(bar -> bar > after).findFirst();
    return next.isPresent() ? next : IntStream.of(starts).findFirst();
  }

  /** Where it ends; empty for no end. */
  Optional<Status.End> end() {
    return laps.isPresent()
        ? Optional.of(new Status.End(laps.getAsInt(), laps.getAsInt() * barsPerLap, endingBars))
        : Optional.empty();
  }

  boolean isLastOfLap(int bar) {
    return bar >= 1 && bar % barsPerLap == 0;
  }

  Optional<Command.Loop> loop() {
    return loop;
  }

  void setLoop(Optional<Command.Loop> bars) {
    loop = bars;
  }

  /** The bar after the next bar line will be this one. */
  void goTo(int bar) {
    target = OptionalInt.of(bar);
  }

  /** The bar asked for, when the next bar is not the one that follows. */
  OptionalInt target() {
    return target;
  }

  /** Whether the bar after the last one taken is simply the next. */
  boolean goesOn() {
    return target.isEmpty() && !loopEnds();
  }

  /** Whether the music is over. */
  boolean isOver() {
    return goesOn() && isEnding(last + 1 - endingBars);
  }

  private boolean isEnding(int bar) {
    return laps.isPresent() && bar > laps.getAsInt() * barsPerLap;
  }

  /** Takes the next bar. */
  Step take() {
    lastBefore = last;
    targetBefore = target;
    Step step = next();
    target = OptionalInt.empty();
    last = step.bar;
    return step;
  }

  /** Takes the bar that follows, leaving the one asked for to a later bar line. */
  Step takeNext() {
    OptionalInt later = target;
    target = OptionalInt.empty();
    Step step = take();
    targetBefore = later;
    target = later;
    return step;
  }

  /** As if the last bar had not been taken. */
  void giveBack() {
    last = lastBefore;
    target = target.isPresent() ? target : targetBefore;
  }

  private Step next() {
    if (target.isPresent()) {
      return new Step(target.getAsInt(), true, false);
    }
    if (loopEnds()) {
      return new Step(loop.get().firstBar(), true, true);
    }
    int bar = last + 1;
    return new Step(bar, false, bar > 1 && (bar - 1) % barsPerLap == 0 && !isEnding(bar));
  }

  private boolean loopEnds() {
    return loop.isPresent() && last >= loop.get().lastBar();
  }
}
