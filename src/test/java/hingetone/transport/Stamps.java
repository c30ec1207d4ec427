package hingetone.transport;

import java.util.Arrays;
import java.util.function.LongUnaryOperator;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.Receiver;

/** When each note-on came in, and how far from its due moment that was. */
final class Stamps implements Receiver {
  private final long[] stamps;
  private volatile int count;

  Stamps(int most) {
    stamps = new long[most];
  }

  @Override
  public void send(MidiMessage message, long unused) {
    if ((message.getStatus() & 0xF0) == 0x90 && message.getMessage()[2] > 0) {
      int n = count;
      if (n < stamps.length) {
        stamps[n] = System.nanoTime();
        count = n + 1;
      }
    }
  }

  @Override
  public void close() {}

  int count() {
    return count;
  }

  boolean isFull() {
    return count == stamps.length;
  }

  long at(int note) {
    return stamps[note];
  }

  /**
   * Errors against due moments.
   *
   * @param start when the first note was due; {@link Long#MIN_VALUE} when nobody knows: then the
   *     constant part of the error is taken out
   * @param after the due moment of each note, in nanoseconds after the first
   * @param skip notes at the beginning that are left out
   */
  Errors errors(long start, LongUnaryOperator after, int skip, StallWatch watch) {
    int n = count - skip;
    long[] late = new long[n];
    for (int i = 0; i < n; i++) {
      late[i] = stamps[i + skip] - after.applyAsLong(i + skip);
    }
    long[] sorted = late.clone();
    Arrays.sort(sorted);
    long median = sorted[n / 2];
    long origin = start == Long.MIN_VALUE ? median : start;
    double[] absolute = new double[n];
    double[] aroundMedian = new double[n];
    int lateOwn = 0;
    int lateStalled = 0;
    for (int i = 0; i < n; i++) {
      absolute[i] = Math.abs(late[i] - origin) / 1e6;
      aroundMedian[i] = Math.abs(late[i] - median) / 1e6;
      if (aroundMedian[i] > 1) {
        long stamp = stamps[i + skip];
        long error = Math.abs(late[i] - median);
        if (watch.stalledBetween(stamp - error, stamp)) {
          lateStalled++;
        } else {
          lateOwn++;
        }
      }
    }
    return new Errors(sorted(absolute), sorted(aroundMedian), drift(late), lateOwn, lateStalled);
  }

  private static double[] sorted(double[] values) {
    Arrays.sort(values);
    return values;
  }

  /** How much the last tenth is later than the first, by their medians, in milliseconds. */
  private static double drift(long[] late) {
    int tenth = Math.max(1, late.length / 10);
    long[] first = Arrays.copyOfRange(late, 0, tenth);
    long[] last = Arrays.copyOfRange(late, late.length - tenth, late.length);
    Arrays.sort(first);
    Arrays.sort(last);
    return (last[tenth / 2] - first[tenth / 2]) / 1e6;
  }

  /**
   * Errors of a block, in milliseconds, sorted.
   *
   * @param absolute against the due moment, where it is known
   * @param aroundMedian against the due moment moved by the median error
   * @param drift how much later the end came than the beginning
   * @param lateOwn notes more than 1 ms off while the machine did not stall
   * @param lateStalled notes more than 1 ms off while the machine stalled
   */
  record Errors(
      double[] absolute, double[] aroundMedian, double drift, int lateOwn, int lateStalled) {
    static double quantile(double[] sorted, double q) {
      return sorted[(int) Math.min(sorted.length - 1, Math.floor(q * sorted.length))];
    }
  }
}
