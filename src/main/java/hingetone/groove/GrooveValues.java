package hingetone.groove;

import hingetone.text.reading.WholeText;
import hingetone.theory.Pitch;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Reads the single values of a groove; each gives nothing where the text is no such value. */
final class GrooveValues {
  private static final String DASH = "\\s*[-–]\\s*";
  private static final int OCTAVE = 12;

  private GrooveValues() {}

  /** Two MIDI keys, the first not above the second. */
  record Range(int low, int high) {}

  /** {@code any} is no meter in particular: an empty list. */
  static Optional<List<Meter>> meters(String text) {
    if (text.equalsIgnoreCase("any")) {
      return Optional.of(List.of());
    }
    List<Optional<Meter>> read = Arrays.stream(text.split("[,\\s]+")).map(Meter::parse).toList();
    return read.stream().allMatch(Optional::isPresent)
        ? Optional.of(read.stream().map(Optional::orElseThrow).distinct().toList())
        : Optional.empty();
  }

  static Optional<Feel> feel(String text) {
    String percent = text.replaceFirst("(?i)\\s+sixteenths$", "");
    boolean sixteenths = !percent.equals(text);
    return WholeText.read(percent, "%", Feel.STRAIGHT_PERCENT, Feel.MOST_PERCENT)
        .map(p -> new Feel(p, sixteenths ? Beats.of(1, 2) : Beats.ONE));
  }

  /** Two notes as MIDI keys, an octave apart or more. */
  static Optional<Range> keys(String text) {
    List<Optional<Pitch>> ends = Arrays.stream(text.split(DASH)).map(Pitch::parse).toList();
    if (ends.size() != 2 || !ends.stream().allMatch(Optional::isPresent)) {
      return Optional.empty();
    }
    return Optional.of(new Range(midi(ends.get(0)), midi(ends.get(1))))
        .filter(r -> r.low >= OCTAVE && r.high <= 127 && r.high - r.low >= OCTAVE);
  }

  private static int midi(Optional<Pitch> pitch) {
    return pitch.orElseThrow().midi();
  }

  static Optional<Boolean> yesOrNo(String text) {
    return switch (text.toLowerCase(Locale.ROOT)) {
      case "yes" -> Optional.of(true);
      case "no" -> Optional.of(false);
      default -> Optional.empty();
    };
  }
}
