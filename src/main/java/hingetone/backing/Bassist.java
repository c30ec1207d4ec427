package hingetone.backing;

import hingetone.groove.BassStyle;
import hingetone.path.CheapestPath;
import hingetone.score.Note;
import hingetone.theory.Chord;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * Plays the bass. What is drawn says what each note is to its chord; the pitches are the cheapest
 * way through all the notes that could be that, over the whole lap at once: small steps rather than
 * leaps, never more than an octave, chord notes on strong beats, a step or a fifth into a root.
 */
final class Bassist {
  private static final double FORBIDDEN = 1000;
  private static final int OCTAVE = 12;

  /** What a move of 0 to 12 semitones costs between notes that are drawn. */
  private static final double[] MOVE = {0, .1, .1, .2, .25, .3, .8, .35, .9, 1, 1.5, 1.7, .5};

  /** What a move costs in a walking line, where standing still is worst. */
  private static final double[] WALKING = {4, 0, 0, .3, .35, .5, 1.2, .6, 1.4, 1.5, 2, 2, 1.2};

  private final LapPlan lap;
  private final Dice dice;
  private final List<DrawnNote> signs;
  private final List<Note> riffs;
  private final double[][] taste;

  Bassist(LapPlan lap, Dice dice) {
    this.lap = lap;
    this.dice = dice;
    this.signs = new BassDrawing(lap, dice).draw();
    this.riffs = Riffs.bass(lap).stream().sorted().toList();
    this.taste = taste();
  }

  /** The notes of a lap, swing included, without the player's own riffs. */
  List<Note> play() {
    List<Note> notes = new ArrayList<>();
    int from = 0;
    while (from < signs.size()) {
      int to = from + 1;
      while (to < signs.size() && nextRiff(from) == nextRiff(to)) {
        to++;
      }
      List<Integer> keys = keys(from, to);
      for (int i = from; i < to; i++) {
        notes.add(note(signs.get(i), keys.get(i - from)));
      }
      from = to;
    }
    return notes;
  }

  /** The place among the riffs' notes of the first one after a sign. */
  private int nextRiff(int sign) {
    Beats start = lap.played(signs.get(sign).start());
    int next = 0;
    while (next < riffs.size() && riffs.get(next).onset().isBefore(start)) {
      next++;
    }
    return next;
  }

  /**
   * The keys of signs without a riff between them: from the riff before them, where there is one,
   * to the riff after them or to the start of the next lap.
   */
  private List<Integer> keys(int from, int to) {
    Optional<Integer> before = before(from);
    List<List<Integer>> choices = new ArrayList<>();
    before.ifPresent(key -> choices.add(List.of(key)));
    for (int i = from; i < to; i++) {
      boolean opening = i == 0 && before.isEmpty() && signs.get(0).sign() == BassStyle.ROOT;
      choices.add(opening ? List.of(homeKey()) : choices(signs.get(i)));
    }
    choices.add(List.of(after(from)));
    int first = before.isPresent() ? from - 1 : from;
    List<Integer> path =
        CheapestPath.through(
            choices,
            (i, key) -> first + i < from || first + i == to ? 0 : cost(first + i, key),
            (i, key, next) ->
                move(sign(first + i - 1, from, to), sign(first + i, from, to), key, next));
    return path.subList(from - first, to - first);
  }

  /** What the bass plays just before a stretch of signs, where that is a riff: in any lap alike. */
  private Optional<Integer> before(int from) {
    int next = nextRiff(from);
    boolean fromRiff = next > 0 || Riffs.hasBass(lap.plans().get(lap.plans().size() - 1));
    return fromRiff && !riffs.isEmpty()
        ? Optional.of(riffs.get(next > 0 ? next - 1 : riffs.size() - 1).key())
        : Optional.empty();
  }

  /** What the bass plays just after a stretch: the next riff, or the start of the next lap. */
  private int after(int from) {
    int next = nextRiff(from);
    if (next < riffs.size()) {
      return riffs.get(next).key();
    }
    return Riffs.hasBass(lap.plans().get(0)) && !riffs.isEmpty() ? riffs.get(0).key() : homeKey();
  }

  private char sign(int place, int from, int to) {
    return place < from || place >= to ? BassStyle.ROOT : signs.get(place).sign();
  }

  /** A little chance for the free notes, so that laps differ. */
  private double[][] taste() {
    double[][] taste = new double[signs.size()][OCTAVE];
    for (int i = 0; i < taste.length; i++) {
      char sign = signs.get(i).sign();
      if (sign == BassStyle.WALK || sign == BassStyle.APPROACH) {
        Random chance = dice.at("bass notes", i);
        for (int chroma = 0; chroma < OCTAVE; chroma++) {
          taste[i][chroma] = 0.6 * chance.nextDouble();
        }
      }
    }
    return taste;
  }

