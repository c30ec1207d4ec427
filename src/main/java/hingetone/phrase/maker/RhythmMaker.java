package hingetone.phrase.maker;

import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/**
 * Makes rhythms: a pickup, a landing that is given time, two small cells that come back, a last
 * long note, and silence after it.
 *
 * <p>Everything lies on eighths, where it is slow enough on sixteenths. A pulse is a beat, or in
 * meters that count eighths a group of them. Times are quarter notes from the landing.
 */
final class RhythmMaker {
  private static final Beats EIGHTH = Beats.of(1, 2);

  /** Pickups as distances before the landing, in sixteenths; the likelier ones stand twice. */
  private static final int[][] PICKUPS = {
    {6, 4, 2}, {6, 4, 2}, {4, 2}, {4, 2}, {6, 2}, {2}, {6, 4}, {8, 6, 4, 2}
  };

  private static final int[][] BUSY_PICKUPS = {
    {4, 3, 2, 1}, {6, 4, 2, 1}, {4, 2, 1}, {6, 4, 3, 2}, {2, 1}
  };

  /** Cells for a pulse of two eighths, in sixteenths; a negative number is silence. */
  private static final int[][] TWO = {{4}, {2, 2}, {2, 2}, {2, 2}, {-2, 2}};

  private static final int[][] BUSY_TWO = {{2, 1, 1}, {1, 1, 2}, {3, 1}, {1, 2, 1}};

  /** Cells for a pulse of three eighths. */
  private static final int[][] THREE = {{6}, {4, 2}, {2, 2, 2}, {2, 2, 2}, {2, 4}, {-2, 2, 2}};

  private static final int[][] BUSY_THREE = {{2, 1, 1, 2}, {2, 2, 1, 1}, {4, 1, 1}};

  private static final int[][] THREE_FIGURES = {{2, 2, 2}, {4, 2}, {2, 4}, {2, 2, -2}};

  private static final int[][] FOUR = {{4, 2, 2}, {2, 2, 4}, {2, 2, 2, 2}, {6, 2}};

  private final Random random;
  private final double busy;

  /**
   * @param random what varies
   * @param busy how likely sixteenths are, 0 to 1
   */
  RhythmMaker(Random random, double busy) {
    this.random = random;
    this.busy = busy;
  }

  /** A pickup no longer than {@code most}; empty where there is no time for one. */
  List<RhythmNote> pickup(Beats most) {
    int[][] choice = random.nextDouble() < busy ? BUSY_PICKUPS : PICKUPS;
    List<int[]> fitting =
        Arrays.stream(choice).filter(p -> !sixteenths(p[0]).isAfter(most)).toList();
    if (fitting.isEmpty()) {
      return most.isBefore(EIGHTH) ? List.of() : List.of(stroke(-2, 2));
    }
    int[] pickup = fitting.get(random.nextInt(fitting.size()));
    List<RhythmNote> strokes = new ArrayList<>();
    for (int i = 0; i < pickup.length; i++) {
      int until = i + 1 < pickup.length ? pickup[i + 1] : 0;
      strokes.add(stroke(-pickup[i], pickup[i] - until));
    }
    return strokes;
  }

  /**
   * What follows a place up to an end: a long first note, the cells by turns, a long last note. A
   * long body breathes in its middle.
   *
   * @param pulses where the pulses start, the place to start from first
   * @param end where the last note has ended
   */
  List<RhythmNote> body(List<Beats> pulses, Beats end) {
    List<int[]> cells = List.of(cell(pulses, end, 1), cell(pulses, end, 2));
    int breath = pulses.size() >= 6 ? pulses.size() / 2 : -1;
    List<RhythmNote> strokes = new ArrayList<>();
    for (int i = 0; i < pulses.size(); i++) {
      Beats from = pulses.get(i);
      Beats until = i + 1 < pulses.size() ? pulses.get(i + 1) : end;
      boolean whole = i == 0 || i == pulses.size() - 1 || i == breath - 1;
      if (whole || !until.minus(from).equals(lengthOf(cells.get(i % 2)))) {
        strokes.add(new RhythmNote(from, until.minus(from)));
      } else if (i != breath) {
        addCell(strokes, from, cells.get(i % 2));
      }
    }
    return pushed(strokes, pulses);
  }

  /** A figure of three or four eighths that starts on its first. */
  List<RhythmNote> figure(Beats length) {
    int[][] choice = length.equals(Beats.of(2)) ? FOUR : THREE_FIGURES;
    List<RhythmNote> strokes = new ArrayList<>();
    addCell(strokes, Beats.ZERO, choice[random.nextInt(choice.length)]);
    return strokes;
  }

  /** The starts of the pulses of a meter from a beat (counted from 1) on, up to an end. */
  static List<Beats> pulses(Meter meter, int fromBeat, Beats end) {
    List<Beats> pulses = new ArrayList<>();
    Beats at = Beats.ZERO;
    int beat = fromBeat;
    boolean grouped = meter.denominator() >= 8 && !meter.isCompound();
    while (at.isBefore(end)) {
      if (!grouped || meter.strongBeats().contains(beat) || pulses.isEmpty()) {
        pulses.add(at);
      }
      at = at.plus(meter.beatLength());
      beat = beat % meter.beatsPerBar() + 1;
    }
    return pulses;
  }

  private int[] cell(List<Beats> pulses, Beats end, int i) {
    Beats from = pulses.get(Math.min(i, pulses.size() - 1));
    Beats until = i + 1 < pulses.size() ? pulses.get(i + 1) : end;
    boolean three = until.minus(from).equals(Beats.of(3, 2));
    int[][] plain = three ? THREE : TWO;
    int[][] choice = random.nextDouble() < busy ? (three ? BUSY_THREE : BUSY_TWO) : plain;
    return choice[random.nextInt(choice.length)];
  }

  private static Beats lengthOf(int[] cell) {
    return sixteenths(Arrays.stream(cell).map(Math::abs).sum());
  }

  private static void addCell(List<RhythmNote> strokes, Beats from, int[] cell) {
    Beats at = from;
    for (int length : cell) {
      if (length > 0) {
        strokes.add(new RhythmNote(at, sixteenths(length)));
      }
      at = at.plus(sixteenths(Math.abs(length)));
    }
  }

  /** Now and then an eighth is tied over the pulse after it, which is how a line swings ahead. */
  private List<RhythmNote> pushed(List<RhythmNote> strokes, List<Beats> pulses) {
    List<RhythmNote> out = new ArrayList<>();
    for (int i = 0; i < strokes.size(); i++) {
      RhythmNote stroke = strokes.get(i);
      boolean tied =
          i > 0
              && i + 1 < strokes.size()
              && stroke.length().equals(EIGHTH)
              && pulses.contains(stroke.end())
              && strokes.get(i + 1).onset().equals(stroke.end())
              && random.nextInt(4) == 0;
      out.add(
          tied ? new RhythmNote(stroke.onset(), EIGHTH.plus(strokes.get(++i).length())) : stroke);
    }
    return out;
  }

  private static RhythmNote stroke(int onset, int length) {
    return new RhythmNote(sixteenths(onset), sixteenths(length));
  }

  private static Beats sixteenths(int count) {
    return Beats.of(count, 4);
  }
}
