package hingetone.phrase.maker;

import java.util.Arrays;
import java.util.List;

/**
 * Finds the melody that best meets the wishes for each of its notes and moves like a tune: mostly
 * by step, a leap turned back from, no wobbling between two notes, passing notes left by step.
 *
 * <p>The best of all melodies is found by dynamic programming over pairs of neighbouring notes, so
 * that each move can be judged together with the one before it. (As layers of pairs for {@code
 * CheapestPath} each step would try all pairs against all, most of which do not join.) Costs are
 * added up; the table of moves is the one place where taste is set.
 */
final class MelodySearch {
  /** A cost that rules a note out. */
  static final double NEVER = 1e9;

  /** What a move of 0 to 12 semitones costs. */
  private static final double[] MOVE = {
    0.9, 0.05, 0, 0.1, 0.35, 0.7, 1.8, 1.1, 1.9, 1.9, 2.4, 3, 2.2
  };

  private static final double WIDER = 8;
  private static final double LEAP_GOES_ON = 1.1;
  private static final double LEAP_TURNS = -0.3;
  private static final double WOBBLE = 0.8;
  private static final double THIRD_REPEAT = 3;
  private static final double STEP_GOES_ON = -0.2;
  private static final double PASSING_LEAPS = 6;
  private static final double WRONG_WAY = 2.5;
  private static final double GUIDED = -1.8;
  private static final int LEAP = 5;
  private static final int STEP = 2;

  /**
   * What is wished of one note.
   *
   * @param cost for each note of the material what it costs here; {@link #NEVER} rules it out
   * @param passing for each note of the material whether it may only be passed through by step
   * @param guide for each note of the material whether the line is glad to come into it by step or
   *     to have it already, as third or seventh of a new chord
   * @param direction the way the line should move into it: 1 up, −1 down, 0 either
   */
  record Wish(double[] cost, boolean[] passing, boolean[] guide, int direction) {}

  private final int[] midi;
  private final List<Wish> wishes;

  private MelodySearch(int[] midi, List<Wish> wishes) {
    this.midi = midi;
    this.wishes = wishes;
  }

  /**
   * The cheapest line.
   *
   * @param midi the material: MIDI numbers, ascending
   * @param wishes one for each note of the line
   * @return for each note which of the material it is
   */
  static int[] find(int[] midi, List<Wish> wishes) {
    return new MelodySearch(midi, wishes).search();
  }

  private int[] search() {
    int size = midi.length;
    double[][] best = new double[size][size];
    for (double[] row : best) {
      Arrays.fill(row, NEVER);
    }
    for (int b = 0; b < size; b++) {
      best[b][b] = wishes.get(0).cost[b];
    }
    int[][][] from = new int[wishes.size()][size][size];
    for (int k = 1; k < wishes.size(); k++) {
      best = advance(best, k, from[k]);
    }
    return trace(best, from);
  }

  /** Row: the note before; column: the note now. On the diagonal of the first note both are it. */
  private double[][] advance(double[][] before, int k, int[][] from) {
    int size = midi.length;
    double[][] now = new double[size][size];
    for (int b = 0; b < size; b++) {
      for (int c = 0; c < size; c++) {
        double cheapest = Double.MAX_VALUE;
        double own = wishes.get(k).cost[c] + move(k, b, c);
        for (int a = 0; a < size; a++) {
          if (before[a][b] < NEVER && own < NEVER) {
            double cost = before[a][b] + own + (k > 1 ? turn(a, b, c) : 0);
            if (cost < cheapest) {
              cheapest = cost;
              from[b][c] = a;
            }
          }
        }
        now[b][c] = Math.min(cheapest, NEVER);
      }
    }
    return now;
  }

  private int[] trace(double[][] best, int[][][] from) {
    int last = wishes.size() - 1;
    int b = 0;
    int c = 0;
    for (int i = 0; i < midi.length; i++) {
      for (int j = 0; j < midi.length; j++) {
        if (best[i][j] < best[b][c]) {
          b = i;
          c = j;
        }
      }
    }
    int[] line = new int[wishes.size()];
    for (int k = last; k >= 0; k--) {
      line[k] = c;
      int a = from[k][b][c];
      c = b;
      b = a;
    }
    return line;
  }

  private double move(int k, int b, int c) {
    int semitones = Math.abs(midi[c] - midi[b]);
    double cost = semitones < MOVE.length ? MOVE[semitones] : WIDER;
    boolean passes = wishes.get(k).passing[c] || wishes.get(k - 1).passing[b];
    if (passes && (semitones > STEP || semitones == 0)) {
      cost += PASSING_LEAPS;
    }
    if (wishes.get(k).guide[c] && semitones <= STEP) {
      cost += GUIDED;
    }
    int wished = wishes.get(k).direction;
    return wished != 0 && Integer.signum(midi[c] - midi[b]) != wished ? cost + WRONG_WAY : cost;
  }

  private double turn(int a, int b, int c) {
    int first = midi[b] - midi[a];
    int second = midi[c] - midi[b];
    if (first == 0 && second == 0) {
      return THIRD_REPEAT;
    }
    boolean sameWay = Integer.signum(first) == Integer.signum(second);
    if (Math.abs(first) >= LEAP) {
      return sameWay ? LEAP_GOES_ON : LEAP_TURNS;
    }
    if (first != 0 && first + second == 0) {
      return WOBBLE;
    }
    return sameWay ? STEP_GOES_ON : 0;
  }
}
