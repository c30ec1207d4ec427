package hingetone.phrase.maker;

import hingetone.chart.PhraseTurn.Role;
import hingetone.phrase.Phrase;
import hingetone.phrase.Tone;
import hingetone.phrase.maker.Melody.Blank;
import hingetone.phrase.maker.Melody.Contour;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;

/** Makes statements: fresh ones, and ones whose opening comes back with another ending. */
final class StatementMaker {
  private static final Beats SHORTEST = Beats.of(1, 2);

  /** How often a fresh statement is the bank's; from there on up to the next, a figure, a motif. */
  private static final double FROM_BANK = 0.4;

  private static final double OTHER_ENDING = 0.3;
  private static final double A_FIGURE = 0.45;
  private static final double A_MOTIF = 0.9;

  private static final int MOST_BEATS_LATER = 8;
  private static final Beats EARLIER = Beats.of(-1, 2);

  /** How many endings are tried until one is heard to be another. */
  private static final int TRIES = 6;

  /** How often a statement comes back an eighth early. */
  private static final double EARLY = 0.25;

  private final PhraseBuilder bench;
  private final PhraseTask task;
  private final Random random;
  private final Optional<CrossingPhrase> over;

  StatementMaker(PhraseBuilder bench, PhraseTask task) {
    this.bench = bench;
    this.task = task;
    this.random = task.random();
    this.over = CrossingPhrase.of(bench, task);
  }

  /** A statement nobody has heard yet. */
  MadePhrase fresh() {
    if (over.isEmpty()) {
      double choice = random.nextDouble();
      Optional<MadePhrase> made =
          choice < FROM_BANK
              ? fromBank().or(this::motif)
              : choice < A_FIGURE ? figure() : choice < A_MOTIF ? motif() : Optional.empty();
      if (made.isPresent()) {
        return made.get();
      }
    }
    return finish(bench.hand(task), over.isEmpty() ? pickup() : List.of(), Beats.ZERO, "");
  }

  private Optional<MadePhrase> fromBank() {
    return BankStatements.pick(bench, task)
        .map(found -> random.nextDouble() < OTHER_ENDING ? otherEnding(found) : asWritten(found));
  }

  private MadePhrase asWritten(FittedPhrase found) {
    List<Tone> tones = found.phrase().tones();
    HandPosition hand = bench.handOver(task, tones);
    tones = bench.withBend(task, hand, tones, 1);
    return bench.made(task, hand, tones, why("Plays " + found.how(), tones));
  }

  private MadePhrase otherEnding(FittedPhrase found) {
    Phrase line = StatementOpening.topLine(found.phrase());
    Beats cut = StatementOpening.middle(line);
    if (!cut.isPositive() || !cut.plus(SHORTEST).isBefore(task.body())) {
      return asWritten(found);
    }
    List<Tone> opening = line.before(cut).tones();
    List<Blank> blanks = opening.stream().map(StatementOpening::blank).toList();
    HandPosition hand = bench.handOver(task, opening);
    return finish(hand, blanks, cut, "Opens with " + found.how() + " and goes on another way");
  }

  private Optional<MadePhrase> motif() {
    HandPosition hand = bench.hand(task);
    return Motif.of(bench, task, hand)
        .map(
            motif -> {
              List<Tone> tones = bench.withBend(task, hand, motif.tones(), 1);
              return bench.made(task, hand, tones, why(motif.how(), motif.tones()));
            });
  }

  /** A figure that is not as long as a beat, so that it comes round on another one each time. */
  private Optional<MadePhrase> figure() {
    Meter meter = bench.harmony().barAt(task.space().landing()).meter();
    boolean threes = meter.isCompound();
    Beats period = threes ? Beats.of(2) : Beats.of(3, 2);
    int times = (int) Math.min(3, task.body().minus(SHORTEST).dividedBy(period).floor());
    if (times < 2) {
      return Optional.empty();
    }
    List<Blank> once = new ArrayList<>(pickup());
    int before = once.size();
    bench.rhythm(task).figure(period).forEach(stroke -> once.add(Blank.of(stroke)));
    HandPosition hand = bench.hand(task);
    List<Tone> tones = bench.melody(task, hand, Contour.ARCH, false).fill(once);
    Key key = bench.harmony().keyAt(task.space().landing());
    Phrase figure = new Phrase(key, tones.subList(before, tones.size())).repeated(period, times);
    List<Blank> blanks = new ArrayList<>();
    tones.subList(0, before).forEach(tone -> blanks.add(StatementOpening.blank(tone)));
    figure.tones().forEach(tone -> blanks.add(StatementOpening.model(tone)));
    String start =
        "A figure of "
            + (threes ? "four" : "three")
            + " eighths comes round "
            + (times == 2 ? "twice" : "three times")
            + ", each time on another beat";
    return Optional.of(finish(hand, blanks, period.times(times), start));
  }

