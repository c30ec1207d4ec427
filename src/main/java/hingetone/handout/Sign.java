package hingetone.handout;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * A note sign.
 *
 * @param length its length in {@link #DIVISIONS}
 * @param type its name in MusicXML; none for a rest that lasts a bar
 * @param dotted whether it has a dot
 * @param triplet whether three of it take the time of two
 */
record Sign(int length, String type, boolean dotted, boolean triplet) {
  /** Lengths are counted in these parts of a quarter: enough for 64ths and for triplets. */
  static final int DIVISIONS = 48;

  private static final List<Sign> ALL =
      List.of(
          new Sign(288, "whole", true, false),
          new Sign(192, "whole", false, false),
          new Sign(144, "half", true, false),
          new Sign(96, "half", false, false),
          new Sign(72, "quarter", true, false),
          new Sign(48, "quarter", false, false),
          new Sign(36, "eighth", true, false),
          new Sign(32, "quarter", false, true),
          new Sign(24, "eighth", false, false),
          new Sign(18, "16th", true, false),
          new Sign(16, "eighth", false, true),
          new Sign(12, "16th", false, false),
          new Sign(8, "16th", false, true),
          new Sign(6, "32nd", false, false),
          new Sign(4, "32nd", false, true),
          new Sign(3, "64th", false, false),
          new Sign(2, "64th", false, true),
          new Sign(1, "128th", false, true));

  /** The sign of a rest that lasts a bar. */
  static Sign ofBar(int length) {
    return new Sign(length, "", false, false);
  }

  /** Whether it is a rest that lasts a bar, in whatever meter. */
  boolean isBar() {
    return type.isEmpty();
  }

  /** The longest sign for which something holds. */
  static Optional<Sign> longest(Predicate<Sign> fits) {
    return ALL.stream().filter(fits).findFirst();
  }

  /** How many beams it takes: 1 for an eighth, 0 for a quarter and longer. */
  int beams() {
    return switch (type) {
      case "eighth" -> 1;
      case "16th" -> 2;
      case "32nd" -> 3;
      case "64th" -> 4;
      case "128th" -> 5;
      default -> 0;
    };
  }
}
