package hingetone.phrase.maker;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.chart.PhraseTurn.Role;
import hingetone.ground.Ground;
import hingetone.neck.Fretboard;
import hingetone.phrase.Phrase;
import hingetone.phrase.Statement;
import hingetone.phrase.StatementBank;
import hingetone.phrase.Tone;
import hingetone.plan.Plan;
import hingetone.plan.Prompt;
import hingetone.text.reading.Source;
import hingetone.theory.Chord;
import hingetone.theory.Key;
import hingetone.theory.NoteName;
import hingetone.theory.Scale;
import hingetone.time.Beats;
import hingetone.time.Position;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Measures made phrases by rules of the trade (common practice), written here anew: none of the
 * maker's own code decides what is right.
 */
public class PhraseMakerTest {
  private static final int FEW = 6;
  private static final int ALL = 200;

  private final Map<String, Integer> counts = new TreeMap<>();
  private final List<String> wrong = new ArrayList<>();

  @Test
  void made_phrases_keep_the_rules_of_the_trade() throws Exception {
    measure(FEW);
    assertRules();
  }

  @Test
  @Tag("long")
  void made_phrases_keep_the_rules_of_the_trade_for_two_hundred_seeds() throws Exception {
    measure(ALL);
    System.out.println(counts);
    assertRules();
  }

  private void assertRules() {
    assertThat(wrong.stream().limit(10)).isEmpty();
    assertThat(counts.get("landing on a chord tone"))
        .isGreaterThanOrEqualTo(counts.get("landing") * 95 / 100);
    assertThat(counts.get("in scale or by step"))
        .isGreaterThanOrEqualTo(counts.get("note") * 99 / 100);
  }

  @Test
  void on_a_neck_with_gaps_every_note_has_a_place() {
    Chart chart =
        ChartReader.read(
                new Source(
                    "gaps",
                    """
                    tuning: [G2, A2, Eb3]
                    capo: 7
                    sections:
                      low: {key: F phrygian, bars: '| Fm7 | Gbmaj7 |'}
                      high: {key: C phrygian, bars: '| Cm7 | Dbmaj7 | Fb2 |'}
                    """))
            .value()
            .orElseThrow();
    for (long seed = 1; seed <= 40; seed++) {
      Plan plan = Plan.of(chart, Form.of(chart));
      PhraseMaker maker = maker(chart.withSeed(seed), plan);
      for (Prompt prompt : plan.promptsOfLap(2)) {
        if (!prompt.isRest()) {
          MadePhrase made = maker.make(prompt);
          assertThat(made.spots()).hasSameSizeAs(made.phrase().tones());
        }
      }
    }
  }

  @Test
  void two_seeds_differ_and_the_same_seed_is_the_same() throws Exception {
    for (Path file : demoCharts()) {
      assertThat(notes(file, 1)).isEqualTo(notes(file, 1)).isNotEqualTo(notes(file, 2));
    }
  }

  @Test
  void a_statement_that_comes_back_keeps_its_opening_and_changes_its_ending() throws Exception {
    for (Path file : demoCharts()) {
      for (long seed = 1; seed <= FEW; seed++) {
        Chart chart = read(file).withSeed(seed);
        Plan plan = Plan.of(chart, Form.of(chart));
        PhraseMaker maker = maker(chart, plan);
        for (Prompt prompt : plan.promptsOfLap(2)) {
          if (prompt.again().isPresent() && prompt.crossing().isEmpty()) {
            MadePhrase again = maker.make(prompt);
            if (again.why().contains("comes back")) {
              MadePhrase first = maker.make(plan.prompt(prompt.again().get()));
              Beats early = again.why().contains("an eighth early") ? Beats.of(1, 2) : Beats.ZERO;
              assertThat(again.phrase().tones().get(0).onset().plus(early))
                  .isEqualTo(first.phrase().tones().get(0).onset());
              assertThat(again.phrase().tones()).isNotEqualTo(first.phrase().tones());
            }
          }
        }
      }
    }
  }

