package hingetone.theory;

import java.util.List;
import java.util.stream.Stream;

/** The keys that rules are tested on: every tonic once, spelled with the fewest accidentals. */
public final class Keys {
  public static final List<Key> MINOR = every("minor", "C C# D Eb E F F# G G# A Bb B");
  public static final List<Key> MAJOR = every("major", "C Db D Eb E F F# G Ab A Bb B");

  private Keys() {}

  private static List<Key> every(String mode, String tonics) {
    return Stream.of(tonics.split(" ")).map(tonic -> key(tonic + " " + mode)).toList();
  }

  public static Key key(String text) {
    return Key.parse(text).orElseThrow();
  }

  /** Semitones from one tonic up to another, 0 to 11. */
  public static int up(Key from, Key to) {
    return Math.floorMod(to.tonic().chroma() - from.tonic().chroma(), 12);
  }

  /** Semitones from one tonic to another by the nearer way, −5 to 6. */
  public static int nearerWay(Key from, Key to) {
    return up(from, to) > 6 ? up(from, to) - 12 : up(from, to);
  }

  /** The name on a degree of a key: {@code Ab} for {@code b6} of C minor. */
  public static String degree(Key key, String degree) {
    return key.tonic().plus(Interval.parse(degree).orElseThrow()).toString();
  }

  /** A chord on a degree: {@code Ab7} for {@code b6}, {@code 7} in C minor. */
  public static String chord(Key key, String degree, String quality) {
    return degree(key, degree) + quality;
  }
}
