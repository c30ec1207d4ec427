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
record NoteSign(int length, String type, boolean dotted, boolean triplet) {
  /** Lengths are counted in these parts of a quarter: enough for 64ths and for triplets. */
  static final int DIVISIONS = 48;

  private static final List<NoteSign> ALL =
      List.of(
          new NoteSign(288, "whole", true, false),
          new NoteSign(192, "whole", false, false),
          new NoteSign(144, "half", true, false),
          new NoteSign(96, "half", false, false),
          new NoteSign(72, "quarter", true, false),
          new NoteSign(48, "quarter", false, false),
          new NoteSign(36, "eighth", true, false),
          new NoteSign(32, "quarter", false, true),
          new NoteSign(24, "eighth", false, false),
          new NoteSign(18, "16th", true, false),
          new NoteSign(16, "eighth", false, true),
          new NoteSign(12, "16th", false, false),
          new NoteSign(8, "16th", false, true),
          new NoteSign(6, "32nd", false, false),
          new NoteSign(4, "32nd", false, true),
          new NoteSign(3, "64th", false, false),
          new NoteSign(2, "64th", false, true),
          new NoteSign(1, "128th", false, true));

  /** The sign of a rest that lasts a bar. */
  static NoteSign ofBar(int length) {
    return new NoteSign(length, "", false, false);
  }

  /** Whether it is a rest that lasts a bar, in whatever meter. */
  boolean isBar() {
    return type.isEmpty();
  }

  /** The longest sign for which something holds. */
  static Optional<NoteSign> longest(Predicate<NoteSign> fits) {
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
