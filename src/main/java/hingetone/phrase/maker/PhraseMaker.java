package hingetone.phrase.maker;

import hingetone.chart.Fluency;
import hingetone.chart.Form;
import hingetone.chart.PhraseTurn.Role;
import hingetone.chart.Section;
import hingetone.ground.Ground;
import hingetone.phrase.Phrase;
import hingetone.phrase.Statement;
import hingetone.plan.Plan;
import hingetone.plan.Prompt;
import hingetone.theory.Chord;
import hingetone.time.Beats;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Makes an example phrase for every prompt of a plan. The same seed gives the same phrases; a reply
 * is made to the statement it answers, a statement that comes back keeps its opening.
 *
 * <pre>{@code
 * Maker maker = PhraseMaker.of(plan, ground, chart.seed());
 * Made statement = maker.make(plan.prompt(1));
 * Made reply = maker.reply(plan.prompt(2), statement.phrase());
 * reply.why();   // Opens like the statement and ends another way, at rest on the 1 of Cm7.
 * }</pre>
 *
 * <p>Safe to ask from several threads.
 */
public final class PhraseMaker {
  private static final int KEPT = 256;

  private final Plan plan;
  private final long seed;
  private final PhraseBuilder bench;
  private final Map<Integer, MadePhrase> made =
      new LinkedHashMap<>(KEPT, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<Integer, MadePhrase> eldest) {
          return size() > KEPT;
        }
      };

  private PhraseMaker(Plan plan, long seed, PhraseBuilder bench) {
    this.plan = plan;
    this.seed = seed;
    this.bench = bench;
  }

  /**
   * A maker of phrases for a plan.
   *
   * @param plan the plan
   * @param ground the ground of the same form: where the hand is, and the ways over each crossing
   * @param seed the chart's seed
   */
  public static PhraseMaker of(Plan plan, Ground ground, long seed) {
    PhraseHarmony harmony = new PhraseHarmony(ground);
    return new PhraseMaker(
        plan,
        mix(seed, shapeOf(plan.form())),
        new PhraseBuilder(harmony, ground, Fluency.NORMAL, List.of(), section -> false));
  }

  /** Tells charts apart by their meters and chords, whatever their keys and tempi. */
  private static long shapeOf(Form form) {
    return form.bars().stream()
        .map(
            bar ->
                bar.meter()
                    + bar.chords().chords().stream()
                        .flatMap(slot -> slot.chord().stream())
                        .map(chord -> degree(bar, chord) + chord.quality().suffix())
                        .collect(Collectors.joining(" ")))
        .collect(Collectors.joining("|"))
        .hashCode();
  }

  private static int degree(Form.Bar bar, Chord chord) {
    return Math.floorMod(chord.root().chroma() - bar.key().tonic().chroma(), 12);
  }

  /** The same maker for a player who gets so fast. */
  public PhraseMaker withFluency(Fluency fluency) {
    return new PhraseMaker(plan, seed, bench.withFluency(fluency));
  }

  /**
   * The same maker with a bank, from which it takes a statement now and then.
   *
   * @param bank the statements
   * @param swings whether the band swings in a section
   */
  public PhraseMaker withBank(List<Statement> bank, Predicate<Section> swings) {
    return new PhraseMaker(plan, seed, bench.withBank(List.copyOf(bank), swings));
  }

  /**
   * The phrase for a prompt of the plan.
   *
   * @throws IllegalArgumentException for a rest
   */
  public synchronized MadePhrase make(Prompt prompt) {
    if (prompt.isRest()) {
      throw new IllegalArgumentException("a rest has no notes");
    }
    MadePhrase known = made.get(prompt.index());
    if (known == null) {
      known = prompt.role() == Role.REPLY ? reply(prompt) : statement(prompt);
      made.put(prompt.index(), known);
    }
    return known;
  }

  /** A reply in a prompt's place to any statement, also one that a player has just played. */
  public MadePhrase reply(Prompt prompt, Phrase statement) {
    int answered = prompt.repliesTo().orElse(prompt.index());
    double choice = new Random(mix(seed, -origin(answered).index())).nextDouble();
    int turn = prompt.index() - answered - 1 + timesBack(answered);
    return new ReplyMaker(bench, task(prompt), statement, choice, turn).make();
  }

  /** How many times a statement has come back by a prompt. */
  private int timesBack(int index) {
    int times = 0;
    Prompt prompt = plan.prompt(index);
    while (prompt.again().isPresent()) {
      prompt = plan.prompt(prompt.again().get());
      times++;
    }
    return times;
  }

  private MadePhrase reply(Prompt prompt) {
    if (prompt.repliesTo().isEmpty()) {
      return statement(prompt);
    }
    Prompt statement = plan.prompt(prompt.repliesTo().get());
    Phrase said = make(statement).phrase();
    MadePhrase made = reply(prompt, said);
    boolean heard =
        before(prompt, statement)
            .map(old -> reply(old, make(plan.prompt(old.repliesTo().orElseThrow())).phrase()))
            .anyMatch(old -> old.phrase().equals(made.phrase()));
    return heard ? new ReplyMaker(bench, task(prompt), said, 1, 0).make() : made;
  }

  /** The reply before to the same statement, and the one that it had before it came back. */
  private Stream<Prompt> before(Prompt reply, Prompt statement) {
    int nth = reply.index() - statement.index();
    return Stream.concat(
            Stream.of(plan.prompt(reply.index() - 1)),
            statement.again().map(index -> plan.prompt(index + nth)).stream())
        .filter(prompt -> prompt.role() == Role.REPLY);
  }

  private MadePhrase statement(Prompt prompt) {
    StatementMaker statements = new StatementMaker(bench, task(prompt));
    return prompt
        .again()
        .map(this::origin)
        .map(origin -> statements.returning(origin.index(), make(origin).phrase()))
        .orElseGet(statements::fresh);
  }

  /** The statement from which a chain of returns takes its opening. */
  private Prompt origin(int index) {
    Prompt prompt = plan.prompt(index);
    while (prompt.again().isPresent()) {
      prompt = plan.prompt(prompt.again().get());
    }
    return prompt;
  }

  private PhraseTask task(Prompt prompt) {
    Form form = plan.form();
    PromptSpan space = PromptSpan.of(form, prompt);
    List<PromptSpan> replies = replies(prompt).map(reply -> PromptSpan.of(form, reply)).toList();
    Beats pickup = replies.stream().map(PromptSpan::before).reduce(space.before(), Beats::min);
    Beats body = replies.stream().map(PromptSpan::after).reduce(space.after(), Beats::min);
    Random random = new Random(mix(seed, prompt.index()));
    return new PhraseTask(prompt, space, pickup, body, random);
  }

  private Stream<Prompt> replies(Prompt statement) {
    return IntStream.iterate(statement.index() + 1, i -> i + 1)
        .mapToObj(plan::prompt)
        .takeWhile(next -> next.role() != Role.STATEMENT && next.lap() <= statement.lap() + 1)
        .filter(next -> next.repliesTo().equals(Optional.of(statement.index())));
  }

  /** Spreads neighbouring seeds and indexes over all random sequences (SplitMix64's finisher). */
  private static long mix(long seed, long index) {
    long z = seed * 0x9E3779B97F4A7C15L + index * 0xD1B54A32D192ED03L;
    z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }
}
