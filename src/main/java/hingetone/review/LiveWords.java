package hingetone.review;

import hingetone.take.PlacedNote;
import hingetone.theory.Key;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What is said of a landing and of a line just crossed, in a few words, while playing. */
public final class LiveWords {
  /** Nearer to its place than this a landing counts as on it, in milliseconds; our own bound. */
  static final double ON_IT_MS = 40;

  /** A landing is looked for so far around its place, in beats: an eighth early still counts. */
  public static final double REACH = 0.75;

  private static final double PUSH = 0.5;
  private static final double PUSH_SLACK = 0.17;

  private LiveWords() {}

  /**
   * A landing: which note it was and how it lay.
   *
   * @param place where it was to land, in quarter notes from bar 1
   * @param beat how long a beat is, in quarter notes
   * @param beatMs how long it lasts
   * @param key the key there
   * @param notes what was played around it
   */
  public static String landing(
      double place, double beat, double beatMs, Key key, List<PlacedNote> notes) {
    Optional<PlacedNote> landed = landed(place, beat, notes);
    if (landed.isEmpty()) {
      return "nothing landed";
    }
    double beats = (landed.get().at() - place) / beat;
    return note(landed.get(), key) + ": " + timing(beats, beatMs);
  }

  /** Whether a landing was on its place, or pushed half a beat before it; as above. */
  public static boolean isOnPlace(
      double place, double beat, double beatMs, List<PlacedNote> notes) {
    return landed(place, beat, notes)
        .map(note -> (note.at() - place) / beat)
        .filter(beats -> Math.abs(beats * beatMs) <= ON_IT_MS || isPushed(beats))
        .isPresent();
  }

  /** The note nearest to the place; of those struck together the highest. */
  private static Optional<PlacedNote> landed(double place, double beat, List<PlacedNote> notes) {
    return notes.stream()
        .filter(n -> Math.abs(n.at() - place) <= REACH * beat)
        .min(
            Comparator.<PlacedNote>comparingLong(
                    n -> Math.round(Math.abs(n.at() - place) / beat * 16))
                .thenComparing(Comparator.comparingDouble(PlacedNote::reached).reversed()));
  }

  private static String timing(double beats, double beatMs) {
    double ms = beats * beatMs;
    if (Math.abs(ms) <= ON_IT_MS) {
      return "on it";
    }
    return isPushed(beats) ? "pushed, half a beat early" : ms < 0 ? "ahead" : "behind";
  }

  private static boolean isPushed(double beats) {
    return Math.abs(beats + PUSH) <= PUSH_SLACK;
  }

  /** A line crossed: {@code held A over the line}, {@code run, landed on F#}. */
  public static String line(LineWay way, Key to) {
    String landed = way.landed().map(n -> ", landed on " + note(n, to)).orElse("");
    return switch (way.kind()) {
      case HOLD -> "held " + note(way.held().orElseThrow(), to) + ", over the line";
      case RUN -> "run" + landed;
      case REST -> "left the line open";
      case PLAIN -> "straight over the line" + landed;
    };
  }

  /** {@code G, the b3}. */
  static String note(PlacedNote note, Key key) {
    return name(note.chroma(), key) + ", the " + key.degreeOf(note.chroma());
  }

  /** A pitch class as people read it in a key. */
  static String name(int chroma, Key key) {
    return key.readable(key.spellChroma(chroma)).toString();
  }
}
