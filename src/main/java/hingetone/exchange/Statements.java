package hingetone.exchange;

import hingetone.chart.PhraseTurn.Role;
import hingetone.exchange.Melody.Blank;
import hingetone.exchange.Melody.Contour;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/** Makes statements: fresh ones, and ones whose opening comes back with another ending. */
final class Statements {
  private static final Beats SHORTEST = Beats.of(1, 2);

  private final Workbench bench;
  private final Task task;
  private final Random random;
  private final Optional<Over> over;

  Statements(Workbench bench, Task task) {
    this.bench = bench;
    this.task = task;
    this.random = task.random();
    this.over = Over.of(bench, task);
  }

  /** A statement nobody has heard yet. */
  Made fresh() {
    return finish(bench.hand(task), over.isEmpty() ? pickup() : List.of(), Beats.ZERO, "");
  }

  /**
   * An earlier statement's opening in this place and key, then another ending.
   *
   * @param index the prompt that it comes from
   * @param statement that statement
   */
  Made returning(int index, Phrase statement) {
    Opening opening = Opening.of(bench, task, statement);
    if (opening.tones().isEmpty() || over.isPresent() && !opening.hasBody()) {
      return fresh();
    }
    List<Blank> blanks = new ArrayList<>();
    Beats from = over.filter(this::isOnLine).map(way -> way.last().end()).orElse(Beats.of(-8));
    opening.tones().stream()
        .filter(tone -> !tone.onset().isBefore(from))
        .forEach(tone -> blanks.add(Opening.blank(tone)));
    Hand hand = bench.handOver(task, opening.tones());
    return finish(
        hand, blanks, opening.cut(), "Statement " + index + " comes back" + opening.how());
  }

  private List<Blank> pickup() {
    return Workbench.blanks(
        bench.rhythm(task).pickup(task.pickup()), random.nextInt(5) == 0 ? -1 : 1);
  }

  private boolean isOnLine(Over way) {
    return !way.last().onset().isPositive();
  }

  /** Adds the way over the line and the rest of the body to an opening. */
  private Made finish(Hand hand, List<Blank> opening, Beats cut, String start) {
    Optional<Over> first = over.filter(this::isOnLine);
    Optional<Over> last = over.filter(way -> !isOnLine(way));
    List<Blank> blanks = new ArrayList<>(first.map(Over::blanks).orElse(List.of()));
    blanks.addAll(opening);
    Beats from = first.map(way -> way.last().end().max(cut)).orElse(cut);
    Beats end = bench.bodyEnd(task, task.body()).max(from.plus(SHORTEST)).min(task.space().after());
    blanks.addAll(bench.body(task, from, end, last));
    boolean closed = task.prompt().role() != Role.STATEMENT;
    Contour contour = Contour.values()[random.nextInt(Contour.values().length)];
    List<Tone> tones = bench.melody(task, hand, contour, closed).fill(blanks);
    int mayBend = over.isPresent() ? tones.size() - 1 : blanks.size() - 2;
    tones = bench.withBend(task, hand, tones, Math.max(0, mayBend));
    List<Tone> all = over.isPresent() ? over.get().with(tones) : tones;
    return bench.made(task, hand, all, why(start, tones));
  }

  private String why(String start, List<Tone> tones) {
    Beats landing = task.space().landing();
    Tone last = tones.get(tones.size() - 1);
    String end = bench.harmony().heard(last.reached().midi(), landing.plus(last.onset()));
    String lead =
        over.map(Over::why).map(w -> start.isEmpty() ? w : w + "; " + lower(start)).orElse(start);
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
