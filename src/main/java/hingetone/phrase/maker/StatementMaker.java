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

/** Makes statements: fresh ones, and ones whose opening comes back with another ending. */
final class StatementMaker {
  private static final Beats SHORTEST = Beats.of(1, 2);

  /** How often a fresh statement is the bank's; from there on up to the next, a figure. */
  private static final double FROM_BANK = 0.4;

  private static final double A_FIGURE = 0.55;

  /** Notes of a statement by which it is known again. */
  private static final int RECOGNISED = 3;

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
          choice < FROM_BANK ? fromBank() : choice < A_FIGURE ? figure() : Optional.empty();
      if (made.isPresent()) {
        return made.get();
      }
    }
    return finish(bench.hand(task), over.isEmpty() ? pickup() : List.of(), Beats.ZERO, "");
  }

  private Optional<MadePhrase> fromBank() {
    return BankStatements.pick(bench, task)
        .map(
            found -> {
              List<Tone> tones = found.phrase().tones();
              HandPosition hand = bench.handOver(task, tones);
              tones = bench.withBend(task, hand, tones, 1);
              return bench.made(task, hand, tones, why("Plays " + found.how(), tones));
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
    figure.tones().forEach(tone -> blanks.add(StatementOpening.blank(tone)));
    String start =
        "A figure of "
            + (threes ? "four" : "three")
            + " eighths comes round "
            + (times == 2 ? "twice" : "three times")
            + ", each time on another beat";
    return Optional.of(finish(hand, blanks, period.times(times), start));
  }

  /**
   * An earlier statement's opening in this place and key, then another ending.
   *
   * @param index the prompt that it comes from
   * @param statement that statement
   */
  MadePhrase returning(int index, Phrase statement) {
    StatementOpening kept = StatementOpening.of(bench, task, statement);
    Key key = bench.harmony().keyAt(task.space().landing());
    boolean early = over.isEmpty() && random.nextDouble() < EARLY;
    StatementOpening opening = early ? kept.pushed(key, task.space().before()) : kept;
    if (opening.tones().isEmpty() || over.isPresent() && !opening.hasBody()) {
      return fresh();
    }
    Beats from = over.filter(this::isOnLine).map(way -> way.last().end()).orElse(Beats.of(-8));
    List<Blank> blanks =
        opening.tones().stream()
            .filter(tone -> !tone.onset().isBefore(from))
            .map(StatementOpening::blank)
            .toList();
    if (blanks.size() < RECOGNISED) {
      return fresh();
    }
    HandPosition hand = bench.handOver(task, opening.tones());
    return finish(
        hand, blanks, opening.cut(), "Statement " + index + " comes back" + opening.how());
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
