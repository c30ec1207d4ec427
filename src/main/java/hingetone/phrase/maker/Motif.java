package hingetone.phrase.maker;

import hingetone.phrase.Phrase;
import hingetone.phrase.Tone;
import hingetone.phrase.maker.Melody.Blank;
import hingetone.theory.Key;
import hingetone.theory.Scale;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * A line out of one motif: it comes again a half bar or a bar later, the same or changed, and bends
 * to the chords under it. At most two things are done to it.
 *
 * @param tones its notes
 * @param how what was done, as the start of a sentence
 */
record Motif(List<Tone> tones, String how) {
  private static final int MOST_ROUNDS = 3;
  private static final Beats BREATH = Beats.of(1, 2);
  private static final Beats LONGEST_END = Beats.of(2);
  private static final List<String> NUMBERS =
      List.of(
          "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
          "twelve");

  /** What is done to it each time that it comes again. */
  private enum Change {
    REPEATED,
    STEP_UP,
    STEP_DOWN,
    THIRD_UP,
    THIRD_DOWN,
    OCTAVE_UP,
    OCTAVE_DOWN,
    UPSIDE_DOWN;

    Phrase of(Phrase motif, Scale scale, int round) {
      return switch (this) {
        case REPEATED -> motif;
        case STEP_UP -> motif.steps(scale, round);
        case STEP_DOWN -> motif.steps(scale, -round);
        case THIRD_UP -> motif.steps(scale, 2 * round);
        case THIRD_DOWN -> motif.steps(scale, -2 * round);
        case OCTAVE_UP -> motif.octaves(round % 2);
        case OCTAVE_DOWN -> motif.octaves(-(round % 2));
        case UPSIDE_DOWN -> round % 2 == 1 ? motif.mirrored(scale) : motif;
      };
    }
  }

  /** What is done besides; nothing as often as not. */
  private enum Besides {
    NOTHING(""),
    THINNED(", thinned"),
    THICKENED(", with more notes"),
    CUT(", cut short"),
    EXTENDED(", and goes on");

    private final String words;

    Besides(String words) {
      this.words = words;
    }

    static Besides drawn(Random random) {
      return random.nextBoolean() ? NOTHING : values()[random.nextInt(values().length)];
    }

    Phrase of(Phrase motif, Scale scale, Meter meter) {
      return switch (this) {
        case THINNED -> motif.thinned(meter.beatLength());
        case THICKENED -> motif.thickened(scale);
        default -> motif;
      };
    }
  }

  /** One for a statement's room; empty where it has not the time to come again. */
  static Optional<Motif> of(PhraseBuilder bench, PhraseTask task, HandPosition hand) {
    Random random = task.random();
    Meter meter = bench.harmony().barAt(task.space().landing()).meter();
    List<RhythmNote> pickup = bench.rhythm(task).pickup(task.pickup());
    Beats before = pickup.isEmpty() ? Beats.ZERO : pickup.get(0).onset().negated();
    List<Beats> periods =
        periods(meter).stream()
            .filter(p -> p.minus(before).isAfter(BREATH))
            .filter(p -> !task.body().isBefore(p.plus(Beats.ONE)))
            .toList();
    if (periods.isEmpty()) {
      return Optional.empty();
    }
    Beats period = periods.get(random.nextInt(periods.size()));
    Beats end = bench.bodyEnd(task, task.body()).max(period.plus(Beats.ONE)).min(task.body());
    int rounds = (int) Math.min(MOST_ROUNDS, end.minus(BREATH).dividedBy(period).floor() + 1);
    Maker maker = new Maker(bench, task, hand, period, before, Math.max(2, rounds), end);
    return Optional.of(maker.make(pickup));
  }

  /** Half bars and bars; bars alone where a bar has no half. */
  private static List<Beats> periods(Meter meter) {
    Beats bar = meter.barLength();
    boolean halves = meter.beatsPerBar() == 4;
    return halves ? List.of(bar.dividedBy(2), bar, bar) : List.of(bar);
  }

