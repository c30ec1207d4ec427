package hingetone.phrase.maker;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.chart.Leave;
import hingetone.chart.PhraseTurn.Role;
import hingetone.ground.Ground;
import hingetone.neck.Fretboard;
import hingetone.phrase.StatementBank;
import hingetone.phrase.Tone;
import hingetone.plan.Plan;
import hingetone.plan.Prompt;
import hingetone.theory.Chord;
import hingetone.theory.NoteName;
import hingetone.time.Beats;
import hingetone.time.Position;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Counts in made phrases what a teacher would look for. It takes the notes as they come out, the
 * chart's chords and the scale that the map names; every judgement is made here, with small tables
 * of its own: none of the maker's code decides what is right. What counts as what is common
 * practice.
 *
 * <p>By hand over all charts of {@code src/test/resources/counted}, with seeds 1 to 10: {@code java
 * -cp 'src/target/test-classes:src/target/classes:target/lib/*' hingetone.phrase.maker.PhraseCounts
 * 10}
 */
public final class PhraseCounts {
  private static final Path CHARTS = Path.of("src/test/resources/counted");
  private static final double EIGHTH = 0.5;
  private static final int LAPS = 2;

  /** A note as it is heard and played; times in quarter notes from the landing. */
  private record Heard(double at, double end, int midi, boolean bent, int string, int fret) {
    int chroma() {
      return Math.floorMod(midi, 12);
    }
  }

  /** A chord as far as guide tones need it; −1 for what it lacks. */
  private record Guides(int root, int third, int seventh) {
    /** Third and seventh out of the symbol alone. */
    static Guides of(String symbol) {
      int accidental = symbol.length() > 1 && "#b".indexOf(symbol.charAt(1)) >= 0 ? 1 : 0;
      int letter = List.of(0, 2, 4, 5, 7, 9, 11).get("CDEFGAB".indexOf(symbol.charAt(0)));
      int shift = accidental == 0 ? 0 : symbol.charAt(1) == '#' ? 1 : -1;
      String kind = symbol.substring(1 + accidental);
      boolean minor = kind.startsWith("m") && !kind.startsWith("maj");
      boolean power = kind.equals("5");
      int third = power ? -1 : minor ? 3 : 4;
      int seventh = kind.contains("maj7") ? 11 : kind.contains("7") ? 10 : -1;
      return new Guides(Math.floorMod(letter + shift, 12), third, seventh);
    }

    boolean isDominant() {
      return third == 4 && seventh == 10;
    }

    boolean isThird(int chroma) {
      return third > 0 && Math.floorMod(chroma - root, 12) == third;
    }

    boolean has(int chroma) {
      return isThird(chroma) || seventh > 0 && Math.floorMod(chroma - root, 12) == seventh;
    }
  }

  private final Map<String, Integer> counts = new TreeMap<>();
  private final Map<String, List<Double>> values = new TreeMap<>();
  private final Map<String, Integer> firsts = new HashMap<>();

  private Form form;
  private Ground ground;
  private Plan plan;
  private PhraseMaker maker;

  /** Counts charts with seeds from 1 on. */
  static PhraseCounts of(List<Path> charts, int seeds) throws IOException {
    PhraseCounts counts = new PhraseCounts();
    for (Path file : charts) {
      for (int seed = 1; seed <= seeds; seed++) {
        counts.chart(ChartReader.readFile(file.toString()).value().orElseThrow(), seed);
      }
    }
    return counts;
  }

  /** The charts that are counted. */
  static List<Path> charts() throws IOException {
    try (Stream<Path> files = Files.list(CHARTS)) {
      return files.sorted().toList();
    }
  }

  /** How many of what was counted; 0 where nothing was. */
  int count(String what) {
    return counts.getOrDefault(what, 0);
  }

  /** The share of one count in another, 0 to 1. */
  double share(String part, String whole) {
    return count(whole) == 0 ? 0 : (double) count(part) / count(whole);
  }

  /** The median of what was measured. */
  double median(String what) {
    List<Double> all = values.getOrDefault(what, List.of());
    return all.isEmpty() ? 0 : all.stream().sorted().skip(all.size() / 2).findFirst().orElse(0.0);
  }

