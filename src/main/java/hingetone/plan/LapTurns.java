package hingetone.plan;

import hingetone.chart.Form;
import hingetone.chart.Form.Bar;
import hingetone.chart.PhraseTurn;
import hingetone.chart.PhraseTurn.Role;
import hingetone.chart.Section;
import hingetone.plan.LapTurn.Source;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * The turns of one lap: as the chart states them, or a sensible exchange where it says nothing.
 *
 * <p>An exchange nobody wrote is made of groups, each a statement and one or two replies of the
 * same length. The lap's opening statement comes back in later sections, so also in another key; a
 * group's statement comes back in the next group. A section with room for one phrase only answers
 * the statement before it, if nobody has.
 */
final class LapTurns {
  /** How long a phrase likes to be, in seconds: about one breath. */
  private static final double COMFORTABLE_SECONDS = 4.5;

  private final Form form;
  private final Random random;
  private final List<LapTurn> turns = new ArrayList<>();

  private LapTurns(Form form, long seed) {
    this.form = form;
    this.random = new Random(seed);
  }

  /** The turns of one lap in order; their spaces fill it without a gap. */
  static List<LapTurn> of(Form form, long seed) {
    LapTurns made = new LapTurns(form, seed);
    for (Bar bar : form.bars()) {
      if (bar.isFirstOfSection()) {
        made.addSection(bar);
      }
    }
    return List.copyOf(made.turns);
  }

  private void addSection(Bar first) {
    Section section = first.section();
    if (section.phrases().isEmpty()) {
      addExchange(first, section);
    } else {
      addStated(first, section);
    }
  }

  private void addStated(Bar first, Section section) {
    int done = 0;
    for (int i = 0; done < section.bars().size(); i++) {
      PhraseTurn stated = section.phrases().get(i % section.phrases().size());
      int bars = Math.min(stated.bars(), section.bars().size() - done);
      add(first, done, bars, stated.role(), stated.again() ? Source.LAST : Source.NEW);
      done += bars;
    }
  }

  private void addExchange(Bar first, Section section) {
    int unit = unit(section);
    int done = 0;
    List<Integer> groups = groups(section.bars().size() / unit);
    boolean answers = groups.equals(List.of(1)) && lastStates();
    for (int g = 0; g < groups.size(); g++) {
      for (int turn = 0; turn < groups.get(g); turn++) {
        boolean states = turn == 0 && !answers;
        add(
            first,
            done,
            unit,
            states ? Role.STATEMENT : Role.REPLY,
            states ? source(first.place(), g) : Source.NEW);
        done += unit;
      }
    }
    if (done < section.bars().size()) {
      add(first, done, section.bars().size() - done, Role.REST, Source.NEW);
    }
  }

  /** Whether the turn before is a statement that nobody has answered. */
  private boolean lastStates() {
    return !turns.isEmpty() && turns.get(turns.size() - 1).role() == Role.STATEMENT;
  }

  private void add(Bar first, int barsIn, int bars, Role role, Source from) {
    turns.add(new LapTurn(first.place(), form.bar(first.number() + barsIn), bars, role, from));
  }

  private Source source(int place, int group) {
    if (group == 0) {
      return place == 0 ? Source.LAST_LAP : Source.OPENING;
    }
    return group % 2 == 1 ? Source.LAST : random.nextBoolean() ? Source.NEW : Source.OPENING;
  }

  /** Bars of a phrase: one, two or four, near a breath's length, at least two phrases a section. */
  private static int unit(Section section) {
    Beats quartersPerMinute = section.tempo().quartersPerMinute(section.meter());
    double barSeconds = 60 * section.meter().barLength().dividedBy(quartersPerMinute).toDouble();
    int best = 1;
    for (int bars : new int[] {2, 4}) {
      boolean nearer = farness(bars * barSeconds) < farness(best * barSeconds);
      if (nearer && bars * 2 <= section.bars().size()) {
        best = bars;
      }
    }
    return best;
  }

  private static double farness(double seconds) {
    return Math.abs(Math.log(seconds / COMFORTABLE_SECONDS));
  }

  /** Phrases in groups of two and three; a single phrase stays alone. */
  private List<Integer> groups(int phrases) {
    List<Integer> groups = new ArrayList<>();
    int left = phrases;
    while (left > 3) {
      int size = left == 4 || random.nextBoolean() ? 2 : 3;
      groups.add(size);
      left -= size;
    }
    if (left > 0) {
      groups.add(left);
    }
    return groups;
  }
}
