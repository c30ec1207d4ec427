package hingetone.plan;

import hingetone.chart.PhraseTurn.Role;
import hingetone.time.Position;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** Which of the plan's phrases are played as examples. */
public enum ExampleChoice {
  ALL,
  /** The statements, so that the player may answer. */
  STATEMENTS,
  /** The phrases that go over a line into another key. */
  CROSSINGS,
  /** The one that goes over the next such line, to be tried the time after. */
  NEXT_CROSSING;

  /**
   * Tells which prompts' phrases are among them; a rest never is.
   *
   * @param from what starts before this place is not the next crossing
   */
  public Predicate<Prompt> of(Plan plan, Position from) {
    return switch (this) {
      case ALL -> prompt -> !prompt.isRest();
      case STATEMENTS -> prompt -> prompt.role() == Role.STATEMENT;
      case CROSSINGS -> prompt -> prompt.crossing().isPresent();
      case NEXT_CROSSING -> {
        int next = nextCrossing(plan, from);
        yield prompt -> prompt.index() == next;
      }
    };
  }

  /** The index of the first prompt from a place on that crosses; 0, which none has, without one. */
  private static int nextCrossing(Plan plan, Position from) {
    int lap = Math.max(1, plan.form().lapOf(from.bar()));
    return Stream.of(lap, lap + 1, lap + 2)
        .flatMap(l -> plan.promptsOfLap(l).stream())
        .filter(prompt -> prompt.crossing().isPresent())
        .filter(prompt -> prompt.speakFrom().compareTo(from) >= 0)
        .findFirst()
        .map(Prompt::index)
        .orElse(0);
  }

  /** Whether every phrase of a role is among them. */
  public boolean showsAll(Role role) {
    return this == ALL || this == STATEMENTS && role == Role.STATEMENT;
  }

  /** For people: {@code the statements}. */
  public String words() {
    return switch (this) {
      case ALL -> "all phrases";
      case STATEMENTS -> "the statements";
      case CROSSINGS -> "the ways over the crossings";
      case NEXT_CROSSING -> "the way over the next crossing";
    };
  }

  /** As it is written on the command line: {@code next-crossing}. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
