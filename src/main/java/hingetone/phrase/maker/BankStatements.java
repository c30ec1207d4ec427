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
import java.util.Optional;

/**
 * A statement of the bank for a task: one of its meter, feel and pace, moved into its key and room.
 */
final class BankStatements {
  /** So much faster or slower than a statement is meant for it is still played, changed. */
  private static final double PACE = 1.3;

  private static final double THICKENED = 0.5;

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
            && statement.phrase().key().isMinor() == key.isMinor();
    if (!sameKind) {
      return Optional.empty();
    }
    return paced(statement)
        .filter(paced -> hasRoom(paced.phrase()))
        .flatMap(
            paced ->
                FittedPhrase.of(bench, task, paced.phrase(), this::staysOpen)
                    .map(there -> new FittedPhrase(there.phrase(), there.how() + paced.how())))
        .map(
            there ->
                new FittedPhrase(
                    there.phrase(), "\"" + statement.name() + "\" from the bank" + there.how()));
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

  private boolean hasRoom(Phrase phrase) {
    Beats early = phrase.start().negated();
    return !early.isAfter(task.pickup()) && !phrase.end().isAfter(task.body());
  }

  private boolean staysOpen(Phrase phrase) {
    Tone last = phrase.tones().get(phrase.tones().size() - 1);
    return !last.pitch().name().equals(key.tonic());
  }
}