  /**
   * An earlier statement's opening in this place and key, then another ending; a fresh statement
   * where it could not be known again.
   *
   * @param index the prompt that it comes from
   * @param statement that statement
   */
  MadePhrase returning(int index, Phrase statement) {
    StatementOpening opening = known(statement);
    for (int i = 0; i < TRIES && !opening.tones().isEmpty(); i++) {
      List<Blank> blanks = opening.tones().stream().map(StatementOpening::blank).toList();
      HandPosition hand = bench.handOver(task, opening.tones());
      String how = "Statement " + index + " comes back" + opening.how();
      MadePhrase made = finish(hand, blanks, opening.cut(), how);
      if (opening.isIn(made.phrase()) && endsOtherwise(statement, made.phrase())) {
        return made;
      }
    }
    return fresh();
  }

  /** The opening on its landing, at times an eighth early; after a way over the line, later. */
  private StatementOpening known(Phrase statement) {
    Beats start = task.space().before().negated();
    Beats until = over.filter(o -> !isOnLine(o)).map(CrossingPhrase::start).orElse(task.body());
    if (over.filter(this::isOnLine).isPresent()) {
      Beats from = over.get().last().end();
      return Stream.iterate(1, beats -> beats + 1)
          .limit(MOST_BEATS_LATER)
          .map(beats -> later(statement, beats, from, until))
          .filter(opening -> !opening.tones().isEmpty())
          .findFirst()
          .orElse(StatementOpening.NONE);
    }
    StatementOpening early =
        over.isEmpty() && random.nextDouble() < EARLY && canBeEarly(statement)
            ? StatementOpening.known(bench, task, statement, EARLIER, start, until)
            : StatementOpening.NONE;
    return early.tones().isEmpty() || !early.how().isEmpty()
        ? StatementOpening.known(bench, task, statement, Beats.ZERO, start, until)
        : early.and(", an eighth early");
  }

  private StatementOpening later(Phrase statement, int beats, Beats from, Beats until) {
    Beats beat = bench.harmony().barAt(task.space().landing()).meter().beatLength();
    Beats later = beat.max(Beats.ONE).times(beats);
    String words = ", " + (beats == 1 ? "a beat" : beats + " beats") + " later";
    return StatementOpening.known(bench, task, statement, later, from, until).and(words);
  }

  /** Whether its main note still sounds on the landing when it comes an eighth early. */
  private static boolean canBeEarly(Phrase statement) {
    Tone main = statement.landing();
    return main.onset().isZero() && main.end().isAfter(EARLIER.negated());
  }

  /** Another last note, or two notes at least of the second half that were not there. */
  private static boolean endsOtherwise(Phrase first, Phrase now) {
    List<Tone> before = StatementOpening.topLine(first).tones();
    List<Tone> after = StatementOpening.topLine(now).tones();
    long other =
        after.subList(after.size() / 2, after.size()).stream()
            .filter(tone -> before.stream().noneMatch(old -> sounds(old, tone)))
            .count();
    int last = before.get(before.size() - 1).reached().midi();
    return other >= 2 || (after.get(after.size() - 1).reached().midi() - last) % 12 != 0;
  }

  private static boolean sounds(Tone old, Tone tone) {
    return old.onset().equals(tone.onset())
        && (old.reached().midi() - tone.reached().midi()) % 12 == 0;
  }

  private List<Blank> pickup() {
    return PhraseBuilder.blanks(
        bench.rhythm(task).pickup(task.pickup()), random.nextInt(5) == 0 ? -1 : 1);
  }

  private boolean isOnLine(CrossingPhrase way) {
    return !way.arrival().isPositive();
  }

  /** Adds the way over the line and the rest of the body to an opening. */
  private MadePhrase finish(HandPosition hand, List<Blank> opening, Beats cut, String start) {
    Optional<CrossingPhrase> first = over.filter(this::isOnLine);
    Optional<CrossingPhrase> last = over.filter(o -> !isOnLine(o));
    List<Blank> blanks = new ArrayList<>(first.map(CrossingPhrase::blanks).orElse(List.of()));
    blanks.addAll(opening);
    Beats from = first.map(o -> o.last().end().max(cut)).orElse(cut);
    Beats end = bench.bodyEnd(task, task.body()).max(from.plus(SHORTEST)).min(task.space().after());
    blanks.addAll(bench.body(task, from, end, last));
    boolean closed = task.prompt().role() != Role.STATEMENT;
    Contour contour = Contour.values()[random.nextInt(Contour.values().length)];
    List<Tone> tones = bench.melody(task, hand, contour, closed).fill(blanks);
    tones =
        over.isPresent()
            ? tones
            : bench.withBend(task, hand, tones, Math.max(0, blanks.size() - 2));
    List<Tone> all = over.isPresent() ? over.get().with(tones) : tones;
    return bench.made(task, hand, all, over, why(start, tones));
  }

  private String why(String start, List<Tone> tones) {
    Beats landing = task.space().landing();
    Tone last = tones.get(tones.size() - 1);
    String end = bench.harmony().heard(last.reached().midi(), landing.plus(last.onset()));
    String lead =
        over.map(CrossingPhrase::why)
            .map(w -> start.isEmpty() ? w : w + "; " + lower(start))
            .orElse(start);
    if (lead.isEmpty()) {
      Tone main = new Phrase(bench.harmony().keyAt(landing), tones).landing();
      lead = "Lands on " + bench.harmony().heard(main.reached().midi(), landing);
    }
    return lead + ", left open on " + end + ".";
  }

  private static String lower(String text) {
    return Character.toLowerCase(text.charAt(0)) + text.substring(1);
  }
}