  /** Where the bass starts a lap: the lowest place of the home chord's lowest note. */
  private int homeKey() {
    return keys(lap.plans().get(0).groove().bass(), lap.home().lowest().chroma()).get(0);
  }

  private List<Integer> choices(DrawnNote sign) {
    BassStyle style = sign.plan().groove().bass();
    Chord chord = chord(sign);
    char c = sign.sign();
    if (c == BassStyle.WALK || c == BassStyle.APPROACH || c == BassStyle.BELOW) {
      int highest = Math.min(style.highest(), style.lowest() + 23);
      return IntStream.rangeClosed(style.lowest(), highest).boxed().toList();
    }
    if (c == BassStyle.OCTAVE) {
      List<Integer> roots = keys(style, chord.lowest().chroma());
      return roots.subList(Math.min(1, roots.size() - 1), roots.size());
    }
    boolean root = c == BassStyle.ROOT || c == BassStyle.DEAD;
    int chroma =
        root
            ? chord.lowest().chroma()
            : ChordDegrees.chroma(c - '0', chord, sign.plan().bar().key());
    return keys(style, chroma);
  }

  /** Every place of a pitch class in the range, from low to high. */
  static List<Integer> keys(BassStyle style, int chroma) {
    return IntStream.rangeClosed(style.lowest(), style.highest())
        .filter(key -> key % OCTAVE == chroma)
        .boxed()
        .toList();
  }

  private Chord chord(DrawnNote sign) {
    return lap.harmony().at(sign.start()).chord().orElseGet(lap::home);
  }

  private double cost(int place, int key) {
    return taste[place][key % OCTAVE] + cost(signs.get(place), key);
  }

  private double cost(DrawnNote sign, int key) {
    BassStyle style = sign.plan().groove().bass();
    double register = 0.05 * Math.max(0, key - style.lowest() - 12);
    char c = sign.sign();
    if (c != BassStyle.WALK && c != BassStyle.APPROACH) {
      return register;
    }
    Chord chord = chord(sign);
    boolean inChord = chord.degreeOf(key % OCTAVE).isPresent();
    boolean inScale = sign.plan().bar().key().heptatonic().degreeOf(key % OCTAVE).isPresent();
    if (c == BassStyle.APPROACH) {
      return register + (inScale || inChord ? 0 : 0.2);
    }
    boolean root = chord.lowest().chroma() == key % OCTAVE;
    double outside = inScale ? 0.2 : 0.9;
    if (onStrongBeat(sign)) {
      return register + (root ? 0.5 : inChord ? 0 : 2 * outside);
    }
    return register + (root ? 0.8 : inChord ? 0.2 : outside);
  }

  private static boolean onStrongBeat(DrawnNote sign) {
    Meter meter = sign.plan().bar().meter();
    return meter.isStrong(meter.toBeats(sign.inBar()).plus(Beats.ONE));
  }

  private static double move(char before, char now, int from, int key) {
    int size = Math.abs(key - from);
    if (size > OCTAVE) {
      return FORBIDDEN;
    }
    if (before == BassStyle.BELOW) {
      return key - from == 1 ? 0 : FORBIDDEN / 2;
    }
    if (before == BassStyle.APPROACH) {
      return size == 1 || size == 2 ? 0 : size == 5 || size == 7 ? 0.4 : FORBIDDEN / 4;
    }
    if (now == BassStyle.DEAD) {
      return size;
    }
    boolean walking = before == BassStyle.WALK || now == BassStyle.WALK;
    return walking || now == BassStyle.APPROACH ? WALKING[size] : MOVE[size];
  }

  private Note note(DrawnNote sign, int key) {
    BassStyle style = sign.plan().groove().bass();
    Beats start = lap.played(sign.start());
    Beats whole = lap.played(sign.end()).minus(start);
    boolean dead = sign.sign() == BassStyle.DEAD;
    int percent = dead ? 35 : style.soundingPercent();
    return new Note(
        start, whole.times(Beats.of(percent, 100)), key, sign.plan().velocity(velocity(sign)));
  }

  private static int velocity(DrawnNote sign) {
    if (sign.sign() == BassStyle.DEAD) {
      return 46;
    }
    Meter meter = sign.plan().bar().meter();
    Beats beat = meter.toBeats(sign.inBar()).plus(Beats.ONE);
    if (sign.inBar().isZero()) {
      return 102;
    }
    return meter.isStrong(beat) ? 97 : beat.denominator() == 1 ? 92 : 84;
  }
}
