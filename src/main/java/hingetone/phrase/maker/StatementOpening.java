package hingetone.phrase.maker;

import hingetone.phrase.Phrase;
import hingetone.phrase.Tone;
import hingetone.phrase.maker.Melody.Blank;
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
  /** No opening. */
  static final StatementOpening NONE = new StatementOpening(List.of(), Beats.ZERO, "");

  private static final int LEAST = 3;

  /** Fits a statement's opening to a task: its key, its room, a chord's note to land on. */
  static StatementOpening of(PhraseBuilder bench, PhraseTask task, Phrase statement) {
    Phrase line = topLine(statement);
    Beats cut = middle(line);
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
   * A statement's opening as it was, for a statement that comes back: none where it could not be
   * known again.
   *
   * @param later how much later it lands than a task, in quarter notes; negative where it is early
   * @param from where there is room from
   * @param until where there is room until
   */
  static StatementOpening known(
      PhraseBuilder bench,
      PhraseTask task,
      Phrase statement,
      Beats later,
      Beats from,
      Beats until) {
    Phrase line = topLine(statement);
    Beats end = cut(line, Math.max(LEAST, (line.tones().size() + 1) / 2));
    Beats cut = end.plus(later);
    boolean fits =
        !line.start().plus(later).isBefore(from) && cut.isBefore(until) && cut.isAfter(later);
    if (!fits) {
      return NONE;
    }
    return FittedPhrase.known(bench, task, line.before(end), later)
        .map(fitted -> new StatementOpening(fitted.phrase().tones(), cut, fitted.how()))
        .orElse(NONE);
  }

  /** Where the opening of a statement ends that a reply takes up. */
  static Beats middle(Phrase line) {
    return cut(line, 2);
  }

  /** The same with more said of how it was fitted. */
  StatementOpening and(String more) {
    return new StatementOpening(tones, cut, how + more);
  }

  /** Whether all of it is in a phrase. */
  boolean isIn(Phrase phrase) {
    List<Tone> there = topLine(phrase).tones();
    return tones.stream()
        .allMatch(
            tone ->
                there.stream()
                    .anyMatch(
                        other ->
                            other.onset().equals(tone.onset())
                                && other.reached().soundsLike(tone.reached())));
  }

  /** A note of it as a blank that is decided. */
  static Blank blank(Tone tone) {
    return Blank.of(new RhythmNote(tone.onset(), tone.length()), tone.reached().midi());
  }

  /** The same as a model that the chords may change. */
  static Blank model(Tone tone) {
    return Blank.near(new RhythmNote(tone.onset(), tone.length()), tone.reached().midi());
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

  /**
   * Where the opening ends: at the first note past the landing that lies beyond the middle and has
   * some notes before it; at the end where there is none.
   */
  private static Beats cut(Phrase phrase, int least) {
    Beats middle = phrase.end().dividedBy(2);
    return phrase.tones().stream()
        .skip(least)
        .map(Tone::onset)
        .filter(onset -> onset.isPositive() && !onset.isBefore(middle))
        .findFirst()
        .orElse(phrase.end());
  }
}
