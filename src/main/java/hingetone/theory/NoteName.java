package hingetone.theory;

import java.util.Locale;
import java.util.Optional;

/**
 * A spelled note name without an octave: {@code F#}, {@code Bb}, {@code C}.
 *
 * <p>Equality compares the spelling; {@link #soundsLike} compares the sound. What people write has
 * at most {@value #MOST_ALTERATIONS} sharps or flats; arithmetic goes as far as it must, so that it
 * is always exact and can be undone. Example: {@code
 * NoteName.parse("F").orElseThrow().plus(Interval.MINOR_THIRD)} is {@code Ab}.
 *
 * @param letter the letter
 * @param alteration semitones up (sharps) or down (flats)
 */
public record NoteName(Letter letter, int alteration) {
  /** Sharps or flats that a name may have to be read. */
  public static final int MOST_ALTERATIONS = 2;

  private static final Letter[] BY_FIFTHS = {
    Letter.F, Letter.C, Letter.G, Letter.D, Letter.A, Letter.E, Letter.B
  };

  /** The name at a place on the line of fifths: −1 is F, 0 C, 1 G, 6 F sharp, −2 B flat. */
  public static NoteName ofFifths(int fifths) {
    return new NoteName(BY_FIFTHS[Math.floorMod(fifths + 1, 7)], Math.floorDiv(fifths + 1, 7));
  }

  /**
   * Reads a whole text as a note name: a letter A to G in either case and up to two sharps or flats
   * ({@code # ♯ x 𝄪 b ♭ 𝄫}). Empty when the text is anything else.
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
    int alteration = 0;
    while (end < text.length()) {
      int step = alterationOf(text.codePointAt(end));
      boolean turnsBack = alteration * step < 0;
      if (step == 0 || turnsBack || Math.abs(alteration + step) > MOST_ALTERATIONS) {
        break;
      }
      alteration += step;
      end += Character.charCount(text.codePointAt(end));
    }
    return end;
  }

  private static NoteName read(String text) {
    int alteration = text.codePoints().skip(1).map(NoteName::alterationOf).sum();
    return new NoteName(Letter.valueOf(text.substring(0, 1).toUpperCase(Locale.ROOT)), alteration);
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
   * The name people read most easily: G for F##, F for E#, E for Fb. A natural where there is one,
   * else a name with one sharp or flat, which stays as it is.
   */
  public NoteName simplified() {
    for (Letter natural : Letter.values()) {
      if (natural.semitones() == chroma()) {
        return new NoteName(natural, 0);
      }
    }
    int fifths = fifths();
    while (Math.abs(ofFifths(fifths).alteration) > 1) {
      fifths -= 12 * Integer.signum(alteration);
    }
    return ofFifths(fifths);
  }

  /** The name as text with {@code #} and {@code b}. */
  @Override
  public String toString() {
    return letter + (alteration < 0 ? "b".repeat(-alteration) : "#".repeat(alteration));
  }
}