  private void add(String what, boolean holds) {
    counts.merge(what, holds ? 1 : 0, Integer::sum);
  }

  private void add(String what) {
    add(what, true);
  }

  private void measure(String what, double value) {
    values.computeIfAbsent(what, w -> new ArrayList<>()).add(value);
  }

  private void chart(Chart read, long seed) throws IOException {
    Chart chart = read.withSeed(seed);
    form = Form.of(chart);
    plan = Plan.of(chart, form);
    ground = Ground.of(form, Fretboard.of(chart.tuning(), chart.capo()));
    maker =
        PhraseMaker.of(plan, ground, seed)
            .withBank(
                StatementBank.builtIn().read().value().orElseThrow(),
                s -> s.swing().orElse(0) >= 55);
    first(maker.make(plan.prompt(1)));
    for (int lap = 1; lap <= LAPS; lap++) {
      for (Prompt prompt : plan.promptsOfLap(lap)) {
        if (!prompt.isRest()) {
          phrase(maker.make(prompt));
        }
      }
    }
  }

  /** How often the same first statement, whatever its key, was made before. */
  private void first(MadePhrase made) {
    List<Heard> line = line(made);
    StringBuilder shape = new StringBuilder();
    for (Heard note : line) {
      shape.append(note.at).append(' ').append(note.midi - line.get(0).midi).append(' ');
    }
    add("first statements");
    add("first statements unlike all others", firsts.merge(shape.toString(), 1, Integer::sum) == 1);
  }

  private void phrase(MadePhrase made) {
    add("phrases");
    List<Heard> line = line(made);
    over(made, line);
    changes(made, line);
    moves(line);
    landing(made, line);
    hand(made);
    speed(made, line);
    if (made.prompt().crossing().equals(Optional.of(Leave.HOLD))) {
      hold(made);
    }
    if (made.prompt().role() == Role.REPLY) {
      reply(made);
    } else {
      add("statements");
      add("statements ending on the tonic", endsOnTonic(made, line));
      made.prompt().again().ifPresent(index -> returns(made, index));
    }
  }

  private boolean endsOnTonic(MadePhrase made, List<Heard> line) {
    Heard last = line.get(line.size() - 1);
    return last.chroma() == bar(made, last.at).key().tonic().chroma();
  }

  /** The highest of the notes struck together, and how they are played. */
  private static List<Heard> line(MadePhrase made) {
    List<Tone> tones = made.phrase().tones();
    TreeMap<Double, Heard> top = new TreeMap<>();
    for (int i = 0; i < tones.size(); i++) {
      Tone tone = tones.get(i);
      Heard note =
          new Heard(
              tone.onset().toDouble(),
              tone.end().toDouble(),
              tone.reached().midi(),
              tone.bend().isPresent(),
              made.spots().get(i).string(),
              made.spots().get(i).fret());
      top.merge(note.at, note, (a, b) -> a.midi >= b.midi ? a : b);
    }
    return List.copyOf(top.values());
  }

  private Position position(MadePhrase made, double at) {
    Beats landing = form.quarters(made.prompt().landOn());
    return form.position(landing.plus(Beats.of(Math.round(at * 48), 48)));
  }

  private Form.Bar bar(MadePhrase made, double at) {
    return form.bar(position(made, at).bar());
  }

  private Optional<Chord> chord(MadePhrase made, double at) {
    Position position = position(made, at);
    return form.bar(position.bar()).chordAt(position.beat());
  }

  /** Whether strings are bent there: a riff, power chords or a blues. */
  private boolean bends(Form.Bar bar) {
    return bar.key().isBlues() || isRiff(bar);
  }

  private static boolean isRiff(Form.Bar bar) {
    return bar.section().riff().isPresent()
        || bar.section().bars().stream()
            .flatMap(b -> b.chords().stream())
            .flatMap(s -> s.chord().stream())
            .anyMatch(c -> c.symbol().endsWith("5") && !c.symbol().contains("b5"));
  }

