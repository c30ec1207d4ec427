package hingetone.screen;

import hingetone.score.Role;
import hingetone.sequencer.Status;
import hingetone.text.Choice;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What a live change did, in sentences. */
public final class ChangeWords {
  private ChangeWords() {}

  /** All that differs between what held and what holds. */
  public static List<String> of(Status before, Status after) {
    List<String> lines = new ArrayList<>();
    if (!before.tempo().equals(after.tempo())) {
      lines.add("Tempo " + after.tempo() + ".");
    }
    for (Role role : Role.values()) {
      if (before.muted().contains(role) != after.muted().contains(role)) {
        lines.add(title(role) + (after.muted().contains(role) ? " out." : " in."));
      }
    }
    if (!before.loop().equals(after.loop())) {
      lines.add(
          after
              .loop()
              .map(loop -> "Loop of bars " + loop.firstBar() + " to " + loop.lastBar() + ".")
              .orElse("Loop off."));
    }
    if (before.keyShift() != after.keyShift()) {
      lines.add("Keys shifted by " + after.keyShift() + " half steps.");
    }
    if (!before.metronome().equals(after.metronome())) {
      boolean on = after.metronome().on();
      lines.add(on ? "Metronome: " + after.metronome().gap().clicked() + "." : "Metronome off.");
    }
    lines.addAll(levels(before, after));
    if (before.motion() != after.motion()) {
      lines.add(capital(Choice.word(after.motion())) + ".");
    }
    return lines;
  }

  /** The levels that differ, which nothing else on the screen shows. */
  static List<String> levels(Status before, Status after) {
    List<String> lines = new ArrayList<>();
    for (Role role : Role.values()) {
      int level = level(after, role);
      if (level != level(before, role)) {
        lines.add(title(role) + " at " + level + ".");
      }
    }
    if (before.volume() != after.volume()) {
      lines.add("Volume " + after.volume() + ".");
    }
    return lines;
  }

  /** A part as the player calls it: what the lead plays are examples. */
  public static String name(Role role) {
    return switch (role) {
      case LEAD -> "examples";
      case CLICK -> "metronome";
      default -> Choice.word(role);
    };
  }

  private static String title(Role role) {
    return capital(name(role));
  }

  private static String capital(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  /** In percent; before the band is there nobody has moved it. */
  private static int level(Status status, Role role) {
    return status.levels().getOrDefault(role, 100);
  }
}