  private static List<Phrase> notes(Path file, long seed) throws Exception {
    Chart chart = read(file).withSeed(seed);
    Plan plan = Plan.of(chart, Form.of(chart));
    PhraseMaker maker = maker(chart, plan);
    return plan.promptsOfLap(1).stream()
        .filter(p -> !p.isRest())
        .map(p -> maker.make(p).phrase())
        .toList();
  }

  public static List<Path> demoCharts() throws Exception {
    try (Stream<Path> files = Files.list(Path.of("demo-charts"))) {
      return files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList();
    }
  }

  public static Chart read(Path file) {
    return ChartReader.readFile(file.toString()).value().orElseThrow();
  }

  static PhraseMaker maker(Chart chart, Plan plan) {
    Fretboard neck = Fretboard.of(chart.tuning(), chart.capo());
    return withBank(PhraseMaker.of(plan, Ground.of(plan.form(), neck), chart.seed()));
  }

  public static PhraseMaker withBank(PhraseMaker maker) {
    return maker.withBank(
        StatementBank.builtIn().read().value().orElseThrow(), s -> s.swing().orElse(0) >= 55);
  }

  private void measure(int seeds) throws Exception {
    for (Path file : demoCharts()) {
      Chart read = read(file);
      Form form = Form.of(read);
      Ground ground = Ground.of(form, Fretboard.of(read.tuning(), read.capo()));
      for (long seed = 1; seed <= seeds; seed++) {
        Chart chart = read.withSeed(seed);
        Plan plan = Plan.of(chart, form);
        PhraseMaker maker = withBank(PhraseMaker.of(plan, ground, seed));
        for (Prompt prompt : plan.promptsOfLap(2)) {
          if (!prompt.isRest()) {
            MadePhrase made = maker.make(prompt);
            String where = file.getFileName() + " seed " + seed + " prompt " + prompt.index();
            check(chart, form, made, where);
            prompt
                .repliesTo()
                .ifPresent(i -> answers(form, made, maker.make(plan.prompt(i)), where));
          }
        }
      }
    }
  }

  private void check(Chart chart, Form form, MadePhrase made, String where) {
    Prompt prompt = made.prompt();
    Beats landing = form.quarters(prompt.landOn());
    Beats room = landing.minus(form.quarters(prompt.speakFrom()));
    Phrase phrase = made.phrase();
    expect(!phrase.start().isBefore(room.negated()), where + " starts too early");
    Beats after = form.quarters(prompt.stopBy()).minus(landing);
    expect(!phrase.end().isAfter(after), where + " ends too late: " + phrase.end());
    count("phrase", true);
    boolean crossing = prompt.crossing().isPresent();
    Tone main = main(phrase);
    count("landing", true);
    count("landing on a chord tone", isChordTone(form, landing, main.reached().midi()));
    if (!crossing) {
      count("landing pushed an eighth", main.onset().isNegative());
      expect(isOnePosition(chart, phrase), where + " leaves its position");
    }
    List<Tone> line = top(phrase);
    for (int i = 0; i < line.size(); i++) {
      boolean fits = inScale(form, landing, line.get(i)) || byStep(line, i) || crossing;
      count("note", true);
      count("in scale or by step", fits);
    }
  }

