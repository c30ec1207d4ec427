package hingetone.theory;

import java.util.List;
import java.util.Optional;

/**
 * A chord: root, quality and, for a slash chord, the bass note.
 *
 * @param root its root
 * @param quality its kind
 * @param bass the note after the slash, when there is one
 */
public record Chord(NoteName root, ChordQuality quality, Optional<NoteName> bass) {

  /** Reads a whole symbol: {@code Am7}, {@code F#m7b5}, {@code D/F#}; empty when it is none. */
  public static Optional<Chord> parse(String symbol) {
    int rootLength = NoteName.prefixLength(symbol);
    if (rootLength == 0 || Character.isLowerCase(symbol.charAt(0))) {
      return Optional.empty();
    }
    NoteName root = NoteName.parse(symbol.substring(0, rootLength)).orElseThrow();
    String rest = symbol.substring(rootLength);
    Optional<ChordQuality> whole = ChordQuality.parse(rest);
    if (whole.isPresent()) {
      return whole.map(quality -> new Chord(root, quality, Optional.empty()));
    }
    int slash = rest.lastIndexOf('/');
    if (slash < 0) {
      return Optional.empty();
    }
    Optional<NoteName> bass = NoteName.parse(rest.substring(slash + 1));
    return ChordQuality.parse(rest.substring(0, slash))
        .filter(quality -> bass.isPresent())
        .map(quality -> new Chord(root, quality, bass));
  }

  /** The notes from the root up, strictly spelled; a slash bass is not among them. */
  public List<NoteName> notes() {
    return quality.intervals().stream().map(root::plus).toList();
  }

  /** The lowest note: the slash bass, or else the root. */
  public NoteName lowest() {
    return bass.orElse(root);
  }

  /** The interval from the root to a pitch class (0 to 11) when the chord has it. */
  public Optional<Interval> degreeOf(int chroma) {
    return quality.intervals().stream().filter(i -> root.plus(i).chroma() == chroma).findFirst();
  }

  /** The chord moved up by an interval. */
  public Chord plus(Interval interval) {
    return new Chord(root.plus(interval), quality, bass.map(b -> b.plus(interval)));
  }

  /** The symbol in its preferred spelling: {@code Am7}, {@code D/F#}. */
  public String symbol() {
    return root.toString() + quality + bass.map(b -> "/" + b).orElse("");
  }

  @Override
  public String toString() {
    return symbol();
  }
}
