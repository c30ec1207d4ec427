package hingetone.screen;

import hingetone.chart.Leave;
import hingetone.exchange.Ending;
import hingetone.exchange.Plan;
import hingetone.exchange.Prompt;
import hingetone.exchange.Speaker;
import hingetone.exchange.Way;

/** Works out the facts of a chart. */
public final class Survey {
  private Survey() {}

  /** The turns of a plan, as the picture tells them. */
  public static Turns turns(Plan plan) {
    return lap -> plan.promptsOfLap(lap).stream().map(Survey::turn).toList();
  }

  private static Turn turn(Prompt prompt) {
    Turn.Kind kind =
        prompt.isRest()
            ? Turn.Kind.NOBODY
            : prompt.by() == Speaker.PLAYER ? Turn.Kind.PLAYER : Turn.Kind.MACHINE;
    return new Turn(
        words(prompt),
        kind,
        prompt.ending().map(e -> e == Ending.SAME ? "same ending" : "new ending"),
        prompt.speakFrom(),
        prompt.landOn(),
        prompt.stopBy(),
        prompt.crossing().map(way -> way == Way.RUN ? Leave.RUN : Leave.HOLD));
  }

  private static String words(Prompt prompt) {
    return switch (prompt.role()) {
      case STATEMENT -> "statement";
      case REPLY -> "reply";
      case REST -> "rest";
    };
  }
}
