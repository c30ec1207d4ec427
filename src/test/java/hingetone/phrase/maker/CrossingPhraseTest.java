package hingetone.phrase.maker;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.chart.Leave;
import hingetone.chart.PhraseTurn.Role;
import hingetone.ground.Ground;
import hingetone.neck.Fretboard;
import hingetone.neck.Spot;
import hingetone.phrase.Tone;
import hingetone.plan.Plan;
import hingetone.plan.Prompt;
import hingetone.theory.Chord;
import hingetone.theory.Key;
import hingetone.theory.NoteName;
import hingetone.time.Beats;
import hingetone.time.Position;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BiConsumer;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * How replies end and how phrases go over a line, by rules of the trade (common practice) written
 * here anew: none of the maker's own code decides what is right.
 */
class CrossingPhraseTest {
  private static final Beats EIGHTH = Beats.of(1, 2);

  private static final int SEEDS = 12;
  private static final int WIDEST = 5;

  private final Map<String, Integer> counts = new TreeMap<>();
  private final List<String> wrong = new ArrayList<>();

  private void count(String what) {
    counts.merge(what, 1, Integer::sum);
  }

  private int counted(String what) {
    return counts.getOrDefault(what, 0);
  }

  /** A phrase made for a prompt, what it answers, and where it was made. */
  private record Heard(Form form, MadePhrase made, Optional<MadePhrase> statement, String where) {}

  private static void forAll(BiConsumer<Heard, Prompt> check) throws Exception {
    for (Path file : PhraseMakerTest.demoCharts()) {
      Chart read = PhraseMakerTest.read(file);
      Form form = Form.of(read);
      Ground ground = Ground.of(form, Fretboard.of(read.tuning(), read.capo()));
      for (long seed = 1; seed <= SEEDS; seed++) {
        Plan plan = Plan.of(read.withSeed(seed), form);
        PhraseMaker maker = PhraseMakerTest.withBank(PhraseMaker.of(plan, ground, seed));
        for (Prompt prompt : plan.promptsOfLap(2)) {
          if (!prompt.isRest()) {
            String where = file.getFileName() + " seed " + seed + " prompt " + prompt.index();
            Optional<MadePhrase> statement =
                prompt.repliesTo().map(i -> maker.make(plan.prompt(i)));
            check.accept(new Heard(form, maker.make(prompt), statement, where), prompt);
          }
        }
      }
    }
  }

  @Test
  void a_reply_closes_where_its_statement_ended_open() throws Exception {
    forAll(
        (heard, prompt) -> {
          if (prompt.role() == Role.REPLY && isOpen(heard.form, heard.statement.orElseThrow())) {
            count("answered");
            count(closes(heard.form, heard.made) ? "closed" : "left open");
          }
        });
    assertThat(counted("answered")).isGreaterThan(100);
    assertThat(counted("closed"))
        .as("%s", counts)
        .isGreaterThanOrEqualTo(counted("answered") * 95 / 100);
  }

  /** It does not end on its key's tonic. */
  private static boolean isOpen(Form form, MadePhrase statement) {
    return last(statement).reached().midi() % 12 != key(form, statement).tonic().chroma();
  }

  /** It ends on the key's tonic, or on root, third or fifth of the chord that sounds then. */
  private static boolean closes(Form form, MadePhrase reply) {
    int chroma = last(reply).reached().midi() % 12;
    Position at = at(form, reply, last(reply));
    Optional<Chord> chord = form.bar(at.bar()).chordAt(at.beat());
    List<Integer> home =
        chord
            .map(c -> c.notes().stream().limit(3).map(NoteName::chroma).toList())
            .orElse(List.of());
    boolean riff = form.bar(at.bar()).section().riff().isPresent();
    int above = chord.map(c -> Math.floorMod(chroma - c.root().chroma(), 12)).orElse(-1);
    return chroma == key(form, reply).tonic().chroma()
        || home.contains(chroma)
        || riff && List.of(0, 3, 7).contains(above);
  }

  private static Key key(Form form, MadePhrase made) {
    return form.bar(at(form, made, last(made)).bar()).key();
  }

  private static Tone last(MadePhrase made) {
    List<Tone> tones = made.phrase().tones();
    return tones.get(tones.size() - 1);
  }

  private static Position at(Form form, MadePhrase made, Tone tone) {
    return form.position(form.quarters(made.prompt().landOn()).plus(tone.onset()));
  }