  /** Each note over its chord: thirds of dominants, and what lies outside the map's scale. */
  private void over(MadePhrase made, List<Heard> line) {
    Map<String, Boolean> thirds = new TreeMap<>();
    Map<String, Integer> sizes = new TreeMap<>();
    for (int i = 0; i < line.size(); i++) {
      Heard note = line.get(i);
      Optional<Chord> chord = chord(made, note.at);
      Form.Bar bar = bar(made, note.at);
      if (chord.isEmpty() || made.prompt().crossing().isPresent()) {
        continue;
      }
      Guides guides = Guides.of(chord.get().symbol());
      scale(made, line, i, chord.get());
      boolean fifth = Math.floorMod(guides.root - bar.key().tonic().chroma(), 12) == 7;
      String place =
          !guides.isDominant() || isRiff(bar)
              ? ""
              : bar.key().isBlues()
                  ? "blues chords"
                  : fifth && bar.key().isMinor() ? "V7 in minor" : "";
      if (!place.isEmpty()) {
        add("notes over " + place);
        add("thirds over " + place, guides.isThird(note.chroma()));
        Position at = position(made, note.at);
        String key = place + "|" + at.bar() + "|" + chord.get();
        sizes.merge(key, 1, Integer::sum);
        thirds.merge(key, guides.isThird(note.chroma()), Boolean::logicalOr);
      }
    }
    thirds.forEach(
        (key, has) -> {
          if (sizes.get(key) >= 3) {
            String place = key.substring(0, key.indexOf('|'));
            add("bars of three and more notes over " + place);
            add("with the third: bars over " + place, has);
          }
        });
  }

  private void scale(MadePhrase made, List<Heard> line, int i, Chord chord) {
    Heard note = line.get(i);
    Position at = position(made, note.at);
    Form.Bar bar = form.bar(at.bar());
    Set<Integer> scale = new TreeSet<>();
    ground.scalesAt(at.bar(), at.beat()).get(0).scale().notes().forEach(n -> scale.add(n.chroma()));
    boolean inScale = scale.contains(note.chroma());
    boolean inChord =
        chord.notes().stream().map(NoteName::chroma).anyMatch(c -> c == note.chroma());
    int degree = Math.floorMod(note.chroma() - bar.key().tonic().chroma(), 12);
    boolean blue =
        bar.key().isBlues() && Set.of(0, 3, 4, 5, 6, 7, 9, 10).contains(degree)
            || bar.key().isMinor() && degree == 6 && isShort(note) && byStep(line, i);
    boolean keys =
        bar.key().heptatonic().notes().stream().anyMatch(n -> n.chroma() == note.chroma());
    boolean passing = isShort(note) && byStep(line, i);
    add("notes");
    add("notes outside the scale", !inScale);
    add("notes outside scale and chord", !inScale && !inChord);
    add("of them blue notes", !inScale && !inChord && blue);
    add("of them the key's", !inScale && !inChord && !blue && keys);
    add("of them passed by step", !inScale && !inChord && !blue && !keys && passing);
    add("of them wrong", !inScale && !inChord && !blue && !keys && !passing);
    if (chord.symbol().contains("alt")
        || chord.symbol().contains("b9")
        || chord.symbol().contains("#5")) {
      add("notes over altered dominants");
      add("outside the scale over altered dominants", !inScale && !inChord);
    }
  }

  private static boolean isShort(Heard note) {
    return note.end - note.at < 1;
  }

  private static boolean byStep(List<Heard> line, int i) {
    boolean to = i == 0 || Math.abs(line.get(i).midi - line.get(i - 1).midi) <= 2;
    boolean from = i + 1 == line.size() || Math.abs(line.get(i).midi - line.get(i + 1).midi) <= 2;
    return to && from;
  }

  /**
   * Where the chord changes between two notes at most a beat and a half apart: whether the line
   * goes by step or common tone to third or seventh, where one is that near.
   */
  private void changes(MadePhrase made, List<Heard> line) {
    for (int i = 1; i < line.size(); i++) {
      Heard before = line.get(i - 1);
      Heard note = line.get(i);
      Optional<Chord> from = chord(made, before.at);
      Optional<Chord> to = chord(made, note.at);
      boolean plain =
          made.prompt().crossing().isEmpty()
              && !isRiff(bar(made, note.at))
              && from.isPresent()
              && to.isPresent();
      if (!plain || from.equals(to) || note.at - before.end > 1) {
        continue;
      }
      Guides guides = Guides.of(to.get().symbol());
      boolean near =
          IntStream.rangeClosed(-2, 2).anyMatch(step -> guides.has(before.chroma() + step));
      add("changes");
      add("changes with a guide tone near", near);
      boolean step = Math.abs(note.midi - before.midi) <= 2;
      add("changes by step to a guide tone", near && step && guides.has(note.chroma()));
      add("changes on to a chord tone", to.get().degreeOf(note.chroma()).isPresent());
    }
  }

