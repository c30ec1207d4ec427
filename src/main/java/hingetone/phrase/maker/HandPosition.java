package hingetone.phrase.maker;

import hingetone.neck.Fretboard;
import hingetone.neck.Shape;
import hingetone.neck.Spot;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A hand that stays in one position: the notes under it, without those of the lowest strings where
 * there are more than four, which a lead leaves alone.
 *
 * @param neck the neck
 * @param low its lowest fret
 * @param high its highest fret
 */
record HandPosition(Fretboard neck, int low, int high) {
  /** Frets that a hand covers with a stretch. */
  static final int WIDEST = 5;

  private static final int LEAD_STRINGS = 4;

  /** The hand on a shape; of one that needs more than a stretch, its lower part. */
  static HandPosition on(Fretboard neck, Shape shape) {
    return new HandPosition(neck, shape.low(), Math.min(shape.high(), shape.low() + WIDEST - 1));
  }

  /** The hand with a fret more below, as far as a stretch and the neck allow. */
  HandPosition stretched() {
    boolean can = high - low + 1 < WIDEST && low > 0;
    return can ? new HandPosition(neck, low - 1, high) : this;
  }

  /** The hand nearest to a fret that has all of these notes under it, stretched if need be. */
  static Optional<HandPosition> over(Fretboard neck, Collection<Integer> midi, int fret) {
    return allOver(neck, midi, fret).findFirst();
  }

  /** Every hand that has all of these notes under it, the nearest to a fret first. */
  static Stream<HandPosition> allOver(Fretboard neck, Collection<Integer> midi, int fret) {
    return Stream.of(WIDEST - 1, WIDEST)
        .flatMap(
            width ->
                IntStream.rangeClosed(0, neck.lastFret() - width + 1)
                    .boxed()
                    .sorted(Comparator.comparingInt(low -> Math.abs(low - fret)))
                    .map(low -> new HandPosition(neck, low, low + width - 1)))
        .filter(hand -> midi.stream().allMatch(m -> !hand.spots(m).isEmpty()));
  }

  /** The notes under it as ascending MIDI numbers, each once. */
  int[] notes() {
    int strings = Math.min(neck.strings(), LEAD_STRINGS);
    return IntStream.rangeClosed(1, strings)
        .flatMap(string -> IntStream.rangeClosed(low, high).map(fret -> neck.open(string) + fret))
        .sorted()
        .distinct()
        .toArray();
  }

  /** Whether a note lies under it on the strings that a lead uses. */
  boolean leads(int midi) {
    return IntStream.of(notes()).anyMatch(note -> note == midi);
  }

  /** Whether a fret lies under it. */
  boolean covers(int fret) {
    return fret >= low && fret <= high;
  }

  /** Every place under it where a note can be played, from the highest string down. */
  List<Spot> spots(int midi) {
    return IntStream.rangeClosed(1, neck.strings())
        .mapToObj(string -> new Spot(string, midi - neck.open(string)))
        .filter(spot -> covers(spot.fret()) && neck.has(spot))
        .toList();
  }
}
