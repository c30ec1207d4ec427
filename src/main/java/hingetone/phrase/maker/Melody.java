package hingetone.phrase.maker;

import hingetone.phrase.Tone;
import hingetone.phrase.maker.MelodySearch.Wish;
import hingetone.theory.Chord;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.TreeSet;
import java.util.stream.IntStream;

/**
 * Gives a rhythm its pitches: what every note costs over the chord, key and place it falls on, for
 * {@link MelodySearch} to find the best tune.
 */
final class Melody {
  private static final double STRONG_OUTSIDE_CHORD = 1.1;
  private static final double RUBS = 1.6;
  private static final double OFF_CONTOUR = 0.11;
  private static final double WRONG_ENDING = 3;
  private static final double WHIM = 1.1;
  private static final double TELLING_THIRD = -0.9;
  private static final double AWAY = 0.5;
  private static final double FAR_AWAY = 4;

  /** The shape that the line after the landing follows. */
  enum Contour {
    ARCH,
    VALLEY,
    RISE,
    FALL;

    /** Height from −1 to 1 at a place from 0 (the landing) to 1 (the end). */
    double height(double place) {
      return switch (this) {
        case ARCH -> Math.sin(Math.PI * Math.min(1, place * 1.1)) * 1.2 - 0.3;
        case VALLEY -> 0.3 - Math.sin(Math.PI * Math.min(1, place * 1.1)) * 1.1;
        case RISE -> 1.8 * place - 0.8;
        case FALL -> 0.9 - 1.8 * place;
      };
    }
  }

  /**
   * A note to be filled.
   *
   * @param stroke when it sounds
   * @param midi its note, where that is already decided
   * @param near a note that it should be or lie near to, where there is a model
   * @param direction the way the line should move into it: 1 up, −1 down, 0 either
   */
  record Blank(RhythmNote stroke, Optional<Integer> midi, Optional<Integer> near, int direction) {
    static Blank of(RhythmNote stroke) {
      return new Blank(stroke, Optional.empty(), Optional.empty(), 0);
    }

    static Blank of(RhythmNote stroke, int midi) {
      return new Blank(stroke, Optional.of(midi), Optional.empty(), 0);
    }

    static Blank near(RhythmNote stroke, int midi) {
      return new Blank(stroke, Optional.empty(), Optional.of(midi), 0);
    }

    Blank going(int newDirection) {
      return new Blank(stroke, midi, near, newDirection);
    }
  }

  private final PhraseHarmony harmony;
  private final int[] material;
  private final Beats landing;
  private final Contour contour;
  private final boolean closed;
  private final Random random;

  /**
   * @param harmony what sounds under it
   * @param hand what lies under the hand
   * @param landing when time 0 of the phrase is
   * @param contour the shape of the line
   * @param closed whether it ends at rest, or open
   * @param random what varies
   */
  Melody(
      PhraseHarmony harmony,
      HandPosition hand,
      Beats landing,
      Contour contour,
      boolean closed,
      Random random) {
    this.harmony = harmony;
    this.material = hand.notes();
    this.landing = landing;
    this.contour = contour;
    this.closed = closed;
    this.random = random;
  }

  /** The notes, in the order of the blanks. */
  List<Tone> fill(List<Blank> blanks) {
    int[] midi = withDecided(blanks);
    Beats end = blanks.get(blanks.size() - 1).stroke().end();
    double middle = middle(midi);
    List<Wish> wishes = new ArrayList<>();
    for (int k = 0; k < blanks.size(); k++) {
      wishes.add(wish(blanks, k, midi, middle, end));
    }
    int[] line = MelodySearch.find(midi, wishes);
    return IntStream.range(0, line.length)
        .mapToObj(k -> tone(blanks.get(k).stroke(), midi[line[k]]))
        .toList();
  }

  private int[] withDecided(List<Blank> blanks) {
    TreeSet<Integer> all = new TreeSet<>();
    IntStream.of(material).forEach(all::add);
    blanks.forEach(blank -> blank.midi().ifPresent(all::add));
    return all.stream().mapToInt(Integer::intValue).toArray();
  }

  /** The middle of the tune: somewhat above the middle of the hand, now higher, now lower. */
  private double middle(int[] midi) {
    double low = midi[0];
    double high = midi[midi.length - 1];
    return low + (high - low) * (0.45 + 0.25 * random.nextDouble());
  }

