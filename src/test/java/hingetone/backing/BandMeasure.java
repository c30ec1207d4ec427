package hingetone.backing;

import hingetone.chart.Chart;
import hingetone.chart.ChartBar;
import hingetone.chart.ChartReader;
import hingetone.chart.Section;
import hingetone.groove.BassStyle;
import hingetone.groove.ChordStyle;
import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import hingetone.score.Fullness;
import hingetone.score.Note;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.text.Page;
import hingetone.theory.Chord;
import hingetone.theory.Interval;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Measures a groove over the demo charts, some laps of each, everything exactly in place. The
 * charts are put into the groove's meter (a bar then keeps its first chord) and lose their own
 * riffs, so that it is the groove that is measured.
 */
final class BandMeasure {
  static final int LAPS = 8;
  static final List<String> CHARTS = List.of("lantern-quay", "mill-race", "slow-tide");

  /** Lowest key of the lower note for 1 to 11 semitones; common practice, from memory. */
  private static final int[] LOWEST = {0, 52, 51, 48, 46, 46, 46, 34, 43, 41, 41, 41};

  final Groove groove;
  private final int lapsMeasured;
  double moved;
  double movedInRootPosition;
  int voiceMoves;
  int chords;
  int chordsWithGuides;
  int highest;
  int muddy;
  int changes;
  int rootsOnChange;
  int arrivals;
  int approached;
  int leaps;
  int bars;
  int repeatedBars;
  int keptKicks;
  int equalLaps;
  int outOfRange;
  int outOfLap;

  BandMeasure(Groove groove, int laps) {
    this.groove = groove;
    this.lapsMeasured = laps;
    List<Meter> meters = groove.meters().isEmpty() ? List.of(Meter.COMMON) : groove.meters();
    for (String name : CHARTS) {
      for (Meter meter : meters) {
        measure(chart(name, groove.name(), meter));
      }
    }
  }

  static Chart chart(String name, String groove, Meter meter) {
    return chart(name, groove, meter, Section::band);
  }

  static Chart chart(String name, String groove, Meter meter, Function<Section, Fullness> band) {
    Chart chart = ChartReader.readFile("demo-charts/" + name + ".yaml").value().orElseThrow();
    Map<String, Section> changed =
        chart.sections().stream()
            .collect(
                Collectors.toMap(Section::name, s -> inMeter(s, groove, meter, band.apply(s))));
    return new Chart(
        chart.title(),
        chart.sections().stream().map(s -> changed.get(s.name())).toList(),
        chart.form().stream().map(s -> changed.get(s.name())).toList(),
        chart.countIn(),
        chart.instrument(),
        chart.tuning(),
        chart.capo(),
        chart.position(),
        chart.fluency(),
        chart.seed());
  }

  private static Section inMeter(Section s, String groove, Meter meter, Fullness band) {
    boolean same = s.meter().beatsPerBar() == meter.beatsPerBar();
    List<ChartBar> bars =
        s.bars().stream()
            .map(
                bar ->
                    same
                        ? bar
                        : new ChartBar(
                            List.of(
                                new ChartBar.Slot(
                                    Beats.ONE,
                                    Beats.of(meter.beatsPerBar()),
                                    bar.chords().get(0).chord()))))
            .toList();
    return new Section(
        s.name(),
        s.key(),
        meter,
        s.tempo(),
        Optional.of(groove),
        band,
        Optional.empty(),
        bars,
        s.phrases(),
        s.pickup(),
        s.leave(),
        Optional.empty());
  }

  /** What a band gives in a lap: notes times velocity, the count-in aside. */
  static int given(Score score) {
    return score.parts().stream()
        .filter(part -> part.role() != Role.CLICK)
        .flatMap(part -> part.notes().stream())
        .mapToInt(Note::velocity)
        .sum();
  }

