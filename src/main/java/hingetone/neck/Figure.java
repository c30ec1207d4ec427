package hingetone.neck;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A few notes as the fingers play them, together or one after the other.
 *
 * @param touches where the fingers go, in playing order
 * @param together whether they are struck at once, which takes a string for each
 */
public record Figure(List<Touch> touches, boolean together) {

  /**
   * One finger.
   *
   * @param spot where it presses
   * @param bend how far it bends, if it does
   */
  public record Touch(Spot spot, Optional<Bend.Size> bend) {}

  public Figure {
    touches = List.copyOf(touches);
  }

  /** The bend and the held note of a pair, struck together. */
  public static Figure of(HeldBend pair) {
    return new Figure(
        List.of(
            new Touch(pair.bend().from().spot(), Optional.of(pair.bend().size())),
            new Touch(pair.held().spot(), Optional.empty())),
        true);
  }

  /** The lowest fret pressed. */
  public int low() {
    return touches.stream().mapToInt(t -> t.spot.fret()).min().orElseThrow();
  }

  /** The highest fret pressed. */
  public int high() {
    return touches.stream().mapToInt(t -> t.spot.fret()).max().orElseThrow();
  }

  /**
   * The same notes octaves away in the fingering nearest to this one: under one hand, on strings as
   * near to each other, then as near to where the hand is. String 2 fret 15 bent a tone under
   * string 1 fret 15 becomes, an octave down, string 3 fret 7 bent a tone under string 2 fret 8.
   * Empty when the neck has no place for it.
   */
  public Optional<Figure> octaves(Fretboard neck, int octaves) {
    List<Figure> found = new ArrayList<>();
    refinger(neck, octaves, new ArrayList<>(), found);
    return found.stream()
        .min(
            Comparator.comparingInt((Figure f) -> Math.max(0, f.high() - f.low() + 1 - Shape.HAND))
                .thenComparingInt(f -> Math.abs(f.stringSpan() - stringSpan()))
                .thenComparingInt(f -> Math.abs(f.low() - low()))
                .thenComparingInt(f -> f.high() - f.low()));
  }

  private int stringSpan() {
    return touches.stream().mapToInt(t -> t.spot.string()).max().orElseThrow()
        - touches.stream().mapToInt(t -> t.spot.string()).min().orElseThrow();
  }

  private void refinger(Fretboard neck, int octaves, List<Touch> sofar, List<Figure> found) {
    if (sofar.size() == touches.size()) {
      found.add(new Figure(sofar, together));
      return;
    }
    Touch touch = touches.get(sofar.size());
    for (int string = 1; string <= neck.strings(); string++) {
      int fret = neck.midi(touch.spot) + 12 * octaves - neck.open(string);
      Spot spot = new Spot(string, fret);
      boolean free = sofar.stream().noneMatch(t -> together && t.spot.string() == spot.string());
      if (free
          && neck.has(spot)
          && touch.bend.stream().allMatch(b -> b.isPlayableAt(spot, neck.midi(spot)))) {
        List<Touch> longer = new ArrayList<>(sofar);
        longer.add(new Touch(spot, touch.bend));
        refinger(neck, octaves, longer, found);
      }
    }
  }
}
