package hingetone.sequencer;

import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.List;
import java.util.PriorityQueue;
import java.util.function.Predicate;
import java.util.function.ToLongFunction;

/** What is to be done when: entries in order of time, at one instant in the order of their kind. */
final class Agenda {
  /** In the order they happen at one instant. */
  enum Kind {
    NOTE_OFF,
    SET_UP,
    BAR,
    CLOCK,
    BEAT,
    NOTE_ON,
    END
  }

  /** What an entry does. */
  @FunctionalInterface
  interface Act {
    void perform(long now, MessageSink sink);
  }

  /**
   * An entry.
   *
   * @param due when, in nanoseconds on the timeline
   * @param order breaks ties, first come first served
   * @param played where, in quarter notes played
   * @param offset how much later than its place, in nanoseconds
   * @param plan the number of the planned bar it belongs to
   */
  record Entry(long due, Kind kind, long order, Beats played, long offset, int plan, Act act)
      implements Comparable<Entry> {
    @Override
    public int compareTo(Entry other) {
      int byDue = Long.compare(due, other.due);
      int byKind = byDue != 0 ? byDue : kind.compareTo(other.kind);
      return byKind != 0 ? byKind : Long.compare(order, other.order);
    }

    Entry at(long newDue) {
      return new Entry(newDue, kind, order, played, offset, plan, act);
    }
  }

  private final PriorityQueue<Entry> entries = new PriorityQueue<>();
  private long orders;

  void add(long due, Kind kind, Beats played, long offset, int plan, Act act) {
    entries.add(new Entry(due, kind, orders++, played, offset, plan, act));
  }

  /** When the next entry is due; {@link Long#MAX_VALUE} when there is none. */
  long nextDue() {
    Entry next = entries.peek();
    return next == null ? Long.MAX_VALUE : next.due;
  }

  Entry take() {
    return entries.remove();
  }

  void clear() {
    entries.clear();
  }

  void removeIf(Predicate<Entry> picked) {
    entries.removeIf(picked);
  }

  /** Gives every entry another time. */
  void reschedule(ToLongFunction<Entry> due) {
    List<Entry> moved = new ArrayList<>(entries.size());
    for (Entry entry : entries) {
      moved.add(entry.at(due.applyAsLong(entry)));
    }
    entries.clear();
    entries.addAll(moved);
  }
}
