package hingetone.screen;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * What a player chose to see, remembered between runs.
 *
 * <p>As text it is one {@code word: value} a line:
 *
 * <pre>
 * far: yes
 * hidden: neck
 * note-names: no
 * pedal cc 64: pause
 * key b: far
 * </pre>
 *
 * @param far whether only the chords are shown, as large as they go
 * @param hidden the panels that are switched off
 * @param noteNames whether the neck shows note names instead of degrees
 * @param bound keys and pedals bound by the player: {@code key b} or {@code pedal cc 64}
 */
public record ViewSettings(
    boolean far, Set<Panel> hidden, boolean noteNames, Map<String, Action> bound) {
  /** A part of the picture that can be switched off. */
  public enum Panel {
    AHEAD,
    PHRASES,
    NECK,
    /** What is said of the player's own notes, and those notes on the neck. */
    HEARD
  }

  public static final ViewSettings USUAL = new ViewSettings(false, Set.of(), false, Map.of());

  public ViewSettings {
    hidden = Set.copyOf(hidden);
    bound = Map.copyOf(bound);
  }

  public boolean shows(Panel panel) {
    return !hidden.contains(panel);
  }

  public ViewSettings withFar(boolean value) {
    return new ViewSettings(value, hidden, noteNames, bound);
  }

  public ViewSettings withNoteNames(boolean value) {
    return new ViewSettings(far, hidden, value, bound);
  }

  /** The same with a panel switched over. */
  public ViewSettings withSwitched(Panel panel) {
    Set<Panel> switched = EnumSet.noneOf(Panel.class);
    switched.addAll(hidden);
    if (!switched.remove(panel)) {
      switched.add(panel);
    }
    return new ViewSettings(far, switched, noteNames, bound);
  }

  /** The same with every panel shown. */
  public ViewSettings withAllShown() {
    return new ViewSettings(far, Set.of(), noteNames, bound);
  }

  /** The same with a key or pedal bound to an action. */
  public ViewSettings withBound(String what, Action action) {
    Map<String, Action> more = new TreeMap<>(bound);
    more.put(what, action);
    return new ViewSettings(far, hidden, noteNames, more);
  }

  /** Reads what {@link #text} writes; lines it does not understand are passed over. */
  public static ViewSettings parse(String text) {
    ViewSettings settings = USUAL;
    for (String line : text.lines().toList()) {
      int colon = line.lastIndexOf(": ");
      if (colon > 0) {
        settings = settings.with(line.substring(0, colon).strip(), line.substring(colon + 2));
      }
    }
    return settings;
  }

  private ViewSettings with(String word, String value) {
    String wanted = value.strip();
    if (word.equals("far")) {
      return withFar(wanted.equals("yes"));
    }
    if (word.equals("note-names")) {
      return withNoteNames(wanted.equals("yes"));
    }
    if (word.equals("hidden")) {
      return panel(wanted).filter(this::shows).map(this::withSwitched).orElse(this);
    }
    boolean binds = word.startsWith("key ") || word.startsWith("pedal ");
    return binds ? Action.named(wanted).map(a -> withBound(word, a)).orElse(this) : this;
  }

  private static Optional<Panel> panel(String name) {
    for (Panel panel : Panel.values()) {
      if (panel.name().equalsIgnoreCase(name)) {
        return Optional.of(panel);
      }
    }
    return Optional.empty();
  }

  /** The text that {@link #parse} reads. */
  public String text() {
    StringBuilder text = new StringBuilder();
    text.append("far: ").append(far ? "yes" : "no").append('\n');
    text.append("note-names: ").append(noteNames ? "yes" : "no").append('\n');
    for (Panel panel : EnumSet.allOf(Panel.class)) {
      if (!shows(panel)) {
        text.append("hidden: ").append(panel.name().toLowerCase(Locale.ROOT)).append('\n');
      }
    }
    new TreeMap<>(bound)
        .forEach((what, action) -> text.append(what).append(": ").append(action.id()).append('\n'));
    return text.toString();
  }
}
