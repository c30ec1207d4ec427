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
  /** The parts of a symbol. */
  public enum Part {
    ROOT,
    QUALITY,
    BASS
  }

  /**
   * What keeps a text from being a chord symbol, for a message that helps.
   *
   * @param part the part that was not understood
   * @param start where that part starts in the text
   * @param end where it ends, excluded
   * @param stuckAt how far reading came before it got stuck, from {@code start} to {@code end}
   */
  public record Fault(Part part, int start, int end, int stuckAt) {}

  /**
   * Reads a whole symbol: {@code Cm7}, {@code F#m7b5}, {@code C7(b9,#11)}, {@code C6/9}, {@code
   * D/F#}; empty when it is none. Roots and basses are capital letters with at most two
   * accidentals, and an accidental after the letter belongs to it: {@code Cb5} is the power chord
   * on C flat, a C major triad with a flat fifth is {@code C(b5)}.
   */
  public static Optional<Chord> parse(String symbol) {
    int rootEnd = rootEnd(symbol);
    if (rootEnd == 0) {
      return Optional.empty();
    }
    NoteName root = NoteName.parse(symbol.substring(0, rootEnd)).orElseThrow();
    String rest = symbol.substring(rootEnd);
    Optional<ChordQuality> whole = ChordQuality.parse(rest);
    if (whole.isPresent()) {
      return whole.map(quality -> new Chord(root, quality, Optional.empty()));
    }
    int slash = rest.lastIndexOf('/');
    if (slash < 0 || rootEnd(rest.substring(slash + 1)) == 0) {
      return Optional.empty();
    }
    Optional<NoteName> bass = NoteName.parse(rest.substring(slash + 1));
    return ChordQuality.parse(rest.substring(0, slash))
        .filter(quality -> bass.isPresent())
        .map(quality -> new Chord(root, quality, bass));
  }

  /**
   * What is wrong with a symbol; empty when it is a chord. For {@code Dmj7} it is the quality from
   * 1 to 4, stuck at 2, because {@code m} alone would have been one.
   */
  public static Optional<Fault> fault(String symbol) {
    if (parse(symbol).isPresent()) {
      return Optional.empty();
    }
    int start = rootEnd(symbol);
    if (start == 0) {
      return Optional.of(new Fault(Part.ROOT, 0, Math.min(1, symbol.length()), 0));
    }
    int slash = symbol.lastIndexOf('/');
    if (slash >= start && ChordQuality.parse(symbol.substring(start, slash)).isPresent()) {
      int stuckAt = slash + 1 + rootEnd(symbol.substring(slash + 1));
      return Optional.of(new Fault(Part.BASS, slash + 1, symbol.length(), stuckAt));
    }
    boolean bassFollows = slash >= start && isRoot(symbol.substring(slash + 1));
    int end = bassFollows ? slash : symbol.length();
    int stuckAt = start + ChordSuffix.read(symbol.substring(start, end)).stuckAt();
    return Optional.of(new Fault(Part.QUALITY, start, end, stuckAt));
  }

  private static boolean isRoot(String text) {
    return rootEnd(text) > 0 && rootEnd(text) == text.length();
  }

  /** How many characters at the start are a root: a note name with a capital letter. */
  private static int rootEnd(String text) {
    return text.isEmpty() || Character.isLowerCase(text.charAt(0))
        ? 0
        : NoteName.prefixLength(text);
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

  /** Whether it can pull to a tonic: a major third and a minor seventh, or no seventh at all. */
  public boolean isDominant() {
    return quality.has(4) && !quality.has(11) && (quality.has(10) || !quality.has(9));
  }

  /** Whether it is a dominant a fifth above a tonic: G7b9 is one of C. */
  public boolean isDominantOf(NoteName tonic) {
    return isDominant() && root.soundsLike(tonic.plus(Interval.FIFTH));
  }

  /** The chord moved up by an interval. */
  public Chord plus(Interval interval) {
    return new Chord(root.plus(interval), quality, bass.map(b -> b.plus(interval)));
  }

  /** The symbol in its preferred spelling: {@code Cm7}, {@code D/F#}. */
  public String symbol() {
    return root.toString() + quality + bass.map(b -> "/" + b).orElse("");
  }

  @Override
  public String toString() {
    return symbol();
  }
}
