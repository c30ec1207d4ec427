package hingetone.backing;

import hingetone.groove.BassStyle;
import hingetone.groove.BassStyle.LeadIn;
import hingetone.groove.LinePattern;
import hingetone.groove.StepLine;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * What the bass plays of a lap before there are pitches: the groove's patterns, with a root where a
 * chord starts and a lead-in where it should be.
 */
final class BassDrawing {
  private static final int CROSSING_LEAD_IN_PERCENT = 75;

  private final LapPlan lap;
  private final Dice dice;

  BassDrawing(LapPlan lap, Dice dice) {
    this.lap = lap;
    this.dice = dice;
  }

  /**
   * The notes in order, none overlapping, none where there is no chord or the player's own riff.
   */
  List<DrawnNote> draw() {
    List<DrawnNote> signs = patterns();
    for (ChordChanges.Change change : lap.harmony().changes()) {
      signs = withChange(signs, change);
    }
    return withLeadIns(signs);
  }

  private List<DrawnNote> patterns() {
    List<DrawnNote> signs = new ArrayList<>();
    for (BarPlan plan : lap.plans()) {
      if (Riffs.hasBass(plan)) {
        continue;
      }
      Random chance = dice.at("bass", plan.bar().number());
      PatternChoice.Drawn<LinePattern> drawn = new KickLock(plan, dice).line();
      StepLine line = drawn.pattern().strip();
      if (plan.stop()) {
        signs.add(stopped(plan));
      } else {
        signs = DrawnNote.read(line.signs(drawn.bar(), plan.bar().meter()), plan, signs);
        boolean crosses = plan.crossing() && chance.nextInt(100) < CROSSING_LEAD_IN_PERCENT;
        if (crosses || plan.turnaround() && plan.leadsOn() || leadsToRiff(plan)) {
          leadOn(signs, plan);
        }
      }
    }
    return signs;
  }

  private static DrawnNote stopped(BarPlan plan) {
    Beats start = plan.bar().start();
    Beats length = plan.bar().meter().beatLength().dividedBy(2);
    return new DrawnNote(start, start.plus(length), BassStyle.ROOT, plan);
  }

  private boolean leadsToRiff(BarPlan plan) {
    List<BarPlan> plans = lap.plans();
    return plan.leadsOn() && Riffs.hasBass(plans.get(plan.bar().number() % plans.size()));
  }

  /** The last beat before a new key, a tonic or a riff walks into it. */
  private static void leadOn(List<DrawnNote> signs, BarPlan plan) {
    Meter meter = plan.bar().meter();
    if (plan.groove().bass().leadIn() == LeadIn.NEVER || meter.beatsPerBar() < 2) {
      return;
    }
    Beats end = plan.bar().end();
    Beats from = end.minus(meter.beatLength());
    signs.removeIf(sign -> !sign.start().isBefore(from));
    if (!signs.isEmpty() && signs.get(signs.size() - 1).end().isAfter(from)) {
      signs.set(signs.size() - 1, signs.get(signs.size() - 1).withEnd(from));
    }
    int notes = meter.isCompound() ? 3 : meter.denominator() > 4 ? 1 : 2;
    Beats step = meter.beatLength().dividedBy(notes);
    for (int i = 0; i < notes; i++) {
      char sign = i == notes - 1 ? BassStyle.APPROACH : BassStyle.WALK;
      signs.add(new DrawnNote(from.plus(step.times(i)), from.plus(step.times(i + 1L)), sign, plan));
    }
  }

  private List<DrawnNote> withChange(List<DrawnNote> signs, ChordChanges.Change change) {
    List<DrawnNote> changed = new ArrayList<>();
    boolean wantsRoot = lap.planAt(change.start()).groove().bass().rootOnChange();
    for (DrawnNote sign : signs) {
      boolean inside =
          !sign.start().isBefore(change.start()) && sign.start().isBefore(change.end());
      if (change.chord().isEmpty() && inside) {
        continue;
      }
      boolean cut = sign.start().isBefore(change.start()) && sign.end().isAfter(change.start());
      boolean root = wantsRoot && sign.start().equals(change.start());
      if (cut) {
        changed.add(sign.withEnd(change.start()));
        if (change.chord().isPresent()) {
          BarPlan plan = lap.planAt(change.start());
          changed.add(new DrawnNote(change.start(), sign.end(), BassStyle.ROOT, plan));
        }
      } else {
        changed.add(root ? sign.withSign(BassStyle.ROOT) : sign);
      }
    }
    if (wantsRoot && change.chord().isPresent()) {
      fillIn(changed, change);
    }
    return changed;
  }

  /** A root where the pattern rests while the chord changes. */
  private void fillIn(List<DrawnNote> signs, ChordChanges.Change change) {
    BarPlan plan = lap.planAt(change.start());
    if (Riffs.hasBass(plan)
        || plan.stop() && change.start().isAfter(plan.bar().start())
        || signs.stream().anyMatch(sign -> sign.start().equals(change.start()))) {
      return;
    }
    int place = 0;
    while (place < signs.size() && signs.get(place).start().isBefore(change.start())) {
      place++;
    }
    Beats end = change.start().plus(plan.bar().meter().beatLength()).min(change.end());
    end = place < signs.size() ? end.min(signs.get(place).start()) : end;
    signs.add(place, new DrawnNote(change.start(), end, BassStyle.ROOT, plan));
  }

  private List<DrawnNote> withLeadIns(List<DrawnNote> signs) {
    List<DrawnNote> led = new ArrayList<>();
    for (int i = 0; i < signs.size(); i++) {
      DrawnNote sign = signs.get(i);
      Beats next = i + 1 < signs.size() ? signs.get(i + 1).start() : lap.length();
      led.add(leadsIn(sign, next) ? sign.withSign(BassStyle.APPROACH) : sign);
    }
    return led;
  }

  private boolean leadsIn(DrawnNote sign, Beats next) {
    LeadIn wanted = sign.plan().groove().bass().leadIn();
    ChordChanges.Change own = lap.harmony().at(sign.start());
    boolean lastOfChord = !next.isBefore(own.end());
    boolean close = !sign.start().plus(sign.plan().bar().meter().beatLength()).isBefore(own.end());
    boolean beforeSection = sign.plan().leadsOn() && !next.isBefore(sign.plan().bar().end());
    boolean here = wanted == LeadIn.CHANGES || wanted == LeadIn.SECTIONS && beforeSection;
    return here
        && lastOfChord
        && close
        && sign.sign() != BassStyle.DEAD
        && !sign.start().equals(own.start())
        && !sign.plan().stop();
  }
}
