package hingetone.drill;

import hingetone.chart.Form;
import hingetone.plan.Plan;
import hingetone.plan.Prompt;
import hingetone.take.PlacedNote;
import hingetone.theory.Key;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What was played in a lap, and what was asked.
 *
 * @param plan what was asked
 * @param lap the lap, from 1
 * @param keyShift how far its keys lie from the plan's, in semitones
 * @param beatMillis how long a beat lasted
 * @param notes what the player played, in quarter notes from bar 1, in order
 * @param machine what the machine played, likewise
 */
public record Performed(
    Plan plan,
    int lap,
    int keyShift,
    double beatMillis,
    List<PlacedNote> notes,
    List<PlacedNote> machine) {
  /** A landing is looked for so far around its place, in beats. */
  private static final double REACH = 0.75;

  public Performed {
    notes = notes.stream().sorted(Comparator.comparingDouble(PlacedNote::at)).toList();
    machine = machine.stream().sorted(Comparator.comparingDouble(PlacedNote::at)).toList();
  }

  Form form() {
    return plan.form();
  }

  /** The phrases of the lap, rests left out. */
  List<Prompt> prompts() {
    return plan.promptsOfLap(lap).stream().filter(prompt -> !prompt.isRest()).toList();
  }

  double start() {
    return form().startOf((lap - 1) * form().bars().size() + 1).toDouble();
  }

  double end() {
    return form().startOf(lap * form().bars().size() + 1).toDouble();
  }

  /** How long a beat is at a prompt's landing, in quarter notes. */
  double beat(Prompt prompt) {
    return form().bar(prompt.landOn().bar()).meter().beatLength().toDouble();
  }

  double place(Prompt prompt) {
    return form().quarters(prompt.landOn()).toDouble();
  }

  /** The notes struck within a prompt, half a beat of tolerance before it. */
  List<PlacedNote> within(Prompt prompt, List<PlacedNote> all) {
    double from = form().quarters(prompt.speakFrom()).toDouble() - 0.5 * beat(prompt);
    double to = form().quarters(prompt.stopBy()).toDouble();
    return all.stream().filter(note -> note.at() >= from && note.at() < to).toList();
  }

  /** The note nearest to where a prompt lands; of those struck together the highest. */
  Optional<PlacedNote> landing(Prompt prompt) {
    double place = place(prompt);
    return notes.stream()
        .filter(note -> Math.abs(note.at() - place) <= REACH * beat(prompt))
        .min(
            Comparator.<PlacedNote>comparingLong(
                    note -> Math.round(16 * Math.abs(note.at() - place) / beat(prompt)))
                .thenComparing(Comparator.comparingDouble(PlacedNote::reached).reversed()));
  }

  /** How late a note is struck, in milliseconds. */
  double late(PlacedNote note, Prompt prompt) {
    return (note.at() - place(prompt)) / beat(prompt) * beatMillis;
  }

  /** The key that sounded in a bar, counted on through the laps. */
  Key key(int bar) {
    return form().bar(bar).key().shifted(keyShift);
  }
}