  /** What a motif is made with. */
  private record Maker(
      PhraseBuilder bench,
      PhraseTask task,
      HandPosition hand,
      Beats period,
      Beats before,
      int rounds,
      Beats end) {

    Motif make(List<RhythmNote> pickup) {
      Random random = task.random();
      Melody.Contour contour =
          Melody.Contour.values()[random.nextInt(Melody.Contour.values().length)];
      List<Blank> once =
          new ArrayList<>(PhraseBuilder.blanks(pickup, random.nextInt(5) == 0 ? -1 : 1));
      Beats stop = period.minus(before);
      bench
          .rhythm(task)
          .body(bench.pulses(task, Beats.ZERO, stop), stop)
          .forEach(stroke -> once.add(Blank.of(stroke)));
      Key key = bench.harmony().keyAt(task.space().landing());
      Phrase motif = new Phrase(key, bench.melody(task, hand, contour, false).fill(once));
      Change change = Change.values()[random.nextInt(Change.values().length)];
      Besides besides = Besides.drawn(random);
      List<Blank> blanks =
          new ArrayList<>(motif.tones().stream().map(StatementOpening::blank).toList());
      int size = blanks.size();
      Scale scale = key.pentatonic();
      for (int round = 1; round < rounds; round++) {
        Phrase model = besides.of(change.of(motif, scale, round), scale, meter());
        boolean cut = besides == Besides.CUT && round == rounds - 1;
        again(blanks, model, period.times(round), cut);
      }
      int more = blanks.size() - size * rounds;
      boolean goesOn = besides == Besides.EXTENDED && goOn(blanks);
      letRing(blanks);
      List<Tone> tones = bench.melody(task, hand, contour, false).fill(blanks);
      boolean said =
          switch (besides) {
            case NOTHING -> false;
            case THINNED, CUT -> more < 0;
            case THICKENED -> more > 0;
            case EXTENDED -> goesOn;
          };
      return new Motif(tones, words(tones, size, change) + (said ? besides.words : ""));
    }

    private Meter meter() {
      return bench.harmony().barAt(task.space().landing()).meter();
    }

    /** Adds a round as a model: its notes, or near to them where the chord has others. */
    private void again(List<Blank> blanks, Phrase model, Beats later, boolean cut) {
      for (Tone tone : model.tones()) {
        Beats onset = tone.onset().plus(later);
        if (onset.isBefore(end) && !(cut && tone.onset().isPositive())) {
          RhythmNote stroke = new RhythmNote(onset, tone.length().min(end.minus(onset)));
          blanks.add(Blank.near(stroke, tone.reached().midi()));
        }
      }
    }

    /** Adds notes of their own where there is a beat left for them; says whether there was. */
    private boolean goOn(List<Blank> blanks) {
      Beats from = blanks.get(blanks.size() - 1).stroke().end();
      if (end.minus(from).isBefore(Beats.ONE)) {
        return false;
      }
      bench
          .rhythm(task)
          .body(bench.pulses(task, from, end), end)
          .forEach(stroke -> blanks.add(Blank.of(stroke)));
      return true;
    }

    /** The last note rings to the end of the line, two beats at most. */
    private void letRing(List<Blank> blanks) {
      int last = blanks.size() - 1;
      Blank blank = blanks.get(last);
      Beats onset = blank.stroke().onset();
      Beats length = end.minus(onset).min(LONGEST_END).max(blank.stroke().length());
      RhythmNote ringing = new RhythmNote(onset, length);
      blanks.set(last, new Blank(ringing, blank.midi(), blank.near(), blank.direction()));
    }

    /** What can be said of the second time, seen from the notes that came out. */
    private String words(List<Tone> tones, int size, Change change) {
      List<Tone> first = tones.subList(0, size);
      List<Tone> second =
          tones.stream()
              .skip(size)
              .limit(size)
              .filter(t -> t.onset().isBefore(period.times(2).minus(before)))
              .toList();
      boolean few = size > 1 && size - 2 < NUMBERS.size();
      String start =
          "A motif" + (few ? " of " + NUMBERS.get(size - 2) + " notes" : "") + " comes again ";
      boolean whole = first.size() == second.size();
      int moved = second.isEmpty() ? 0 : midi(second, 0) - midi(first, 0);
      if (whole && size > 1 && goes(first, second, 1)) {
        return start + (moved > 0 ? "higher" : moved < 0 ? "lower" : "in its place");
      }
      boolean turned = whole && size > 1 && change == Change.UPSIDE_DOWN;
      return turned && goes(first, second, -1) ? start + "upside down" : start + "in its rhythm";
    }

    private static boolean goes(List<Tone> first, List<Tone> second, int way) {
      return IntStream.range(1, first.size())
          .allMatch(
              i ->
                  Integer.signum(midi(first, i) - midi(first, i - 1))
                      == way * Integer.signum(midi(second, i) - midi(second, i - 1)));
    }

    private static int midi(List<Tone> tones, int i) {
      return tones.get(i).reached().midi();
    }
  }
}
