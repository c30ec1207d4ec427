package hingetone.groove;

import hingetone.score.Role;
import hingetone.score.Sound;
import hingetone.time.Meter;
import java.util.List;
import java.util.stream.Collectors;

/**
 * How a band plays: its meters, its feel, and what each player does.
 *
 * @param name its name
 * @param about one line that says what it is
 * @param meters the meters it is drawn for; empty when it fits any
 * @param slowest the slowest tempo it is meant for, in beats a minute as a chart counts them
 * @param fastest the fastest
 * @param feel straight or swung
 * @param keep in how many bars of a hundred the players keep the section's pattern
 * @param drums the drummer
 * @param bass the bass player
 * @param chords the player of the chords
 * @param human how far from exact they all play
 */
public record Groove(
    String name,
    String about,
    List<Meter> meters,
    int slowest,
    int fastest,
    Feel feel,
    int keep,
    DrumStyle drums,
    BassStyle bass,
    ChordStyle chords,
    Human human) {
  /** What a drummer keeps unless a groove says otherwise. */
  static final int USUAL_KEEP = 90;

  public Groove {
    meters = List.copyOf(meters);
  }

  /** Whether it can be played in a meter, however that meter's beats are grouped. */
  public boolean fits(Meter meter) {
    return meters.isEmpty() || meters.stream().anyMatch(own -> sameFigures(own, meter));
  }

  /** How one of its players sounds. */
  public Sound sound(Role role) {
    return switch (role) {
      case DRUMS -> drums.sound();
      case BASS -> bass.sound();
      case CHORDS -> chords.sound();
      default -> throw new IllegalArgumentException("no " + role + " in a groove");
    };
  }

  /** Its meters as text: {@code 4/4}, {@code 5/4, 7/8} or {@code any}. */
  public String meterText() {
    return meters.isEmpty()
        ? "any"
        : meters.stream().map(Meter::toString).collect(Collectors.joining(", "));
  }

  static boolean sameFigures(Meter one, Meter other) {
    return one.numerator() == other.numerator() && one.denominator() == other.denominator();
  }
}
