package hingetone.chart;

import hingetone.theory.Chord;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.LastBegun;
import hingetone.time.Meter;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A chart's form unrolled into numbered bars: one lap, which then comes round again. It translates
 * between positions (which count on through the laps) and quarter notes from the start of the form.
 *
 * @param bars the bars of one lap, numbered from 1
 * @param length length of a lap in quarter notes
 */
public record Form(List<Bar> bars, Beats length) {
  /**
   * One bar of the form.
   *
   * @param number its number in the lap, from 1
   * @param section the section it belongs to
   * @param place which entry of the form it belongs to, from 0
   * @param inSection its number in the section, from 1
   * @param start where it starts, in quarter notes from the start of the form
   * @param chords its chords
   */
  public record Bar(
      int number, Section section, int place, int inSection, Beats start, ChartBar chords) {
    public Meter meter() {
      return section.meter();
    }

    public Key key() {
      return section.key();
    }

    /** Where it ends, in quarter notes from the start of the form. */
    public Beats end() {
      return start.plus(meter().barLength());
    }

    public boolean isFirstOfSection() {
      return inSection == 1;
    }

    public boolean isLastOfSection() {
      return inSection == section.bars().size();
    }

    /** The chord that holds at a beat, 1 being the bar line; empty for no chord. */
    public Optional<Chord> chordAt(Beats beat) {
      return slotAt(beat).chord();
    }

    /** The slot that holds at a beat, 1 being the bar line. */
    public ChartBar.Slot slotAt(Beats beat) {
      ChartBar.Slot found = chords.chords().get(0);
      for (ChartBar.Slot slot : chords.chords()) {
        if (!slot.beat().isAfter(beat)) {
          found = slot;
        }
      }
      return found;
    }
  }

  public Form {
    bars = List.copyOf(bars);
  }

  /** Unrolls a chart's form. */
  public static Form of(Chart chart) {
    List<Bar> bars = new ArrayList<>();
    Beats start = Beats.ZERO;
    for (int place = 0; place < chart.form().size(); place++) {
      Section section = chart.form().get(place);
      for (int i = 0; i < section.bars().size(); i++) {
        bars.add(new Bar(bars.size() + 1, section, place, i + 1, start, section.bars().get(i)));
        start = start.plus(section.meter().barLength());
      }
    }
    return new Form(bars, start);
  }

  /**
   * The bar of the form that a bar number falls on, in whatever lap. Bars before 1 belong to the
   * count-in, which has the meter and the key of bar 1 but is no bar of the form: they too give bar
   * 1.
   */
  public Bar bar(int number) {
    return number < 1 ? bars.get(0) : bars.get((number - 1) % bars.size());
  }

  /** The lap, from 1, that a bar number belongs to; 0 for the count-in. */
  public int lapOf(int bar) {
    return bar < 1 ? 0 : (bar - 1) / bars.size() + 1;
  }

  /** Where a position is, in quarter notes from the start of bar 1, laps counted on. */
  public Beats quarters(Position position) {
    Bar bar = bar(position.bar());
    Beats inBar = bar.meter().toQuarters(position.beat().minus(Beats.ONE));
    return startOf(position.bar()).plus(inBar);
  }

  /** Where a bar starts, in quarter notes from the start of bar 1, laps counted on. */
  public Beats startOf(int bar) {
    if (bar < 1) {
      return bars.get(0).meter().barLength().times(bar - 1L);
    }
    return bar(bar).start().plus(length.times(lapOf(bar) - 1L));
  }

  /** The position of a time in quarter notes from the start of bar 1, laps counted on. */
  public Position position(Beats quarters) {
    if (quarters.isNegative()) {
      Meter meter = bars.get(0).meter();
      long barsBefore = quarters.dividedBy(meter.barLength()).floor();
      Beats inBar = quarters.modulo(meter.barLength());
      return new Position((int) barsBefore + 1, meter.toBeats(inBar).plus(Beats.ONE));
    }
    long lap = quarters.dividedBy(length).floor();
    Beats inLap = quarters.modulo(length);
    Bar bar = barAt(inLap);
    return new Position(
        (int) (lap * bars.size()) + bar.number(),
        bar.meter().toBeats(inLap.minus(bar.start())).plus(Beats.ONE));
  }

  private Bar barAt(Beats inLap) {
    int last = LastBegun.index(bars.size(), i -> !bars.get(i).start().isAfter(inLap));
    return bars.get(Math.max(0, last));
  }

  /** A position moved by beats of the meter it stands in, exact across meter changes. */
  public Position plus(Position position, Beats quarters) {
    return position(quarters(position).plus(quarters));
  }
}