  /** Lengths within a beat, and what the sentence says about opening and rhythm is so. */
  private void answers(Form form, MadePhrase reply, MadePhrase statement, String where) {
    if (reply.prompt().crossing().isPresent() || statement.prompt().crossing().isPresent()) {
      return;
    }
    Beats apart = reply.phrase().length().minus(statement.phrase().length());
    Beats beat = form.bar(reply.prompt().landOn().bar()).meter().beatLength();
    expect(
        !apart.isAfter(beat) && !apart.negated().isAfter(beat),
        where + " is longer or shorter by " + apart);
    List<Tone> said = top(statement.phrase());
    List<Tone> answered = top(reply.phrase());
    if (reply.why().startsWith("Opens like")) {
      count("same opening", true);
      boolean moved = Stream.of("moved along", "octave", "fitted").anyMatch(reply.why()::contains);
      count("same opening moved along the scale", moved);
      expect(
          moved ? opensAlong(said, answered) : opensTheSame(said, answered),
          where + " does not open like the statement");
    } else if (reply.why().startsWith("Takes the statement's rhythm")) {
      count("same rhythm", true);
      boolean turned = reply.why().contains("turns the line round");
      count("turned round", turned);
      expect(!turned || movesOtherWay(said, answered), where + " is not turned round");
      expect(
          said.stream()
              .map(Tone::onset)
              .toList()
              .equals(answered.stream().map(Tone::onset).toList()),
          where + " has another rhythm");
    } else {
      boolean opposite = reply.why().contains("going the other way");
      count("as long", true);
      count("going the other way", opposite);
      int rose = Integer.signum(moved(said, 0, said.size() - 1));
      int rises = Integer.signum(moved(answered, 0, answered.size() - 1));
      expect(!opposite || rises == (rose >= 0 ? -1 : 1), where + " goes the statement's way");
    }
  }

  private static boolean opensTheSame(List<Tone> said, List<Tone> answered) {
    return IntStream.range(0, 2)
        .allMatch(
            i ->
                said.get(i).onset().equals(answered.get(i).onset())
                    && said.get(i).reached().midi() == answered.get(i).reached().midi());
  }

  private static boolean opensAlong(List<Tone> said, List<Tone> answered) {
    return said.get(0).onset().equals(answered.get(0).onset())
        && said.get(1).onset().equals(answered.get(1).onset())
        && Integer.signum(moved(said, 0, 1)) == Integer.signum(moved(answered, 0, 1));
  }

  /** Every move but the last, which comes to rest, up where the statement went down and so on. */
  private static boolean movesOtherWay(List<Tone> said, List<Tone> answered) {
    return IntStream.range(1, said.size() - 1)
        .allMatch(
            i ->
                Integer.signum(moved(said, i - 1, i))
                    == -Integer.signum(moved(answered, i - 1, i)));
  }

  private static int moved(List<Tone> line, int from, int to) {
    return line.get(to).reached().midi() - line.get(from).reached().midi();
  }

  private void expect(boolean holds, String otherwise) {
    if (!holds) {
      wrong.add(otherwise);
    }
  }

  private void count(String what, boolean holds) {
    counts.merge(what, holds ? 1 : 0, Integer::sum);
  }

  /** The note struck on the landing, or at most an eighth before it and ringing over it. */
  private static Tone main(Phrase phrase) {
    return top(phrase).stream()
        .filter(t -> !t.onset().isBefore(Beats.of(-1, 2)) && t.end().isPositive())
        .findFirst()
        .orElseThrow();
  }

  /** Of notes struck together the highest. */
  private static List<Tone> top(Phrase phrase) {
    Map<Beats, Tone> top = new TreeMap<>();
    phrase
        .tones()
        .forEach(
            t -> top.merge(t.onset(), t, (a, b) -> a.pitch().midi() >= b.pitch().midi() ? a : b));
    return List.copyOf(top.values());
  }

  /** Over a riff or a power chord: 1, b3, 4, 5 or b7 (common practice). */
  private static boolean isChordTone(Form form, Beats time, int midi) {
    Position at = form.position(time);
    Form.Bar bar = form.bar(at.bar());
    Optional<Chord> chord = bar.chordAt(at.beat());
    if (chord.isEmpty()) {
      return bar.key().heptatonic().degreeOf(midi % 12).isPresent();
    }
    int above = Math.floorMod(midi - chord.get().root().chroma(), 12);
    boolean riff = bar.section().riff().isPresent() || chord.get().symbol().endsWith("5");
    return chord.get().notes().stream().map(NoteName::chroma).anyMatch(c -> c == midi % 12)
        || riff && List.of(0, 3, 5, 7, 10).contains(above);
  }