  @Test
  void a_phrase_over_a_line_is_the_kind_that_was_planned_and_played_in_one_place_on_each_side()
      throws Exception {
    forAll(
        (heard, prompt) -> {
          if (prompt.crossing().isPresent()) {
            count("crossing");
            over(heard, prompt.crossing().get(), line(heard));
          }
        });
    assertThat(wrong.stream().limit(10)).as("%s", counts).isEmpty();
    assertThat(counted("crossing")).isGreaterThan(50);
    assertThat(counted("as planned"))
        .as("%s", counts)
        .isGreaterThanOrEqualTo(counted("crossing") * 9 / 10);
  }

  /** Where the key changes, in quarter notes from the phrase's landing. */
  private static Beats line(Heard heard) {
    Form form = heard.form;
    Prompt prompt = heard.made.prompt();
    int bar =
        IntStream.rangeClosed(prompt.speakFrom().bar(), prompt.stopBy().bar() + 1)
            .filter(n -> n > 1 && !form.bar(n).key().equals(form.bar(n - 1).key()))
            .findFirst()
            .orElseThrow();
    return form.startOf(bar).minus(form.quarters(prompt.landOn()));
  }

  private void over(Heard heard, Leave way, Beats line) {
    List<Tone> tones = heard.made.phrase().tones();
    boolean planned =
        way == Leave.HOLD ? isHold(tones, line) : isRun(tones, line) || isOneFret(heard.made, line);
    count(planned ? "as planned" : "another way");
    boolean onLine =
        tones.stream()
            .anyMatch(
                t ->
                    !t.onset().isAfter(line)
                        && !t.onset().isBefore(line.minus(way == Leave.HOLD ? Beats.of(2) : EIGHTH))
                        && t.end().isAfter(line));
    if (planned && !onLine) {
      wrong.add(heard.where + " does not arrive on the line: " + heard.made.why());
    }
    if (span(heard.made, line, true) > WIDEST || span(heard.made, line, false) > WIDEST) {
      wrong.add(heard.where + " leaves its position: " + heard.made.spots());
    }
  }

  /** Struck before the line, half a beat and more past it, one and a half and more in all. */
  private static boolean isHold(List<Tone> tones, Beats line) {
    return tones.stream()
        .anyMatch(
            t ->
                t.onset().isBefore(line)
                    && !t.end().isBefore(line.plus(Beats.of(1, 2)))
                    && !t.length().isBefore(Beats.of(3, 2)));
  }

  /** Two moments and more in the last four quarters before the line, and one on it. */
  private static boolean isRun(List<Tone> tones, Beats line) {
    return tones.stream().map(Tone::onset).anyMatch(line::equals)
        && tones.stream()
                .map(Tone::onset)
                .filter(o -> o.isBefore(line) && !o.isBefore(line.minus(Beats.of(4))))
                .distinct()
                .count()
            >= 2;
  }

  /** A half step has nothing in between: two strings, each a fret farther on the line. */
  private static boolean isOneFret(MadePhrase made, Beats line) {
    Optional<Beats> last =
        made.phrase().tones().stream()
            .map(Tone::onset)
            .filter(onset -> onset.isBefore(line))
            .max(Beats::compareTo);
    List<Spot> before = last.map(onset -> struck(made, onset)).orElse(List.of());
    List<Spot> on = struck(made, line);
    return before.size() == 2
        && (on.equals(before.stream().map(s -> s.up(1)).toList())
            || on.equals(before.stream().map(s -> s.up(-1)).toList()));
  }

  private static List<Spot> struck(MadePhrase made, Beats onset) {
    return IntStream.range(0, made.spots().size())
        .filter(i -> made.phrase().tones().get(i).onset().equals(onset))
        .mapToObj(i -> made.spots().get(i))
        .toList();
  }

  /** Frets from the lowest to the highest, both counted, on one side of the line. */
  private static int span(MadePhrase made, Beats line, boolean before) {
    List<Integer> frets =
        IntStream.range(0, made.spots().size())
            .filter(i -> made.phrase().tones().get(i).onset().isBefore(line) == before)
            .mapToObj(i -> made.spots().get(i))
            .map(Spot::fret)
            .toList();
    return frets.isEmpty()
        ? 0
        : frets.stream().max(Integer::compare).get()
            - frets.stream().min(Integer::compare).get()
            + 1;
  }
}
