package hingetone.backing;

import hingetone.chart.ChartBar;
import hingetone.chart.Form;
import hingetone.theory.Chord;
import hingetone.time.Beats;
import hingetone.time.LastBegun;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The chords of one lap as they change: a chord that holds over several bars of a section is one.
 *
 * @param changes in order, filling the lap
 */
record ChordChanges(List<Change> changes) {
  /**
   * A chord and where it holds.
   *
   * @param index its place in the list
   * @param start quarter notes from the start of the lap
   * @param end quarter notes from the start of the lap
   * @param chord the chord; empty for no chord
   * @param bar the bar it starts in
   */
  record Change(int index, Beats start, Beats end, Optional<Chord> chord, Form.Bar bar) {}

  ChordChanges {
    changes = List.copyOf(changes);
  }

  static ChordChanges of(Form form) {
    List<Change> changes = new ArrayList<>();
    for (Form.Bar bar : form.bars()) {
      for (ChartBar.Slot slot : bar.chords().chords()) {
        Beats start = bar.start().plus(bar.meter().toQuarters(slot.beat().minus(Beats.ONE)));
        Beats end = start.plus(bar.meter().toQuarters(slot.beats()));
        Change last = changes.isEmpty() ? null : changes.get(changes.size() - 1);
        if (last != null && last.chord.equals(slot.chord()) && last.bar.place() == bar.place()) {
          changes.set(last.index, new Change(last.index, last.start, end, last.chord, last.bar));
        } else {
          changes.add(new Change(changes.size(), start, end, slot.chord(), bar));
        }
      }
    }
    return new ChordChanges(changes);
  }

  /** The change that holds at a place in the lap. */
  Change at(Beats place) {
    int last = LastBegun.index(changes.size(), i -> !changes.get(i).start().isAfter(place));
    return changes.get(Math.max(0, last));
  }

  /** The first chord of the lap, past any bars without one. */
  Optional<Chord> first() {
    return changes.stream().flatMap(change -> change.chord().stream()).findFirst();
  }
}
