package hingetone.phrase.maker;

import hingetone.phrase.Phrase;
import hingetone.phrase.Tone;
import hingetone.phrase.maker.Melody.Blank;
import hingetone.theory.Key;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.List;

/**
 * The opening of a statement, fitted to another place: its pickup, its landing and what follows, up
 * to about its middle.
 *
 * @param tones its notes; none where it cannot be fitted
 * @param cut where the new ending starts
 * @param how how it was fitted, as words after "comes back": in another key, moved along the scale
 */
record StatementOpening(List<Tone> tones, Beats cut, String how) {
  private static final StatementOpening NONE = new StatementOpening(List.of(), Beats.ZERO, "");
  private static final Beats EIGHTH = Beats.of(1, 2);

  /** Fits a statement's opening to a task: its key, its room, a chord's note to land on. */
  static StatementOpening of(PhraseBuilder bench, PhraseTask task, Phrase statement) {
    Phrase line = topLine(statement);
    Beats cut = cut(line);
    boolean fits =
        !line.start().negated().isAfter(task.space().before())
            && cut.isBefore(task.space().after())
            && cut.isPositive();
    if (!fits) {
      return NONE;
    }
    return FittedPhrase.of(bench, task, line.before(cut))
        .map(fitted -> new StatementOpening(fitted.phrase().tones(), cut, fitted.how()))
        .orElse(NONE);
  }

  /**
   * The same displaced: an eighth early, its last note held until where the new ending starts.
   * Itself where its main note would not sound on the landing any more, or starts too early.
   */
  StatementOpening pushed(Key key, Beats room) {
    boolean lands = tones.stream().anyMatch(t -> t.onset().isZero() && t.length().isAfter(EIGHTH));
    if (!lands || EIGHTH.minus(tones.get(0).onset()).isAfter(room)) {
      return this;
    }
    Phrase early = new Phrase(key, tones).shifted(EIGHTH.negated());
    List<Tone> held = new ArrayList<>(early.tones());
    int last = held.size() - 1;
    held.set(last, held.get(last).withLength(held.get(last).length().plus(EIGHTH)));
    return new StatementOpening(held, cut, how + ", an eighth early");
  }

  /** Whether something of it is left after its landing note. */
  boolean hasBody() {
    return tones.stream().anyMatch(tone -> tone.onset().isPositive());
  }

  /** A note of it as a blank that is decided. */
  static Blank blank(Tone tone) {
    return Blank.of(new RhythmNote(tone.onset(), tone.length()), tone.reached().midi());
  }

  /** The highest of the notes struck together. */
  static Phrase topLine(Phrase phrase) {
    List<Tone> line = new ArrayList<>();
    for (Tone tone : phrase.tones()) {
      if (!line.isEmpty() && line.get(line.size() - 1).onset().equals(tone.onset())) {
        line.remove(line.size() - 1);
      }
      line.add(tone);
    }
    return new Phrase(phrase.key(), line);
  }

  /** Where the opening ends: at the first note past the landing that lies beyond the middle. */
  private static Beats cut(Phrase phrase) {
    Beats middle = phrase.end().dividedBy(2);
    return phrase.tones().stream()
        .map(Tone::onset)
        .filter(onset -> onset.isPositive() && !onset.isBefore(middle))
        .findFirst()
        .orElse(Beats.ZERO);
  }
}