  private void moves(List<Heard> line) {
    for (int i = 1; i < line.size(); i++) {
      int move = Math.abs(line.get(i).midi - line.get(i - 1).midi);
      add("moves");
      add("moves by step", move == 1 || move == 2);
      add("moves that repeat a note", move == 0);
      add("moves of a fifth and more", move >= 7);
      add("moves wider than an octave", move > 12);
    }
  }

  private void landing(MadePhrase made, List<Heard> line) {
    Optional<Heard> landing = line.stream().filter(n -> n.at >= -EIGHTH && n.end > 0).findFirst();
    if (landing.isEmpty() || !bends(bar(made, 0)) || landing.get().string > 3) {
      return;
    }
    add("landings on the top three strings in bending styles");
    add("of them bent to", landing.get().bent);
  }

  /** Frets from the lowest to the highest of what is fretted, on either side of a line. */
  private void hand(MadePhrase made) {
    if (made.prompt().crossing().isPresent()) {
      return;
    }
    List<Integer> frets =
        made.spots().stream().map(spot -> spot.fret()).filter(f -> f > 0).toList();
    if (!frets.isEmpty()) {
      int span = Collections.max(frets) - Collections.min(frets) + 1;
      add("phrases in four frets", span <= 4);
      add("phrases in five frets", span <= 5);
      add("phrases in one key");
      measure("frets", span);
    }
  }

  private void speed(MadePhrase made, List<Heard> line) {
    Form.Bar bar = bar(made, 0);
    double quarters = bar.section().tempo().quartersPerMinute(bar.meter()).toDouble() / 60;
    double fastest =
        IntStream.range(1, line.size())
            .mapToDouble(i -> quarters / (line.get(i).at - line.get(i - 1).at))
            .max()
            .orElse(0);
    measure("most notes a second", fastest);
    add("phrases beyond eight notes a second", fastest > 8.01);
  }

  /** How long the note sounds that is struck before the line and rings over it, in beats. */
  private void hold(MadePhrase made) {
    Prompt prompt = made.prompt();
    double landing = form.quarters(prompt.landOn()).toDouble();
    Optional<Double> line =
        IntStream.rangeClosed(prompt.speakFrom().bar(), prompt.stopBy().bar() + 1)
            .filter(n -> n > 1 && !form.bar(n).key().equals(form.bar(n - 1).key()))
            .mapToObj(n -> form.startOf(n).toDouble() - landing)
            .findFirst();
    add("holds planned");
    Optional<Heard> held =
        line.flatMap(
            at ->
                line(made).stream()
                    .filter(n -> n.at < at && n.end >= at + EIGHTH && n.end - n.at >= 1.5)
                    .findFirst());
    add("holds", held.isPresent());
    held.ifPresent(
        note -> {
          double beat = bar(made, line.get()).meter().beatLength().max(Beats.ONE).toDouble();
          measure("hold length in beats", (note.end - note.at) / beat);
          measure("hold struck beats before", (line.get() - note.at) / beat);
          measure("hold rings beats after", (note.end - line.get()) / beat);
          add("holds bent to", note.bent);
        });
  }

  /** A statement that comes back, beside the one it comes from. */
  private void returns(MadePhrase made, int index) {
    add("returns");
    if (!made.why().contains("comes back")) {
      return;
    }
    Prompt first = plan.prompt(index);
    while (first.again().isPresent()) {
      first = plan.prompt(first.again().get());
    }
    MadePhrase origin = maker.make(first);
    add("returns claimed");
    add("returns claimed over a line", made.prompt().crossing().isPresent());
    add("returns known again", comesBack(origin, made));
    add("returns with another ending", endsOtherwise(line(origin), line(made)));
  }

