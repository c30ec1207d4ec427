package hingetone.phrase;

import hingetone.theory.Pitch;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * A phrase as note text around the bar line it lands on, which {@link PhraseReader} reads as the
 * same notes. A bent note is written as the note it reaches; a note ends where the next begins.
 *
 * <pre>{@code PhraseText.of(phrase, Meter.COMMON);   // → Optional["G4i | C5q. Bb4i"]}</pre>
 */
public final class PhraseText {
  /** Lengths in quarter notes of letters, the longest first, with and without a dot. */
  private static final List<Sign> SIGNS = signs();

  private static final List<Sign> TRIPLETS =
      List.of(
          new Sign("h*", Beats.of(4, 3)),
          new Sign("q*", Beats.of(2, 3)),
          new Sign("i*", Beats.of(1, 3)),
          new Sign("s*", Beats.of(1, 6)),
          new Sign("t*", Beats.of(1, 12)));

  private record Sign(String letters, Beats length) {}

  private final Meter meter;
  private final StringBuilder text = new StringBuilder();
  private boolean writable = true;

  private PhraseText(Meter meter) {
    this.meter = meter;
  }

  /**
   * The notes as text.
   *
   * @return empty where a length has no sign
   */
  public static Optional<String> of(Phrase phrase, Meter meter) {
    return new PhraseText(meter).written(phrase);
  }

  private static List<Sign> signs() {
    List<Sign> signs = new ArrayList<>();
    Beats length = Beats.of(4);
    for (String letter : List.of("w", "h", "q", "i", "s", "t")) {
      signs.add(new Sign(letter + ".", length.times(Beats.of(3, 2))));
      signs.add(new Sign(letter, length));
      length = length.dividedBy(2);
    }
    return signs;
  }

  private Optional<String> written(Phrase phrase) {
    List<Tone> tones = phrase.tones();
    if (!phrase.start().isNegative()) {
      text.append("| ");
    }
    fill(List.of(), Beats.ZERO.min(phrase.start()), phrase.start());
    for (int i = 0; i < tones.size(); ) {
      Beats onset = tones.get(i).onset();
      List<Tone> together = tones.stream().filter(t -> t.onset().equals(onset)).toList();
      i += together.size();
      Beats end = together.stream().map(Tone::end).reduce(Beats::min).orElseThrow();
      Beats next = i < tones.size() ? tones.get(i).onset() : end;
      Beats at = fill(together.stream().map(Tone::reached).toList(), onset, end.min(next));
      fill(List.of(), at, next);
    }
    return writable ? Optional.of(text.toString().strip()) : Optional.empty();
  }

  /** Writes notes, or a rest, from a place to another, cut at bar lines; gives the other. */
  private Beats fill(List<Pitch> pitches, Beats from, Beats to) {
    Beats at = from;
    boolean goneOn = false;
    while (at.isBefore(to)) {
      Beats line = meter.barLength().times(at.dividedBy(meter.barLength()).floor() + 1);
      Beats end = to.min(line);
      goneOn = pieces(pitches, end.minus(at), goneOn, end.isBefore(to));
      if (end.equals(line)) {
        text.append("| ");
      }
      at = end;
    }
    return to;
  }

  private boolean pieces(List<Pitch> pitches, Beats length, boolean goneOn, boolean goesOn) {
    List<String> signs = signs(length);
    writable &= !signs.isEmpty();
    for (int k = 0; k < signs.size(); k++) {
      boolean before = goneOn || k > 0;
      boolean after = goesOn || k < signs.size() - 1;
      String sign = (before && !pitches.isEmpty() ? "-" : "") + signs.get(k);
      String tie = after && !pitches.isEmpty() ? "-" : "";
      String notes =
          pitches.isEmpty()
              ? "R" + sign
              : pitches.stream().map(p -> p + sign + tie).collect(Collectors.joining("+"));
      text.append(notes).append(' ');
    }
    return true;
  }

  /** The fewest signs for a length, the longest first; none where no signs make it. */
  private static List<String> signs(Beats length) {
    for (Sign triplet : TRIPLETS) {
      Beats rest = length.minus(triplet.length);
      if (length.denominator() % 3 == 0 && !rest.isNegative() && rest.denominator() % 3 != 0) {
        List<String> signs = new ArrayList<>(plain(rest));
        signs.add(triplet.letters);
        return rest.isZero() || signs.size() > 1 ? signs : List.of();
      }
    }
    return plain(length);
  }

  private static List<String> plain(Beats length) {
    List<String> signs = new ArrayList<>();
    Beats left = length;
    for (Sign sign : SIGNS) {
      while (!left.isBefore(sign.length)) {
        signs.add(sign.letters);
        left = left.minus(sign.length);
      }
    }
    return left.isZero() ? signs : List.of();
  }
}
