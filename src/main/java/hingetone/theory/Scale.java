package hingetone.theory;

import java.util.List;
import java.util.Optional;

/**
 * A scale on a tonic: {@code C minor pentatonic}.
 *
 * @param tonic its first note
 * @param type its kind
 */
public record Scale(NoteName tonic, ScaleType type) {

  /** Reads {@code C minor pentatonic}; empty when the tonic or the kind is unknown. */
  public static Optional<Scale> parse(String text) {
    int length = NoteName.prefixLength(text);
    if (length == text.length() || !Character.isWhitespace(text.charAt(length))) {
      return Optional.empty();
    }
    return NoteName.parse(text.substring(0, length))
        .flatMap(t -> ScaleType.parse(text.substring(length)).map(k -> new Scale(t, k)));
  }

  /** The notes, strictly spelled, tonic first, ascending. */
  public List<NoteName> notes() {
    return type.intervals().stream().map(tonic::plus).toList();
  }

  /** Whether a note with this sound belongs to the scale, whatever its spelling. */
  public boolean contains(NoteName note) {
    return degreeOf(note.chroma()).isPresent();
  }

  /** The notes that sound in the other scale too, as this one spells them, in its order. */
  public List<NoteName> commonTones(Scale other) {
    return notes().stream().filter(other::contains).toList();
  }

  /** The interval from the tonic to a pitch class (0 to 11) when it belongs to the scale. */
  public Optional<Interval> degreeOf(int chroma) {
    int above = Math.floorMod(chroma - tonic.chroma(), 12);
    for (Interval interval : type.intervals()) {
      if (Math.floorMod(interval.semitones(), 12) == above) {
        return Optional.of(interval);
      }
    }
    return Optional.empty();
  }

  /** The scale moved up by an interval. */
  public Scale plus(Interval interval) {
    return new Scale(tonic.plus(interval), type);
  }

  @Override
  public String toString() {
    return tonic + " " + type;
  }
}
