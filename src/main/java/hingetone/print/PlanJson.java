package hingetone.print;

import static hingetone.print.Json.object;

import hingetone.ground.Ground;
import hingetone.plan.Prompt;
import hingetone.text.Choice;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The JSON of {@code plan}. */
public final class PlanJson {
  private PlanJson() {}

  /** The text of an object with one key, {@code prompts}. */
  public static String of(List<Prompt> prompts, Ground ground) {
    return Json.text(
        object("prompts", prompts.stream().map(prompt -> prompt(prompt, ground)).toList()));
  }

  private static Map<String, Object> prompt(Prompt prompt, Ground ground) {
    return object(
        "index", prompt.index(),
        "lap", prompt.lap(),
        "section", prompt.section(),
        "role", Choice.word(prompt.role()),
        "by", Choice.word(prompt.by()),
        "repliesTo", prompt.repliesTo(),
        "again", prompt.again(),
        "ending", word(prompt.ending()),
        "speakFrom", Json.position(prompt.speakFrom()),
        "landOn", Json.position(prompt.landOn()),
        "stopBy", Json.position(prompt.stopBy()),
        "crossing", word(prompt.crossing()),
        "way", PlanText.way(prompt, ground));
  }

  private static Optional<String> word(Optional<? extends Enum<?>> value) {
    return value.map(Choice::word);
  }
}