  private void measure(Chart chart) {
    Backing backing = Backing.of(chart, Grooves.builtIn()).exact();
    ChordChanges harmony = ChordChanges.of(backing.form());
    measureVoicings(harmony);
    Set<String> laps = new HashSet<>();
    List<Note> bassBefore = List.of();
    for (int number = 1; number <= lapsMeasured; number++) {
      Score score = backing.lap(number);
      List<Note> drums = notes(score, Role.DRUMS);
      if (!laps.add(shape(drums))) {
        equalLaps++;
      }
      measureRepeats(drums, backing);
      List<Note> bass = notes(score, Role.BASS);
      measureBass(bass, harmony, score.length());
      measureSeam(bassBefore, bass);
      bassBefore = bass;
      measureChords(notes(score, Role.CHORDS));
      for (Role role : List.of(Role.DRUMS, Role.BASS, Role.CHORDS)) {
        for (Note note : notes(score, role)) {
          boolean inside = !note.onset().isNegative() && !note.end().isAfter(score.length());
          outOfLap += inside ? 0 : 1;
        }
      }
    }
  }

  private static List<Note> notes(Score score, Role role) {
    return score.part(role).orElseThrow().notes();
  }

  private static String shape(List<Note> notes) {
    return notes.stream().map(n -> n.onset() + ":" + n.key()).collect(Collectors.joining(" "));
  }

  private void measureRepeats(List<Note> drums, Backing backing) {
    String before = "";
    List<String> kicks = new ArrayList<>();
    for (var bar : backing.form().bars()) {
      List<Note> inBar =
          drums.stream()
              .filter(n -> !n.onset().isBefore(bar.start()) && n.onset().isBefore(bar.end()))
              .map(n -> n.withOnset(n.onset().minus(bar.start())))
              .toList();
      String now = shape(inBar);
      bars++;
      repeatedBars += now.equals(before) ? 1 : 0;
      before = now;
      String kick = shape(inBar.stream().filter(n -> n.key() == 35 || n.key() == 36).toList());
      boolean kept = kicks.subList(Math.max(0, kicks.size() - 2), kicks.size()).contains(kick);
      keptKicks += kept ? 1 : 0;
      kicks.add(kick);
    }
  }

  private void measureVoicings(ChordChanges harmony) {
    ChordStyle style = groove.chords();
    List<List<Integer>> voicings = VoiceLeading.of(harmony, change -> style);
    List<ChordChanges.Change> changes =
        harmony.changes().stream().filter(c -> c.chord().isPresent()).toList();
    for (int i = 0; i < changes.size(); i++) {
      ChordChanges.Change now = changes.get(i);
      ChordChanges.Change next = changes.get((i + 1) % changes.size());
      List<Integer> keys = voicings.get(now.index());
      if (!now.chord().equals(next.chord())) {
        moved += distance(keys, voicings.get(next.index()));
        movedInRootPosition +=
            distance(
                rootPosition(now.chord().orElseThrow(), style),
                rootPosition(next.chord().orElseThrow(), style));
        voiceMoves += keys.size();
      }
      chords++;
      chordsWithGuides += hasGuides(now.chord().orElseThrow(), keys) ? 1 : 0;
    }
  }

  private static double distance(List<Integer> from, List<Integer> to) {
    double sum = 0;
    for (int i = 0; i < Math.min(from.size(), to.size()); i++) {
      sum += Math.abs(from.get(i) - to.get(i));
    }
    return sum;
  }

  /** The chord stacked from its root in the lowest octave of the register. */
  private static List<Integer> rootPosition(Chord chord, ChordStyle style) {
    int root = style.lowest() + Math.floorMod(chord.root().chroma() - style.lowest(), 12);
    List<Integer> keys = new ArrayList<>();
    List<Interval> intervals = chord.quality().intervals();
    for (int i = 0; i < style.voices(); i++) {
      int octave = 12 * (i / intervals.size());
      boolean power = style.voicing() == ChordStyle.Voicing.POWER;
      int semitones =
          power ? List.of(0, 7, 12).get(i) : intervals.get(i % intervals.size()).semitones();
      keys.add(root + semitones + (power ? 0 : octave));
    }
    return keys;
  }

  private static boolean hasGuides(Chord chord, List<Integer> keys) {
    Set<Integer> chromas = keys.stream().map(k -> k % 12).collect(Collectors.toSet());
    return chord.quality().intervals().stream()
        .filter(i -> List.of(2, 3, 4, 6, 7).contains(i.number()))
        .allMatch(i -> chromas.contains(chord.root().plus(i).chroma()));
  }

