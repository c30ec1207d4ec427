package hingetone.theory;

import java.util.Optional;

/**
 * A spelled note name without an octave: {@code F#}, {@code Bb}, {@code C}.
 *
 * <p>Equality compares the spelling; {@link #soundsLike} compares the sound. Example: {@code
 * NoteName.parse("A").orElseThrow().plus(Interval.MINOR_THIRD)} is {@code C}.
 *
 * @param letter the letter
 * @param alteration semitones up (sharps) or down (flats), −{@value #MOST_ALTERATIONS} to {@value
 *     #MOST_ALTERATIONS}
 */
public record NoteName(Letter letter, int alteration) {
  /** Sharps or flats a spelling may carry; arithmetic beyond that is a mistake. */
  public static final int MOST_ALTERATIONS = 6;

  private static final Letter[] BY_FIFTHS = {
    Letter.F, Letter.C, Letter.G, Letter.D, Letter.A, Letter.E, Letter.B
  };

  public NoteName {
    if (Math.abs(alteration) > MOST_ALTERATIONS) {
      throw new IllegalArgumentException("more than six accidentals: " + letter + " " + alteration);
    }
  }

  /** The name at a place on the line of fifths: −1 is F, 0 C, 1 G, 6 F sharp, −2 B flat. */
  public static NoteName ofFifths(int fifths) {
    return new NoteName(BY_FIFTHS[Math.floorMod(fifths + 1, 7)], Math.floorDiv(fifths + 1, 7));
  }

  /**
   * Reads a whole text as a note name: a letter A to G in either case and sharps or flats ({@code #
   * ♯ x 𝄪 b ♭ 𝄫}). Empty when the text is anything else.
   */
  public static Optional<NoteName> parse(String text) {
    int length = prefixLength(text);
    return length > 0 && length == text.length() ? Optional.of(read(text)) : Optional.empty();
  }

  /** How many characters at the start of {@code text} are a note name; 0 when it has none. */
  public static int prefixLength(String text) {
    if (text.isEmpty() || "ABCDEFGabcdefg".indexOf(text.charAt(0)) < 0) {
      return 0;
    }
    int end = 1;
    int direction = 0;
    while (end < text.length()) {
      int step = alterationOf(text.codePointAt(end));
      if (step == 0 || (direction != 0 && Integer.signum(step) != direction)) {
        break;
      }
      direction = Integer.signum(step);
      end += Character.charCount(text.codePointAt(end));
    }
    return end;
  }

  private static NoteName read(String text) {
    int alteration = text.codePoints().skip(1).map(NoteName::alterationOf).sum();
    return new NoteName(
        Letter.valueOf(text.substring(0, 1).toUpperCase(java.util.Locale.ROOT)), alteration);
  }

  private static int alterationOf(int character) {
    return switch (character) {
      case '#', '♯' -> 1;
      case 'x', 0x1D12A -> 2;
      case 'b', '♭' -> -1;
      case 0x1D12B -> -2;
      default -> 0;
    };
  }

  /** Place on the line of fifths, C being 0. */
  public int fifths() {
    return letter.fifths() + 7 * alteration;
  }

  /** Pitch class, 0 (C) to 11 (B). */
  public int chroma() {
    return Math.floorMod(letter.semitones() + alteration, 12);
  }

  public boolean soundsLike(NoteName other) {
    return chroma() == other.chroma();
  }

  /** This name moved up by an interval; octaves do not matter. */
  public NoteName plus(Interval interval) {
    return ofFifths(fifths() + interval.fifths());
  }

  /** This name moved down by an interval; octaves do not matter. */
  public NoteName minus(Interval interval) {
    return ofFifths(fifths() - interval.fifths());
  }

  /** The simple interval, unison to seventh, up from this name to {@code other}. */
  public Interval to(NoteName other) {
    return Interval.ofFifths(other.fifths() - fifths());
  }

  /**
   * The simplest name that sounds the same, for people to read: G for F##, F for E#, E for Fb. A
   * name with a single sharp or flat on a black key stays as it is.
   */
  public NoteName simplified() {
    int fifths = fifths();
    while (fifths > 8) {
      fifths -= 12;
    }
    while (fifths < -6) {
      fifths += 12;
    }
    NoteName near = ofFifths(fifths);
    boolean whiteKey =
        "CDEFGAB".chars().anyMatch(c -> Letter.valueOf("" + (char) c).semitones() == chroma());
    if (!whiteKey) {
      return near;
    }
    return ofFifths(Math.floorMod(fifths + 1, 12) - 1);
  }

  /** The name as text with {@code #} and {@code b}. */
  @Override
  public String toString() {
    return letter + (alteration < 0 ? "b".repeat(-alteration) : "#".repeat(alteration));
  }
}
