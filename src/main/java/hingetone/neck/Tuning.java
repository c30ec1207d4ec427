package hingetone.neck;

import hingetone.theory.NoteName;
import hingetone.theory.Pitch;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * The open strings of an instrument, lowest string first.
 *
 * @param name its name, or its notes where it has none
 * @param strings the sounding pitch of each open string, 3 to 12 of them
 */
public record Tuning(String name, List<Pitch> strings) {
  public static final int FEWEST_STRINGS = 3;
  public static final int MOST_STRINGS = 12;

  /** The tunings known by name. Pitches as handbooks give them. */
  public static final List<Tuning> NAMED =
      List.of(
          of("standard", "E2 A2 D3 G3 B3 E4"),
          of("half-step down", "Eb2 Ab2 Db3 Gb3 Bb3 Eb4"),
          of("whole-step down", "D2 G2 C3 F3 A3 D4"),
          of("drop D", "D2 A2 D3 G3 B3 E4"),
          of("D A D G A D", "D2 A2 D3 G3 A3 D4"),
          of("open D", "D2 A2 D3 F#3 A3 D4"),
          of("open E", "E2 B2 E3 G#3 B3 E4"),
          of("open G", "D2 G2 D3 G3 B3 D4"),
          of("7-string", "B1 E2 A2 D3 G3 B3 E4"),
          of("bass", "E1 A1 D2 G2"),
          of("5-string bass", "B0 E1 A1 D2 G2"));

  public static final Tuning STANDARD = NAMED.get(0);

  public Tuning {
    strings = List.copyOf(strings);
    if (strings.size() < FEWEST_STRINGS || strings.size() > MOST_STRINGS) {
      throw new IllegalArgumentException("3 to 12 strings, not " + strings.size());
    }
  }

  private static Tuning of(String name, String notes) {
    return new Tuning(
        name, Arrays.stream(notes.split(" ")).map(n -> Pitch.parse(n).orElseThrow()).toList());
  }

  /**
   * Reads a tuning: a name, whatever its case ({@code drop D}), or its notes from the lowest string
   * to the highest, 3 to 12 of them, all with octaves ({@code D2 A2 D3 G3 A3 D4}) or all without
   * ({@code D A D G A D}). Without octaves each string is the next such note above the string
   * before it, and the whole lies as near as it can to a guitar in standard tuning.
   */
  public static Optional<Tuning> parse(String text) {
    String wanted = text.strip().replaceAll("[\\s,]+", " ");
    String folded = wanted.toLowerCase(Locale.ROOT);
    Optional<Tuning> named =
        NAMED.stream().filter(t -> t.name.toLowerCase(Locale.ROOT).equals(folded)).findFirst();
    return named.isPresent() ? named : ofNotes(List.of(wanted.split(" ")));
  }

  /** Reads the open strings, lowest first, as {@link #parse} does; empty when they are none. */
  public static Optional<Tuning> ofNotes(List<String> notes) {
    if (notes.size() < FEWEST_STRINGS || notes.size() > MOST_STRINGS) {
      return Optional.empty();
    }
    List<Pitch> pitches = notes.stream().flatMap(n -> Pitch.parse(n).stream()).toList();
    if (pitches.size() == notes.size()) {
      return Optional.of(pitches).filter(Tuning::playable).map(Tuning::ofPitches);
    }
    List<NoteName> names = notes.stream().flatMap(n -> NoteName.parse(n).stream()).toList();
    return names.size() == notes.size() ? Optional.of(ofPitches(rising(names))) : Optional.empty();
  }

  private static boolean playable(List<Pitch> pitches) {
    return pitches.stream().allMatch(p -> p.midi() >= 12 && p.midi() <= 100);
  }

  private static Tuning ofPitches(List<Pitch> pitches) {
    String notes = pitches.stream().map(Pitch::toString).collect(Collectors.joining(" "));
    return NAMED.stream()
        .filter(t -> t.strings.equals(pitches))
        .findFirst()
        .orElse(new Tuning(notes, pitches));
  }

  private static List<Pitch> rising(List<NoteName> names) {
    List<Integer> midi = new ArrayList<>();
    for (NoteName name : names) {
      int before = midi.isEmpty() ? name.chroma() - 12 : midi.get(midi.size() - 1);
      int up = Math.floorMod(name.chroma() - before - 1, 12) + 1;
      midi.add(before + up);
    }
    double middle = midi.stream().mapToInt(Integer::intValue).average().orElseThrow();
    int octaves = (int) Math.round((STANDARD.middle() - middle) / 12);
    return IntStream.range(0, names.size())
        .mapToObj(i -> Pitch.at(names.get(i), midi.get(i) + 12 * octaves))
        .toList();
  }

  private double middle() {
    return strings.stream().mapToInt(Pitch::midi).average().orElseThrow();
  }

  /** The open string with a player's number, 1 being the highest-numbered end of the list. */
  public Pitch string(int number) {
    return strings.get(strings.size() - number);
  }

  @Override
  public String toString() {
    return name;
  }
}
