package hingetone.phrase.maker;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.chart.PhraseTurn.Role;
import hingetone.ground.Ground;
import hingetone.neck.Fretboard;
import hingetone.phrase.Phrase;
import hingetone.phrase.Tone;
import hingetone.plan.Plan;
import hingetone.plan.Prompt;
import hingetone.time.Beats;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/**
 * Writes cases for somebody who has not seen the maker: a statement and four replies, of which one
 * was made to it and three to other statements of the same chart, place and length. The answers
 * stand in a file of their own.
 *
 * <p>{@code java -cp 'src/target/test-classes:src/target/classes:target/lib/*'
 * hingetone.phrase.maker.BlindReplies FOLDER} writes {@code cases.txt} and {@code answers.txt}.
 */
final class BlindReplies {
  private static final int CASES = 40;
  private static final int CANDIDATES = 4;
  private static final int FEWEST_NOTES = 4;
  private static final int SEEDS = 400;

  private record Pair(Chart chart, MadePhrase statement, MadePhrase reply) {}

  private final StringBuilder cases =
      new StringBuilder(
          """
          In each case a statement was played, then one of four replies: which was made to it?
          A note is its place, its name and its length. Places and lengths are quarter notes; 0 is the
          strong beat that a phrase lands on, what is before it is its pickup. A chord stands
          where it begins.

          """);
  private final StringBuilder answers = new StringBuilder();
  private final Random random = new Random(40);

  private BlindReplies() {}

  /** Writes the cases: {@code main(folder)}. */
  public static void main(String[] args) throws IOException {
    BlindReplies blind = new BlindReplies();
    List<Path> charts = PhraseCounts.charts();
    int made = 0;
    for (int i = 0; made < CASES; i++) {
      Path file = charts.get(i % charts.size());
      if (blind.add(made + 1, file, 1 + SEEDS * (i / charts.size()))) {
        made++;
      }
    }
    Path folder = Files.createDirectories(Path.of(args[0]));
    Files.writeString(folder.resolve("cases.txt"), blind.cases);
    Files.writeString(folder.resolve("answers.txt"), blind.answers);
  }

  private boolean add(int number, Path file, int firstSeed) throws IOException {
    List<Pair> pairs = new ArrayList<>();
    for (int seed = firstSeed; seed < firstSeed + SEEDS && pairs.size() < CANDIDATES; seed++) {
      Optional<Pair> pair = pair(file, seed);
      if (pair.filter(p -> pairs.isEmpty() || isAlike(pairs.get(0), p)).isPresent()
          && pairs.stream().noneMatch(p -> saysTheSame(p, pair.get()))) {
        pairs.add(pair.get());
      }
    }
    if (pairs.size() < CANDIDATES) {
      return false;
    }
    Pair asked = pairs.get(0);
    List<Pair> order = new ArrayList<>(pairs);
    Collections.shuffle(order, random);
    String key = asked.statement.phrase().key().toString();
    cases.append("Case %d: %s, %s%n".formatted(number, key, meter(asked)));
    cases.append("  statement: ").append(text(asked, asked.statement)).append('\n');
    for (int i = 0; i < CANDIDATES; i++) {
      String name = "  " + "ABCD".charAt(i) + ": ";
      cases.append(name).append(text(asked, order.get(i).reply)).append('\n');
    }
    cases.append('\n');
    answers.append("%d %s%n".formatted(number, "ABCD".charAt(order.indexOf(asked))));
    return true;
  }

  /**
   * The first reply of the chart that stands inside a key and answers a statement of some notes.
   */
  private static Optional<Pair> pair(Path file, int seed) {
    Chart chart = ChartReader.readFile(file.toString()).value().orElseThrow().withSeed((long) seed);
    Form form = Form.of(chart);
    Plan plan = Plan.of(chart, form);
    Ground ground = Ground.of(form, Fretboard.of(chart.tuning(), chart.capo()));
    PhraseMaker maker = PhraseMakerTest.withBank(PhraseMaker.of(plan, ground, seed));
    return plan.promptsOfLap(1).stream()
        .filter(prompt -> prompt.role() == Role.REPLY && prompt.crossing().isEmpty())
        .findFirst()
        .map(
            prompt -> {
              Prompt statement = plan.prompt(prompt.repliesTo().orElseThrow());
              return new Pair(chart, maker.make(statement), maker.make(prompt));
            })
        .filter(pair -> pair.statement.phrase().tones().size() >= FEWEST_NOTES);
  }

  /** The same place, and as long to a beat. */
  private static boolean isAlike(Pair one, Pair other) {
    Beats apart = one.statement.phrase().length().minus(other.statement.phrase().length());
    return one.reply.prompt().landOn().equals(other.reply.prompt().landOn())
        && apart.max(apart.negated()).compareTo(Beats.ONE) <= 0;
  }

  private static boolean saysTheSame(Pair one, Pair other) {
    return one.statement.phrase().equals(other.statement.phrase())
        || one.reply.phrase().equals(other.reply.phrase());
  }

  private static String meter(Pair pair) {
    Form form = Form.of(pair.chart);
    return form.bar(pair.statement.prompt().landOn().bar()).meter().toString();
  }

  private static String text(Pair asked, MadePhrase made) {
    Form form = Form.of(asked.chart);
    Beats landing = form.quarters(made.prompt().landOn());
    Phrase phrase = made.phrase();
    StringBuilder text = new StringBuilder();
    String chord = "";
    for (Tone tone : phrase.tones()) {
      var at = form.position(landing.plus(tone.onset()));
      String now = form.bar(at.bar()).chordAt(at.beat()).map(Object::toString).orElse("N.C.");
      text.append(now.equals(chord) ? "" : "[" + now + "] ");
      chord = now;
      text.append("%s %s %s, ".formatted(tone.onset(), tone.reached(), tone.length()));
    }
    return text.toString().replaceAll(", $", "");
  }
}
