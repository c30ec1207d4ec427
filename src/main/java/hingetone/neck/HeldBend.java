package hingetone.neck;

import java.util.List;

/**
 * A bend with another note held on the next higher string: string 2 fret 8 bent from G4 to A4 under
 * C5 on string 1 fret 8.
 *
 * @param bend the bend, a half tone or more
 * @param held the note that rings above it
 */
public record HeldBend(Bend bend, Dot held) {
  /** How far below and above the bending finger another finger still holds a note. */
  private static final int BELOW = 2;

  private static final int ABOVE = 3;

  /** Every such pair inside a shape. */
  public static List<HeldBend> all(Shape shape) {
    return Bend.all(shape).stream()
        .filter(bend -> bend.size() != Bend.Size.CURL)
        .flatMap(
            bend ->
                shape.dots().stream()
                    .filter(dot -> canHold(bend, dot))
                    .map(dot -> new HeldBend(bend, dot)))
        .toList();
  }

  private static boolean canHold(Bend bend, Dot dot) {
    int apart = dot.fret() - bend.from().fret();
    return dot.string() == bend.from().string() - 1 && apart >= -BELOW && apart <= ABOVE;
  }
}
