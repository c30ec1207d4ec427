package hingetone.neck;

import hingetone.theory.Pitch;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The open strings of an instrument, lowest string first.
 *
 * @param name its name, or its notes where it has none
 * @param strings the sounding pitch of each open string, 3 to 12 of them
 */
public record Tuning(String name, List<Pitch> strings) {
  /** The tunings known by name. Pitches as handbooks give them. */
  public static final List<Tuning> NAMED = List.of(of("standard", "E2 A2 D3 G3 B3 E4"));

  public static final Tuning STANDARD = NAMED.get(0);

  public Tuning {
    strings = List.copyOf(strings);
    if (strings.size() < 3 || strings.size() > 12) {
      throw new IllegalArgumentException("3 to 12 strings, not " + strings.size());
    }
  }

  private static Tuning of(String name, String notes) {
    return new Tuning(
        name, Arrays.stream(notes.split(" ")).map(n -> Pitch.parse(n).orElseThrow()).toList());
  }

  /** Reads a tuning's name; empty when unknown. */
  public static Optional<Tuning> parse(String text) {
    String wanted = text.strip().toLowerCase(Locale.ROOT);
    return NAMED.stream().filter(t -> t.name.equals(wanted)).findFirst();
  }

  @Override
  public String toString() {
    return name;
  }
}
