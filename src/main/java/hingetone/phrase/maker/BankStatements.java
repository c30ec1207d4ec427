package hingetone.phrase.maker;

import hingetone.chart.Section;
import hingetone.phrase.Phrase;
import hingetone.phrase.Statement;
import hingetone.phrase.Tone;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * A statement of the bank for a task: one of its meter, feel and pace, moved into its key and room.
 */
final class BankStatements {
  /** So much faster or slower than a statement is meant for it is still played, changed. */
  private static final double PACE = 1.3;

  private static final double THICKENED = 0.5;

  /** Notes that a statement keeps at least, three fifths of its own, where it is cut. */
  private static final int FEWEST = 4;

  private static final int MUCH = 3;
  private static final Beats SHORTEST = Beats.of(1, 2);

  private final PhraseBuilder bench;
  private final PhraseTask task;
  private final Section section;
  private final Key key;

  private BankStatements(PhraseBuilder bench, PhraseTask task) {
    this.bench = bench;
    this.task = task;
    this.section = bench.harmony().barAt(task.space().landing()).section();
    this.key = section.key();
  }

  /** One that fits, chosen by chance; empty where none does. */
  static Optional<FittedPhrase> pick(PhraseBuilder bench, PhraseTask task) {
    List<Statement> order = new ArrayList<>(bench.bank());
    Collections.shuffle(order, task.random());
    BankStatements picking = new BankStatements(bench, task);
    return order.stream().flatMap(statement -> picking.fitted(statement).stream()).findFirst();
  }

  private Optional<FittedPhrase> fitted(Statement statement) {
    boolean sameKind =
        statement.meter().equals(section.meter())
            && statement.feel().fits(bench.swings(section))
            && isOfKind(statement.phrase().key());
    if (!sameKind) {
      return Optional.empty();
    }
    return paced(statement)
        .flatMap(this::inRoom)
        .flatMap(
            paced ->
                FittedPhrase.of(bench, task, paced.phrase(), this::isLiked)
                    .map(there -> new FittedPhrase(there.phrase(), there.how() + paced.how())))
        .map(
            there ->
                new FittedPhrase(
                    there.phrase(), "\"" + statement.name() + "\" from the bank" + there.how()));
  }

  /**
   * A major key takes major statements, a minor one minor, a blues both its own and minor ones, a
   * minor riff the blues' too.
   */
  private boolean isOfKind(Key written) {
    return written.isBlues()
        ? key.isBlues() || key.isMinor() && section.isOverRiff()
        : written.isMinor() == key.isMinor();
  }

  /** As it is at its own pace; thinned where it is faster, thickened where it is slower. */
  private Optional<FittedPhrase> paced(Statement statement) {
    double bpm = section.tempo().bpm().doubleValue();
    Phrase phrase = statement.phrase();
    if (bpm > statement.fastest() * PACE || bpm < statement.slowest() / PACE) {
      return Optional.empty();
    }
    Meter meter = section.meter();
    if (bpm > statement.fastest()) {
      return Optional.of(new FittedPhrase(phrase.thinned(meter.beatLength()), ", thinned"));
    }
    boolean leadsOn = bench.leadsOn(task) && task.random().nextDouble() < THICKENED;
    return bpm < statement.slowest() || leadsOn
        ? Optional.of(new FittedPhrase(phrase.thickened(phrase.key().pentatonic()), ", thickened"))
        : Optional.of(new FittedPhrase(phrase, ""));
  }

  /**
   * As it is where there is room; else without what is too early and too late, as long as most of
   * it is left.
   */
  private Optional<FittedPhrase> inRoom(FittedPhrase paced) {
    Phrase phrase = paced.phrase();
    Beats first = task.pickup().negated();
    if (!phrase.start().isBefore(first) && !phrase.end().isAfter(task.body())) {
      return Optional.of(paced);
    }
    List<Tone> left =
        phrase.tones().stream()
            .filter(tone -> !tone.onset().isBefore(first))
            .filter(tone -> tone.onset().plus(SHORTEST).compareTo(task.body()) <= 0)
            .map(tone -> tone.withLength(tone.length().min(task.body().minus(tone.onset()))))
            .toList();
    boolean most = left.size() >= FEWEST && left.size() * 5 >= phrase.tones().size() * 3;
    return most
        ? Optional.of(new FittedPhrase(new Phrase(phrase.key(), left), paced.how() + ", cut short"))
        : Optional.empty();
  }

  /** It stays open, and where it says much over a dominant it has its third. */
  private boolean isLiked(Phrase phrase) {
    Tone last = phrase.tones().get(phrase.tones().size() - 1);
    Map<ChordUnder, List<Tone>> overChords =
        phrase.tones().stream()
            .collect(
                Collectors.groupingBy(
                    tone -> bench.harmony().under(task.space().landing().plus(tone.onset()))));
    return !last.pitch().name().equals(key.tonic())
        && overChords.entrySet().stream().allMatch(over -> tells(over.getKey(), over.getValue()));
  }

  private static boolean tells(ChordUnder under, List<Tone> tones) {
    List<Integer> chromas = tones.stream().map(t -> t.reached().midi() % 12).toList();
    boolean leads =
        !under.key().isBlues() && IntStream.range(0, 12).anyMatch(under::isThirdOfDominant);
    return !leads || tones.size() < MUCH || chromas.stream().anyMatch(under::isThirdOfDominant);
  }
}