  private void measureChords(List<Note> notes) {
    Map<Beats, List<Integer>> struck = new TreeMap<>();
    for (Note note : notes) {
      struck.computeIfAbsent(note.onset(), o -> new ArrayList<>()).add(note.key());
      highest = Math.max(highest, note.key());
      ChordStyle style = groove.chords();
      outOfRange += note.key() < style.lowest() || note.key() > style.highest() ? 1 : 0;
    }
    for (List<Integer> keys : struck.values()) {
      List<Integer> sorted = keys.stream().sorted().toList();
      for (int i = 1; i < sorted.size(); i++) {
        int interval = sorted.get(i) - sorted.get(i - 1);
        muddy += interval < 12 && sorted.get(i - 1) < LOWEST[interval] ? 1 : 0;
      }
    }
  }

  private void measureBass(List<Note> bass, ChordChanges harmony, Beats length) {
    BassStyle style = groove.bass();
    for (int i = 0; i < bass.size(); i++) {
      Note note = bass.get(i);
      outOfRange += note.key() < style.lowest() || note.key() > style.highest() ? 1 : 0;
      if (i > 0 && Math.abs(note.key() - bass.get(i - 1).key()) > 12) {
        leaps++;
      }
    }
    for (ChordChanges.Change change : harmony.changes()) {
      if (change.chord().isEmpty()) {
        continue;
      }
      changes++;
      int root = change.chord().get().lowest().chroma();
      Optional<Note> on = bass.stream().filter(n -> n.onset().equals(change.start())).findFirst();
      rootsOnChange += on.filter(n -> n.key() % 12 == root).isPresent() ? 1 : 0;
      Optional<Note> before =
          bass.stream().filter(n -> n.onset().isBefore(change.start())).reduce((a, b) -> b);
      if (on.isPresent() && before.isPresent()) {
        arrivals++;
        int size = Math.abs(on.get().key() - before.get().key());
        approached += size == 1 || size == 2 || size == 5 || size == 7 ? 1 : 0;
      }
    }
  }

  private void measureSeam(List<Note> before, List<Note> now) {
    if (!before.isEmpty()) {
      int size = Math.abs(before.get(before.size() - 1).key() - now.get(0).key());
      leaps += size > 12 ? 1 : 0;
    }
  }

  double movement() {
    return moved / voiceMoves;
  }

  double ratio() {
    return moved / movedInRootPosition;
  }

  static double percent(int part, int whole) {
    return whole == 0 ? 100 : 100.0 * part / whole;
  }

  String row() {
    boolean power = groove.chords().voicing() == ChordStyle.Voicing.POWER;
    return String.format(
        Locale.ROOT,
        "| %s | %.2f | %.2f | %s | %d | %d | %.1f %% | %.1f %% | %d | %d | %.1f %% | %d %% | %.0f %% | %.2f | %d |",
        groove.name(),
        movement(),
        ratio(),
        power ? "–" : String.format(Locale.ROOT, "%.0f %%", percent(chordsWithGuides, chords)),
        highest,
        muddy,
        percent(rootsOnChange, changes),
        percent(approached, arrivals),
        leaps,
        equalLaps,
        percent(repeatedBars, bars),
        groove.keep(),
        percent(keptKicks, bars),
        CHARTS.stream()
            .mapToDouble(name -> Thickening.of(groove, name).whole())
            .average()
            .orElseThrow(),
        outOfRange + outOfLap);
  }

  static String table() {
    StringBuilder table = new StringBuilder();
    table.append("| groove | movement | ratio | guides | top | mud | root on change | approach |");
    table.append(
        " leaps | equal laps | repeated bars | keep | kick kept | turnaround | out of range |\n");
    table.append("|---|---|---|---|---|---|---|---|---|---|---|---|---|---|---|\n");
    for (Groove groove : Grooves.builtIn().all()) {
      table.append(new BandMeasure(groove, LAPS).row()).append('\n');
    }
    return table.toString();
  }

  /** Prints the table of {@code src/docs/band.md}, or writes it into the page named. */
  public static void main(String[] args) throws IOException {
    if (args.length == 0) {
      System.out.print(table());
      return;
    }
    Page.replaceTable(Path.of(args[0]), "| groove |", table());
  }
}