  /**
   * Whether the first half of the notes, three at least, comes back somewhere in a row: the same
   * rhythm and, up or down together, the same semitones or the same degrees of the key.
   */
  private boolean comesBack(MadePhrase origin, MadePhrase made) {
    List<Heard> said = line(origin);
    List<Heard> now = line(made);
    int half = Math.min(said.size(), Math.max(3, (said.size() + 1) / 2));
    return IntStream.rangeClosed(0, now.size() - half)
        .anyMatch(
            from ->
                IntStream.range(1, half)
                        .allMatch(
                            i ->
                                Math.abs(
                                        (said.get(i).at - said.get(0).at)
                                            - (now.get(from + i).at - now.get(from).at))
                                    < 0.01)
                    && (sameSteps(said, now, from, half)
                        || sameDegrees(origin, said, made, now, from, half)));
  }

  private static boolean sameSteps(List<Heard> said, List<Heard> now, int from, int half) {
    return IntStream.range(1, half)
        .allMatch(
            i ->
                said.get(i).midi - said.get(i - 1).midi
                    == now.get(from + i).midi - now.get(from + i - 1).midi);
  }

  private boolean sameDegrees(
      MadePhrase origin, List<Heard> said, MadePhrase made, List<Heard> now, int from, int half) {
    return IntStream.range(0, half)
        .allMatch(
            i ->
                degree(origin, said.get(i)) == degree(made, now.get(from + i))
                    && (i == 0
                        || Integer.signum(said.get(i).midi - said.get(i - 1).midi)
                            == Integer.signum(
                                now.get(from + i).midi - now.get(from + i - 1).midi)));
  }

  /** The number of the key's degree by its letter: 3 for both thirds. */
  private int degree(MadePhrase made, Heard note) {
    int above = Math.floorMod(note.midi - bar(made, note.at).key().tonic().chroma(), 12);
    return List.of(1, 2, 2, 3, 3, 4, 5, 5, 6, 6, 7, 7).get(above);
  }

  /** Another last note, or two notes of the second half at least other ones or in another place. */
  private static boolean endsOtherwise(List<Heard> said, List<Heard> now) {
    int last = said.get(said.size() - 1).chroma();
    long other =
        now.subList(now.size() / 2, now.size()).stream()
            .filter(
                n ->
                    said.stream()
                        .noneMatch(s -> s.chroma() == n.chroma() && Math.abs(s.at - n.at) < 0.01))
            .count();
    return last != now.get(now.size() - 1).chroma() || other >= 2;
  }

  private void reply(MadePhrase made) {
    MadePhrase statement = maker.make(plan.prompt(made.prompt().repliesTo().orElseThrow()));
    List<Heard> said = line(statement);
    List<Heard> answer = line(made);
    add("replies");
    boolean opening = sharesOpening(said, answer);
    boolean rhythm = sharesRhythm(said, answer);
    add("replies that share the opening", opening);
    add("replies that share the rhythm", rhythm);
    add("replies that share opening or rhythm", opening || rhythm);
    add("replies at rest", isAtRest(made, answer));
    int nth = made.prompt().index() - made.prompt().repliesTo().orElseThrow();
    if (nth > 1) {
      MadePhrase other = maker.make(plan.prompt(made.prompt().index() - 1));
      add("second replies");
      add("second replies unlike the first", !line(other).equals(answer));
    }
    double apart = Math.abs(made.phrase().length().minus(statement.phrase().length()).toDouble());
    double beat = bar(made, 0).meter().beatLength().max(Beats.ONE).toDouble();
    add("replies within a beat of the statement's length", apart <= beat + 0.01);
    afterNewEnding(made, statement, nth);
  }

  /** A reply to a statement that came back, beside the one that it had the first time. */
  private void afterNewEnding(MadePhrase made, MadePhrase statement, int nth) {
    Optional<Integer> again = statement.prompt().again();
    if (again.isEmpty()) {
      return;
    }
    Prompt before = plan.prompt(again.get() + nth);
    if (before.role() == Role.REPLY && before.section().equals(made.prompt().section())) {
      add("replies after a new ending");
      add("of them other than before", !line(maker.make(before)).equals(line(made)));
    }
  }

