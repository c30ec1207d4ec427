package hingetone.screen;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Everything a key can do: the one table from which keys are bound and the help is drawn.
 *
 * <p>Letters are the first letters of a musician's words where they are free: d, b, c for the
 * parts, m for the metronome, l for loop, k for key, g for groove. The big keys that a hand finds
 * without looking are pause (space) and tap (enter).
 */
public enum Action {
  PAUSE("Playing", "pause, go on", "space"),
  TOP("Playing", "again from the top", "home", "0"),
  STOP("Playing", "stop", "."),
  NEXT("Playing", "next section", "right", "page down"),
  PREVIOUS("Playing", "section before", "left", "page up"),
  SLOWER("Tempo", "slower by 1", "-"),
  FASTER("Tempo", "faster by 1", "+", "="),
  SLOWER_BY_FIVE("Tempo", "slower by 5", "down"),
  FASTER_BY_FIVE("Tempo", "faster by 5", "up"),
  TAP("Tempo", "tap it", "enter"),
  RAMP("Tempo", "rises by itself", "r"),
  DRUMS("Band", "drums in, out", "d"),
  BASS("Band", "bass in, out", "b"),
  CHORDS("Band", "chords in, out", "c"),
  LEAD("Band", "examples in, out", "s"),
  SILENT_BARS("Band", "silent bars", "o"),
  GROOVE("Band", "next groove", "g"),
  SOUNDS("Band", "other sounds", "S"),
  CLICK("Band", "metronome", "m"),
  CLICK_WAY("Band", "metronome's beats", "M"),
  DRUMS_SOFTER("Level", "drums softer", "1"),
  DRUMS_LOUDER("Level", "drums louder", "2"),
  BASS_SOFTER("Level", "bass softer", "3"),
  BASS_LOUDER("Level", "bass louder", "4"),
  CHORDS_SOFTER("Level", "chords softer", "5"),
  CHORDS_LOUDER("Level", "chords louder", "6"),
  CLICK_SOFTER("Level", "metronome softer", "7"),
  CLICK_LOUDER("Level", "metronome louder", "8"),
  LEAD_SOFTER("Level", "examples softer", "("),
  LEAD_LOUDER("Level", "examples louder", ")"),
  SOFTER("Level", "all softer", "<", ","),
  LOUDER("Level", "all louder", ">", "9"),
  LOOP("Form", "loop this section", "l"),
  LOOP_FROM("Form", "loop from this bar", "["),
  LOOP_TO("Form", "loop to this bar", "]"),
  LOOP_CROSSING("Form", "loop next crossing", "x"),
  KEY_UP("Form", "key up", "k"),
  KEY_DOWN("Form", "key down", "K"),
  EVERY_KEY("Form", "all keys in turn", "w"),
  CROSSING_EXAMPLE("Example", "hear next crossing", "e"),
  PHRASE_EXAMPLE("Example", "hear the phrases", "E"),
  FAR("Picture", "far: large chords", "f"),
  AHEAD("Picture", "bars ahead", "a"),
  PHRASES("Picture", "phrases", "p"),
  NECK("Picture", "neck", "n"),
  RECORD("Take", "record a take", "R"),
  KEEP_LAST("Take", "keep the last minutes", "y"),
  HEARD("Picture", "what was heard", "v"),
  SHOW_ALL("Picture", "show everything", "u"),
  POSITION("Picture", "stay in this position", "t"),
  NAMES("Picture", "notes or degrees", "i"),
  REDRAW("Picture", "draw anew", "ctrl l"),
  ASIDE("Picture", "to the shell, fg back", "ctrl z"),
  MENU("Picture", "menu", "tab"),
  HELP("Picture", "keys", "?", "h"),
  QUIT("Picture", "leave", "q", "ctrl c");

  private final String group;
  private final String words;
  private final List<String> keys;

  Action(String group, String words, String... keys) {
    this.group = group;
    this.words = words;
    this.keys = List.of(keys);
  }

  /** The heading it stands under in the help. */
  public String group() {
    return group;
  }

  /** What it does, in a few words. */
  public String words() {
    return words;
  }

  /** The names of the keys that do it unless a player binds them otherwise. */
  public List<String> keys() {
    return keys;
  }

  /** Its name in the settings: {@code loop-crossing}. */
  public String id() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The action with a name in the settings. */
  public static Optional<Action> named(String id) {
    return Arrays.stream(values()).filter(action -> action.id().equals(id)).findFirst();
  }

  /**
   * What a key does: as the player bound it, else as the table has it. Where words are typed its
   * {@linkplain #id() name} does the same.
   */
  public static Optional<Action> ofKey(String key, ViewSettings settings) {
    Action own = settings.bound().get("key " + key);
    return own != null
        ? Optional.of(own)
        : Arrays.stream(values())
            .filter(action -> action.keys.contains(key) || action.id().equals(key))
            .findFirst();
  }

  /** The headings of the help, in order. */
  public static List<String> groups() {
    return Arrays.stream(values()).map(Action::group).distinct().toList();
  }
}
