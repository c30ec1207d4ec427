package hingetone.ground.ways;

import hingetone.chart.Leave;
import hingetone.ground.ways.Hold.BentHold;
import hingetone.neck.Spot;
import hingetone.theory.Pitch;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * A way over a line in a few words, the same wherever it is named: {@code G4, string 1 fret 3: b3
 * becomes 1}.
 */
public final class WayWords {
  private WayWords() {}

  /** The way of a kind that is gone over a crossing: its first; empty where there is none. */
  public static Optional<String> of(Crossing crossing, Leave kind) {
    return kind == Leave.HOLD
        ? crossing.holds().stream().findFirst().map(hold -> "hold: " + of(hold))
        : crossing.runs().stream().findFirst().map(run -> "run: " + of(run));
  }

  /** A hold: the note, where it lies, what it does on the line and what it becomes. */
  public static String of(Hold hold) {
    String plain = heard(hold.before(), hold.after());
    String place = ", " + hold.spot() + ": ";
    if (hold.bentFirst()) {
      BentHold bend = hold.bend().orElseThrow();
      String bent = heard(bend.before(), bend.after());
      return hold.note() + " bent to " + bend.to() + place + bent + ", or plain: " + plain;
    }
    String move =
        switch (hold.move()) {
          case STAY -> "";
          case BEND -> "bend to " + hold.noteAfter() + " on the line: ";
          case SLIDE -> "slide to " + hold.noteAfter() + " on the line: ";
        };
    String bend =
        hold.bend()
            .map(b -> ", or bent to " + b.to() + ": " + heard(b.before(), b.after()))
            .orElse("");
    return hold.note() + place + move + plain + bend;
  }

  private static String heard(Hold.Heard before, Hold.Heard after) {
    return before.degree().equals(after.degree())
        ? "stays the " + after.degree()
        : before.degree() + " becomes " + after.degree();
  }

  /** A run: where it starts, how it goes and where it lands. */
  public static String of(Run run) {
    Run.Step first = run.steps().get(0);
    Run.Step last = run.steps().get(run.steps().size() - 1);
    return switch (run.kind()) {
      case WALK ->
          spots(first) + " fret by fret to " + frets(last) + ", " + notes(last) + " on the line";
      case SCALE -> "scale from " + spots(first) + " into " + notes(last) + ", " + spots(last);
    };
  }

  private static String notes(Run.Step step) {
    return step.notes().stream().map(Pitch::toString).collect(Collectors.joining(" "));
  }

  private static String spots(Run.Step step) {
    List<String> strings = step.spots().stream().map(s -> s.string() + "").distinct().toList();
    String word = strings.size() > 1 ? "strings " : "string ";
    return word + String.join(" ", strings) + " " + frets(step);
  }

  private static String frets(Run.Step step) {
    List<Spot> spots = step.spots();
    String frets = spots.stream().map(s -> s.fret() + "").collect(Collectors.joining(" "));
    return (spots.size() > 1 ? "frets " : "fret ") + frets;
  }
}