  /** Three notes in the same rhythm that move the same way, wider or narrower by a tone at most. */
  private static boolean sharesOpening(List<Heard> said, List<Heard> answer) {
    return said.size() >= 3
        && answer.size() >= 3
        && IntStream.range(0, 3).allMatch(i -> Math.abs(said.get(i).at - answer.get(i).at) < 0.01)
        && IntStream.range(1, 3)
            .allMatch(
                i -> {
                  int there = said.get(i).midi - said.get(i - 1).midi;
                  int here = answer.get(i).midi - answer.get(i - 1).midi;
                  return Integer.signum(there) == Integer.signum(here)
                      && Math.abs(there - here) <= 2;
                });
  }

  /** Three of four onsets, seen from the landing, are both's. */
  private static boolean sharesRhythm(List<Heard> said, List<Heard> answer) {
    Set<Long> all = new TreeSet<>();
    Set<Long> both = new TreeSet<>();
    said.forEach(n -> all.add(Math.round(n.at * 24)));
    answer.stream().map(n -> Math.round(n.at * 24)).filter(all::contains).forEach(both::add);
    answer.forEach(n -> all.add(Math.round(n.at * 24)));
    return both.size() * 4 >= all.size() * 3;
  }

  /** On the tonic, or on root, third or fifth of the chord. */
  private boolean isAtRest(MadePhrase made, List<Heard> line) {
    Heard last = line.get(line.size() - 1);
    int above =
        chord(made, last.at)
            .map(c -> Math.floorMod(last.midi - Guides.of(c.symbol()).root, 12))
            .orElse(0);
    return endsOnTonic(made, line) || Set.of(0, 3, 4, 7).contains(above);
  }

  private void print() {
    counts.forEach((what, count) -> System.out.printf("%-58s %6d%n", what, count));
    values.forEach(
        (what, all) -> {
          List<Double> sorted = all.stream().sorted().toList();
          System.out.printf(
              "%-58s median %.2f, least %.2f, most %.2f%n",
              what, median(what), sorted.get(0), sorted.get(sorted.size() - 1));
        });
    shares().forEach((what, share) -> System.out.printf("%-58s %5.1f %%%n", what, 100 * share));
  }

  private Map<String, Double> shares() {
    Map<String, Double> shares = new TreeMap<>();
    String[][] pairs = {
      {"thirds over V7 in minor", "notes over V7 in minor"},
      {"with the third: bars over V7 in minor", "bars of three and more notes over V7 in minor"},
      {"thirds over blues chords", "notes over blues chords"},
      {"with the third: bars over blues chords", "bars of three and more notes over blues chords"},
      {"changes by step to a guide tone", "changes with a guide tone near"},
      {"changes on to a chord tone", "changes"},
      {"notes outside the scale", "notes"},
      {"notes outside scale and chord", "notes"},
      {"of them wrong", "notes"},
      {"outside the scale over altered dominants", "notes over altered dominants"},
      {"of them bent to", "landings on the top three strings in bending styles"},
      {"returns claimed", "returns"},
      {"returns known again", "returns claimed"},
      {"returns with another ending", "returns claimed"},
      {"replies that share the opening", "replies"},
      {"replies that share the rhythm", "replies"},
      {"replies that share opening or rhythm", "replies"},
      {"replies at rest", "replies"},
      {"replies within a beat of the statement's length", "replies"},
      {"second replies unlike the first", "second replies"},
      {"of them other than before", "replies after a new ending"},
      {"moves of a fifth and more", "moves"},
      {"moves by step", "moves"},
      {"phrases in four frets", "phrases in one key"},
      {"phrases in five frets", "phrases in one key"},
      {"phrases beyond eight notes a second", "phrases"},
      {"statements ending on the tonic", "statements"},
      {"first statements unlike all others", "first statements"},
    };
    for (String[] pair : pairs) {
      shares.put(pair[0] + " / " + pair[1], share(pair[0], pair[1]));
    }
    return shares;
  }

  /** Prints the counts: {@code main(seeds)}. */
  public static void main(String[] args) throws IOException {
    of(charts(), args.length > 0 ? Integer.parseInt(args[0]) : 10).print();
  }
}
