package hingetone.phrase.maker;

import hingetone.phrase.Phrase;
import hingetone.phrase.Tone;
import hingetone.theory.Interval;
import hingetone.theory.Key;
import hingetone.theory.Pitch;
import hingetone.time.Beats;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A phrase moved to another place: into its key, onto a note of its chord, under a hand near its
 * fret.
 *
 * @param phrase the phrase as it is played there
 * @param how what was done to it, as words after "comes back": {@code in E minor, moved along the
 *     scale}; empty where nothing was
 */
record FittedPhrase(Phrase phrase, String how) {
  private static final List<Integer> STEPS = List.of(0, 1, -1, 2, -2, 3, -3);
  private static final List<Integer> OCTAVES = List.of(0, 1, -1);
  private static final int NEAR = 4;
  private static final int ANYWHERE = 24;

  /** The phrase moved as little as can be; empty where it fits nowhere. */
  static Optional<FittedPhrase> of(PhraseBuilder bench, PhraseTask task, Phrase phrase) {
    return of(bench, task, phrase, any -> true);
  }

  /** The same, of the places that are also to somebody's liking. */
  static Optional<FittedPhrase> of(
      PhraseBuilder bench, PhraseTask task, Phrase phrase, Predicate<Phrase> liked) {
    Key key = bench.harmony().keyAt(task.space().landing());
    Set<Integer> landing = bench.harmony().landingTones(task.space().landing());
    int fret = bench.hand(task).low();
    Iterator<FittedPhrase> ways =
        moved(phrase, key)
            .filter(way -> way.landsOn(landing) && way.isIn(key) && liked.test(way.phrase()))
            .iterator();
    Optional<FittedPhrase> farther = Optional.empty();
    while (ways.hasNext()) {
      FittedPhrase way = ways.next();
      int frets = way.awayFrom(fret, bench);
      if (frets <= NEAR) {
        return Optional.of(way);
      }
      if (frets <= ANYWHERE && farther.isEmpty()) {
        farther = Optional.of(way);
      }
    }
    return farther;
  }

  /** Exactly, which keeps the tune, then along the scale; each by steps and octaves. */
  private static Stream<FittedPhrase> moved(Phrase phrase, Key key) {
    String where = key.equals(phrase.key()) ? "" : " in " + key;
    return Stream.of(exactly(phrase, key), phrase.inKey(key))
        .flatMap(
            there ->
                STEPS.stream()
                    .flatMap(
                        steps ->
                            OCTAVES.stream().map(octave -> moved(there, steps, octave, where))));
  }

  /** Every note as far from the tonic as it was, up or down, whichever is nearer. */
  private static Phrase exactly(Phrase phrase, Key key) {
    Interval up = phrase.key().tonic().to(key.tonic()).simple();
    Interval nearer = up.semitones() > 6 ? up.minus(Interval.OCTAVE) : up;
    return new Phrase(key, phrase.plus(nearer).tones());
  }

  private static FittedPhrase moved(Phrase phrase, int steps, int octave, String where) {
    Phrase there = phrase.steps(phrase.key().pentatonic(), steps).octaves(octave);
    String along = steps == 0 ? "" : ", moved along the scale";
    String away = octave == 0 ? "" : ", an octave away";
    return new FittedPhrase(there, where + along + away);
  }

  private boolean landsOn(Set<Integer> chromas) {
    return chromas.contains(Math.floorMod(phrase.landing().reached().midi(), 12));
  }

  /** How many frets away from a fret its hand lies; no end where no hand reaches it. */
  private int awayFrom(int fret, PhraseBuilder bench) {
    List<Integer> midi = phrase.tones().stream().map(t -> t.pitch().midi()).toList();
    return HandPosition.over(bench.ground().fretboard(), midi, fret)
        .map(hand -> Math.abs(hand.low() - fret))
        .orElse(Integer.MAX_VALUE);
  }

  /** Whether its notes are the key's, others being short and left and reached by step. */
  private boolean isIn(Key key) {
    List<Tone> tones = phrase.tones();
    return IntStream.range(0, tones.size())
        .allMatch(i -> isOf(key, tones.get(i).reached()) || passes(tones, i));
  }

  private static boolean isOf(Key key, Pitch pitch) {
    return key.heptatonic().contains(pitch.name()) || key.scale().contains(pitch.name());
  }

  private static boolean passes(List<Tone> tones, int i) {
    boolean between = i > 0 && i + 1 < tones.size();
    return between
        && tones.get(i).length().isBefore(Beats.ONE)
        && isStep(tones.get(i - 1), tones.get(i))
        && isStep(tones.get(i), tones.get(i + 1));
  }

  private static boolean isStep(Tone from, Tone to) {
    return Math.abs(to.reached().midi() - from.reached().midi()) <= 2;
  }
}
