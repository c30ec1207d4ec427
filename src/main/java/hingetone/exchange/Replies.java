package hingetone.exchange;

import hingetone.exchange.Melody.Blank;
import hingetone.exchange.Melody.Contour;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/**
 * Makes replies to a statement, closed where the statement stayed open: its opening with another
 * ending, its rhythm turned the other way, or a line as long going against it.
 */
final class Replies {
  private final Workbench bench;
  private final Task task;
  private final Phrase statement;
  private final int nth;
  private final Random random;
  private final Optional<Over> over;

  /**
   * @param statement the statement
   * @param nth which reply to it this is, so that two replies differ in kind
   */
  Replies(Workbench bench, Task task, Phrase statement, int nth) {
    this.bench = bench;
    this.task = task;
    this.statement = Opening.topLine(statement);
    this.nth = nth;
    this.random = task.random();
    this.over = Over.of(bench, task);
  }

  Made make() {
    int kind = Math.floorMod(random.nextInt(3) * (nth == 1 ? 1 : 0) + nth, 3);
    for (int i = 0; i < 2 && over.isEmpty(); i++) {
      Optional<Made> made = kind == 0 ? sameOpening() : kind == 1 ? sameRhythm() : Optional.empty();
      if (made.isPresent()) {
        return made.get();
      }
      kind = kind == 0 ? 1 : 0;
    }
    return against();
  }

  private Optional<Made> sameOpening() {
    Opening opening = Opening.of(bench, task, statement);
    Beats end = end();
    if (opening.tones().size() < 2 || !opening.how().isEmpty() || !opening.cut().isBefore(end)) {
      return Optional.empty();
    }
    List<Blank> blanks = new ArrayList<>(opening.tones().stream().map(Opening::blank).toList());
    blanks.addAll(bench.body(task, opening.cut(), end, Optional.empty()));
    Hand hand = bench.handOver(task, opening.tones());
    List<Tone> tones = bench.melody(task, hand, contour(), true).fill(blanks);
    return Optional.of(
        bench.made(
            task, hand, tones, "Opens like the statement and ends another way," + rest(tones)));
  }

  private Optional<Made> sameRhythm() {
    boolean fits =
        !statement.start().negated().isAfter(task.space().before())
            && !statement.end().isAfter(task.space().after());
    if (!fits || statement.tones().stream().noneMatch(t -> t.onset().isZero())) {
      return Optional.empty();
    }
    List<Blank> blanks = new ArrayList<>();
    List<Tone> said = statement.tones();
    for (int i = 0; i < said.size(); i++) {
      int moved = i == 0 ? 0 : said.get(i).reached().midi() - said.get(i - 1).reached().midi();
      Stroke stroke = new Stroke(said.get(i).onset(), said.get(i).length());
      blanks.add(Blank.of(stroke).going(-Integer.signum(moved)));
    }
    Hand hand = bench.hand(task);
    List<Tone> tones = bench.melody(task, hand, contour(), true).fill(blanks);
    return Optional.of(
        bench.made(
            task,
            hand,
            tones,
            "Takes the statement's rhythm and turns the line round," + rest(tones)));
  }

  private Made against() {
    List<Stroke> pickup = pickup();
    int up = rises() ? -1 : 1;
    List<Blank> blanks = new ArrayList<>(Workbench.blanks(pickup, up));
    Optional<Over> onLine = over.filter(way -> !way.last().onset().isPositive());
    Beats from = Beats.ZERO;
    if (onLine.isPresent()) {
      blanks = new ArrayList<>(onLine.get().blanks());
      from = onLine.get().last().end();
    }
    Beats begin = blanks.isEmpty() ? Beats.ZERO : blanks.get(0).stroke().onset();
    Beats end = begin.plus(statement.length()).max(from.plus(Beats.ONE)).min(task.space().after());
    blanks.addAll(bench.body(task, from, end, over.filter(way -> onLine.isEmpty())));
    Hand hand = bench.hand(task);
    List<Tone> tones = bench.melody(task, hand, contour(), true).fill(blanks);
    List<Tone> all = over.isPresent() ? over.get().with(tones) : tones;
    String why =
        over.map(Over::why).orElse("As long as the statement, with a line of its own") + ",";
    return bench.made(task, hand, all, why + rest(tones));
  }

  /** A pickup of its own; the statement's, if else the reply came out too short. */
  private List<Stroke> pickup() {
    List<Stroke> own = bench.rhythm(task).pickup(task.pickup());
    Beats length = task.space().after().minus(own.isEmpty() ? Beats.ZERO : own.get(0).onset());
    Beats beat = bench.harmony().barAt(task.space().landing()).meter().beatLength();
    boolean longEnough = !length.plus(beat).isBefore(statement.length());
    boolean fits = !statement.start().negated().isAfter(task.space().before());
    return longEnough || !fits
        ? own
        : statement.tones().stream()
            .filter(tone -> tone.onset().isNegative() && !tone.end().isPositive())
            .map(tone -> new Stroke(tone.onset(), tone.length()))
            .toList();
  }

  /** Where a reply of the statement's length ends that starts where the statement did. */
  private Beats end() {
    return statement.end().min(task.space().after());
  }

  private boolean rises() {
    List<Tone> tones = statement.tones();
    return tones.get(tones.size() - 1).reached().midi() >= tones.get(0).reached().midi();
  }

  private Contour contour() {
    return rises() ? Contour.FALL : random.nextBoolean() ? Contour.RISE : Contour.ARCH;
  }

  private String rest(List<Tone> tones) {
    Tone last = tones.get(tones.size() - 1);
    Beats time = task.space().landing().plus(last.onset());
    return " coming to rest on " + bench.harmony().heard(last.reached().midi(), time) + ".";
  }
}
