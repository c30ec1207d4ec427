package hingetone.review;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.take.PlacedNote;
import hingetone.take.PlayedBars;
import hingetone.take.TakeReader;
import hingetone.theory.Chord;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.LastBegun;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What was played, in the bars of a form. All places are quarter notes from the start of the file.
 *
 * @param bars the bars in the order in which they were played
 * @param notes the notes, in order of their strokes
 * @param tempos the tempos, in order
 */
public record Played(List<Bar> bars, List<PlacedNote> notes, List<TakeReader.TempoFrom> tempos) {
  /**
   * A bar as it was played.
   *
   * @param number its number, laps counted on
   * @param of the bar of the form, in the keys that sounded
   * @param keyShift how far these lie from the chart's, in semitones
   * @param start where it begins
   */
  public record Bar(int number, Form.Bar of, int keyShift, double start) {
    private static final int PARTS = 24;

    public Key key() {
      return of.key();
    }

    double end() {
      return start + of.meter().barLength().toDouble();
    }

    public double beatLength() {
      return of.meter().beatLength().toDouble();
    }

    /** The beat of a place in it, 1 being the bar line. */
    double beat(double at) {
      return (at - start) / beatLength() + 1;
    }

    /** The same exactly, rounded down to a {@value #PARTS}th of a beat. */
    Beats exactBeat(double at) {
      long parts = Math.max(0, (long) Math.floor((beat(at) - 1) * PARTS + 1e-6));
      return Beats.of(parts, PARTS).plus(Beats.ONE);
    }

    /** The chord at a place in it; empty for no chord. */
    Optional<Chord> chordAt(double at) {
      return of.chordAt(exactBeat(at));
    }
  }

  /** A stroke so little before a beat, in beats, belongs to it. */
  public static final double EARLY = 0.15;

  /** A note may ring for so many quarters. */
  private static final double RINGING = 32;

  public Played {
    bars = List.copyOf(bars);
    notes = List.copyOf(notes);
    tempos = List.copyOf(tempos);
  }

  /**
   * Places a file in a chart's form.
   *
   * @param countIn how many bars go before bar 1 where the file's cues say nothing
   * @param offset how much later than the file's start those bars begin, in quarter notes
   */
  public static Played of(TakeReader file, Chart chart, int countIn, double offset) {
    Map<Integer, Form> forms = new HashMap<>();
    List<Bar> bars = new ArrayList<>();
    PlayedBars.Bar next = new PlayedBars.Bar(1 - countIn, 0);
    double at = file.cues().isEmpty() ? offset : file.cues().get(0).at();
    int cue = 0;
    while (at < file.length() - 1e-6 || bars.isEmpty()) {
      if (cue < file.cues().size() && file.cues().get(cue).at() <= at + 1e-3) {
        next = file.cues().get(cue++).bar();
      }
      Form.Bar of =
          forms.computeIfAbsent(next.keyShift(), s -> Form.of(chart.shifted(s))).bar(next.number());
      bars.add(new Bar(next.number(), of, next.keyShift(), at));
      at += of.meter().barLength().toDouble();
      next = new PlayedBars.Bar(next.number() + 1, next.keyShift());
    }
    double from = bars.get(0).start() - bars.get(0).of().meter().barLength().toDouble() / 2;
    List<PlacedNote> notes = file.notes().stream().filter(n -> n.at() >= from).toList();
    return new Played(bars, notes, file.tempos());
  }

  /** The bar that a place lies in; the first or the last for what lies outside. */
  public Bar barAt(double at) {
    int last = LastBegun.index(bars.size(), i -> bars.get(i).start() <= at + 1e-6);
    return bars.get(Math.max(0, last));
  }

  /** The bars by their numbers; of those played more than once the first. */
  public Map<Integer, Bar> byNumber() {
    return bars.stream().collect(Collectors.toMap(Bar::number, bar -> bar, (one, other) -> one));
  }

  /** What leads to the line on which a bar begins, and how it was gone over. */
  LineWay wayInto(int index) {
    Bar bar = bars.get(index);
    double into = bars.get(index - 1).start();
    double before = bars.get(Math.max(0, index - 5)).start();
    return LineWay.of(
        new LineWay.Line(bar.start(), into, before, bar.beatLength()),
        notesFrom(before - RINGING, bar.start() + RINGING));
  }

  /**
   * How many notes are struck in each beat of a bar, those struck together counted once; one that
   * is a little early belongs to the beat it is meant for.
   */
  public int[] struck(Bar bar) {
    int[] struck = new int[bar.of().meter().beatsPerBar()];
    double early = EARLY * bar.beatLength();
    double before = Double.NEGATIVE_INFINITY;
    for (PlacedNote note : notesFrom(bar.start() - early, bar.end() - early)) {
      if (note.at() - before > LineWay.TOGETHER * bar.beatLength()) {
        int beat = (int) Math.floor(bar.beat(note.at() + early) - 1);
        struck[Math.max(0, Math.min(struck.length - 1, beat))]++;
        before = note.at();
      }
    }
    return struck;
  }

  /** The index of the first note that may still ring at a place. */
  int firstRinging(double at) {
    return firstFrom(at - RINGING);
  }

  /** The notes that begin from a place on, up to another. */
  List<PlacedNote> notesFrom(double from, double to) {
    return notes.subList(firstFrom(from), firstFrom(to));
  }

  /** The index of the first note that begins at a place or after it. */
  public int firstFrom(double at) {
    return LastBegun.index(notes.size(), i -> notes.get(i).at() < at) + 1;
  }

  /** How many milliseconds a quarter lasts at a place. */
  public double msPerQuarter(double at) {
    int last = LastBegun.index(tempos.size(), i -> tempos.get(i).at() <= at + 1e-6);
    return tempos.get(Math.max(0, last)).microsPerQuarter() / 1000;
  }

  /** A place as bar and beat, to the nearest sixteenth. */
  public Position position(double at) {
    return position(at, barAt(at).of().meter().isCompound() ? 6 : 4);
  }

  /** A place as bar and beat, to the nearest part of a beat. */
  public Position position(double at, int parts) {
    Bar near = barAt(at);
    long part = Math.round((near.beat(at) - 1) * parts);
    long inBar = (long) near.of().meter().beatsPerBar() * parts;
    if (part >= inBar) {
      return Position.of(near.number() + 1, 1);
    }
    return new Position(near.number(), Beats.of(Math.max(0, part), parts).plus(Beats.ONE));
  }
}