  private Wish wish(List<Blank> blanks, int k, int[] midi, double middle, Beats end) {
    Blank blank = blanks.get(k);
    double[] cost = new double[midi.length];
    boolean[] passing = new boolean[midi.length];
    boolean[] guide = new boolean[midi.length];
    Beats time = landing.plus(blank.stroke().onset());
    ChordUnder under = harmony.under(time);
    boolean changes = k > 0 && changes(blanks.get(k - 1), under);
    boolean last = k == blanks.size() - 1;
    double place = blank.stroke().onset().toDouble() / Math.max(0.25, end.toDouble());
    double target = middle + 6 * contour.height(Math.max(0, place));
    for (int i = 0; i < midi.length; i++) {
      int chroma = Math.floorMod(midi[i], 12);
      guide[i] = changes && under.isGuideTone(chroma);
      if (blank.midi().isPresent()) {
        cost[i] = blank.midi().get() == midi[i] ? 0 : MelodySearch.NEVER;
        continue;
      }
      cost[i] = cost(blank.stroke(), time, under, chroma, last) + WHIM * random.nextDouble();
      cost[i] += shape(blank, midi[i], target);
      passing[i] = !blank.stroke().onset().isZero() && !under.rests(chroma);
    }
    return new Wish(cost, passing, guide, blank.direction());
  }

  private boolean changes(Blank before, ChordUnder under) {
    Optional<Chord> chord = harmony.chordAt(landing.plus(before.stroke().onset()));
    return chord.isPresent() && !chord.equals(under.chord());
  }

  /** What a note costs that leaves its model, or without one the line's shape. */
  private static double shape(Blank blank, int midi, double target) {
    return blank
        .near()
        .map(model -> Math.min(FAR_AWAY, AWAY * Math.abs(midi - model)))
        .orElse(OFF_CONTOUR * Math.abs(midi - target));
  }

  private double cost(RhythmNote stroke, Beats time, ChordUnder under, int chroma, boolean last) {
    boolean inChord = under.inChord(chroma);
    if (stroke.onset().isZero()) {
      return inChord ? landingCost(chroma, under) : MelodySearch.NEVER;
    }
    double cost = under.cost(chroma);
    boolean isLong = !stroke.length().isBefore(Beats.ONE);
    if (!inChord && (isLong || harmony.isPulse(time))) {
      cost += STRONG_OUTSIDE_CHORD;
    }
    if (isLong && under.rubs(chroma)) {
      cost += RUBS;
    }
    if (under.isThirdOfDominant(chroma)) {
      cost += TELLING_THIRD;
    }
    if (last) {
      cost += endingCost(chroma, under) + (under.rests(chroma) ? 0 : WRONG_ENDING);
    }
    return cost;
  }

  private double landingCost(int chroma, ChordUnder under) {
    boolean root = under.chord().filter(c -> c.root().chroma() == chroma).isPresent();
    double cost = (under.inScale(chroma) ? 0 : 1) + (root ? 0.3 : 0);
    return cost + (under.isThirdOfDominant(chroma) ? TELLING_THIRD : 0);
  }

  /** A reply comes home to the chord's root or third or to the tonic; a statement avoids it. */
  private double endingCost(int chroma, ChordUnder under) {
    Optional<Chord> chord = under.chord();
    boolean inChord = under.inChord(chroma);
    boolean root = chord.map(c -> c.root().chroma() == chroma).orElse(false);
    boolean tonic = under.key().tonic().chroma() == chroma;
    if (closed) {
      boolean home = root || (tonic && inChord);
      boolean third = chord.filter(c -> isThirdOrFifth(c, chroma)).isPresent();
      return home ? 0 : third ? 0.9 : inChord ? 2 : WRONG_ENDING;
    }
    return tonic ? WRONG_ENDING : root ? 1.2 : inChord ? 0 : 0.8;
  }

  private static boolean isThirdOrFifth(Chord chord, int chroma) {
    int above = Math.floorMod(chroma - chord.root().chroma(), 12);
    return chord.quality().has(above) && (above == 3 || above == 4 || above == 7);
  }

  private Tone tone(RhythmNote stroke, int midi) {
    Beats time = landing.plus(stroke.onset());
    return Tone.of(stroke.onset(), stroke.length(), harmony.under(time).spell(midi));
  }
}