  /** In the key, of the chord, or over an altered dominant one of its tensions b9 #9 b5 #5. */
  private static boolean inScale(Form form, Beats landing, Tone tone) {
    Position at = form.position(landing.plus(tone.onset()));
    Key key = form.bar(at.bar()).key();
    int chroma = tone.reached().midi() % 12;
    Optional<Chord> chord = form.bar(at.bar()).chordAt(at.beat());
    boolean ofChord =
        chord.filter(c -> c.notes().stream().anyMatch(n -> n.chroma() == chroma)).isPresent();
    boolean tension =
        chord
            .filter(c -> c.symbol().matches(".*(alt|b9|#9|#5|b5|b13).*"))
            .filter(
                c -> List.of(1, 3, 6, 8).contains(Math.floorMod(chroma - c.root().chroma(), 12)))
            .isPresent();
    return ofChord
        || tension
        || Stream.of(key.heptatonic(), key.scale(), key.pentatonic())
            .map(Scale::notes)
            .flatMap(List::stream)
            .anyMatch(n -> n.chroma() == chroma);
  }

  private static boolean byStep(List<Tone> line, int i) {
    int midi = line.get(i).reached().midi();
    boolean to = i == 0 || Math.abs(midi - line.get(i - 1).reached().midi()) <= 2;
    boolean from = i == line.size() - 1 || Math.abs(midi - line.get(i + 1).reached().midi()) <= 2;
    return to && from;
  }

  /** Some five frets hold every note that is fretted. */
  private static boolean isOnePosition(Chart chart, Phrase phrase) {
    List<Integer> open = chart.tuning().strings().stream().map(p -> p.midi()).toList();
    return IntStream.rangeClosed(0, 18)
        .anyMatch(
            low ->
                phrase.tones().stream()
                    .allMatch(
                        t ->
                            open.stream()
                                .map(o -> t.pitch().midi() - o - chart.capo())
                                .anyMatch(fret -> fret >= low && fret <= low + 4)));
  }

  /** Time to make a reply: {@code main(new String[] {})} prints median and worst of 10,000. */
  public static void main(String[] args) throws Exception {
    List<Statement> bank = StatementBank.builtIn().read().value().orElseThrow();
    List<Ground> grounds = new ArrayList<>();
    for (Path file : demoCharts()) {
      Chart chart = read(file);
      Fretboard neck = Fretboard.of(chart.tuning(), chart.capo());
      grounds.add(Ground.of(Form.of(chart), neck));
    }
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    List<Long> work = new ArrayList<>();
    List<Long> nanos = new ArrayList<>();
    for (long seed = 1; nanos.size() < 10_000; seed++) {
      for (int i = 0; i < grounds.size(); i++) {
        Chart chart = read(demoCharts().get(i)).withSeed(seed);
        Plan plan = Plan.of(chart, Form.of(chart));
        PhraseMaker maker =
            PhraseMaker.of(plan, grounds.get(i), seed)
                .withBank(bank, s -> s.swing().orElse(0) >= 55);
        for (Prompt prompt : plan.promptsOfLap(1)) {
          if (prompt.role() == Role.REPLY) {
            Phrase statement = maker.make(plan.prompt(prompt.repliesTo().orElseThrow())).phrase();
            long start = System.nanoTime();
            long worked = threads.getCurrentThreadCpuTime();
            maker.reply(prompt, statement);
            work.add(threads.getCurrentThreadCpuTime() - worked);
            nanos.add(System.nanoTime() - start);
          }
        }
      }
    }
    System.out.println("Java " + System.getProperty("java.version"));
    tell("by the clock", nanos);
    tell("of processor time", work);
  }

  private static void tell(String what, List<Long> nanos) {
    nanos.sort(Comparator.naturalOrder());
    System.out.printf(
        "%d replies, %s: median %.3f ms, 99 %% %.3f ms, worst %.3f ms%n",
        nanos.size(),
        what,
        nanos.get(nanos.size() / 2) / 1e6,
        nanos.get(nanos.size() * 99 / 100) / 1e6,
        nanos.get(nanos.size() - 1) / 1e6);
  }
}
