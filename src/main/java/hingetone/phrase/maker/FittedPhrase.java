package hingetone.phrase.maker;

import hingetone.phrase.Phrase;
import hingetone.phrase.Tone;
import hingetone.theory.Interval;
import hingetone.theory.Key;
import hingetone.theory.Scale;
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
  private static final List<String> WIDTHS =
      List.of(
          "a half tone",
          "a tone",
          "a minor third",
          "a major third",
          "a fourth",
          "a flat fifth",
          "a fifth");
  private static final Beats PUSH = Beats.of(-1, 2);
  private static final int NEAR = 4;
  private static final int ANYWHERE = 24;

  /** The phrase moved as little as can be; empty where it fits nowhere. */
  static Optional<FittedPhrase> of(PhraseBuilder bench, PhraseTask task, Phrase phrase) {
    return of(bench, task, phrase, any -> true);
  }

  /** The same, of the places that are also to somebody's liking. */
  static Optional<FittedPhrase> of(
      PhraseBuilder bench, PhraseTask task, Phrase phrase, Predicate<Phrase> liked) {
    Set<Integer> landing = bench.harmony().landingTones(task.space().landing());
    return nearest(
        bench,
        task,
        moved(phrase, bench.harmony().keyAt(task.space().landing()))
            .filter(way -> way.landsOn(landing) && way.suits(bench, task))
            .filter(way -> liked.test(way.phrase())));
  }

  /**
   * The phrase as it was, so that it is known again: the same degrees of its key, or every step as
   * wide as before; rather on a note of the chord, else on one that does not rub against it.
   *
   * @param later how much later than its own landing it is put, in quarter notes
   */
  static Optional<FittedPhrase> known(
      PhraseBuilder bench, PhraseTask task, Phrase phrase, Beats later) {
    Beats time = task.space().landing().plus(later.max(Beats.ZERO));
    Key key = bench.harmony().keyAt(time);
    ChordUnder under = bench.harmony().under(time);
    List<FittedPhrase> ways =
        known(phrase, key)
            .map(way -> new FittedPhrase(way.phrase().shifted(later), way.how()))
            .filter(way -> way.suits(bench, task))
            .filter(way -> !under.rubs(way.landingChroma()))
            .toList();
    return nearest(bench, task, ways.stream().filter(way -> under.inChord(way.landingChroma())))
        .or(() -> nearest(bench, task, ways.stream()));
  }

  /** The first that lies near the hand of a task, else the first that is in reach. */
  private static Optional<FittedPhrase> nearest(
      PhraseBuilder bench, PhraseTask task, Stream<FittedPhrase> found) {
    int fret = bench.hand(task).low();
    Iterator<FittedPhrase> ways = found.iterator();
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

  /** Its degrees in a key by octaves, then every step as wide as before, the nearest first. */
  private static Stream<FittedPhrase> known(Phrase phrase, Key key) {
    String where = key.equals(phrase.key()) ? "" : " in " + key;
    Phrase home = exactly(phrase, key);
    return Stream.concat(
        Stream.of(home, phrase.inKey(key))
            .flatMap(there -> OCTAVES.stream().map(octave -> moved(there, 0, octave, where))),
        Stream.iterate(1, semitones -> semitones + 1)
            .limit(WIDTHS.size())
            .flatMap(semitones -> Stream.of(semitones, -semitones))
            .map(semitones -> exactly(home, key, semitones, where)));
  }

  private static FittedPhrase exactly(Phrase phrase, Key key, int semitones, String where) {
    List<Tone> tones =
        phrase.tones().stream()
            .map(tone -> tone.withPitch(key.spell(tone.reached().midi() + semitones)))
            .toList();
    String way = (semitones > 0 ? "up " : "down ") + WIDTHS.get(Math.abs(semitones) - 1);
    return new FittedPhrase(new Phrase(key, tones), where + ", moved " + way);
  }

  /** Every note as far from the tonic as it was, up or down, whichever is nearer. */
  private static Phrase exactly(Phrase phrase, Key key) {
    Interval up = phrase.key().tonic().to(key.tonic()).simple();
    Interval nearer = up.semitones() > 6 ? up.minus(Interval.OCTAVE) : up;
    return new Phrase(key, phrase.plus(nearer).tones());
  }

  private static FittedPhrase moved(Phrase phrase, int steps, int octave, String where) {
    Phrase there = phrase.steps(ladder(phrase), steps).octaves(octave);
    String along = steps == 0 ? "" : ", moved along the scale";
    String away = octave == 0 ? "" : ", an octave away";
    return new FittedPhrase(there, where + along + away);
  }

  private boolean landsOn(Set<Integer> chromas) {
    return chromas.contains(landingChroma());
  }

  /** How many frets away from a fret its hand lies; no end where no hand reaches it. */
  private int awayFrom(int fret, PhraseBuilder bench) {
    List<Integer> midi = phrase.tones().stream().map(t -> t.pitch().midi()).toList();
    return HandPosition.over(bench.ground().fretboard(), midi, fret)
        .map(hand -> Math.abs(hand.low() - fret))
        .orElse(Integer.MAX_VALUE);
  }

  /** The pentatonic where it has all its notes, and in a blues; else the key's seven notes. */
  private static Scale ladder(Phrase phrase) {
    Scale five = phrase.key().pentatonic();
    boolean small =
        phrase.key().isBlues()
            || phrase.tones().stream().allMatch(tone -> five.contains(tone.reached().name()));
    return small ? five : phrase.key().heptatonic();
  }

  private int landingChroma() {
    return Math.floorMod(phrase.landing().reached().midi(), 12);
  }

  /**
   * Whether its notes belong over their chords, others being short and left and reached by step.
   */
  private boolean suits(PhraseBuilder bench, PhraseTask task) {
    List<Tone> tones = phrase.tones();
    return IntStream.range(0, tones.size())
        .allMatch(
            i -> {
              Tone tone = tones.get(i);
              int chroma = Math.floorMod(tone.reached().midi(), 12);
              Beats time = task.space().landing().plus(heardAt(tone));
              ChordUnder under = bench.harmony().under(time);
              boolean rests = under.rests(chroma) && under.cost(chroma) < MelodySearch.NEVER;
              boolean rubs = under.rubs(chroma) && !tone.length().isBefore(Beats.ONE);
              return rests && !rubs || passes(tones, i);
            });
  }

  /** Where it counts: a note pushed ahead of the landing belongs to what sounds there. */
  private static Beats heardAt(Tone tone) {
    boolean pushed = !tone.onset().isBefore(PUSH) && tone.end().isPositive();
    return pushed ? tone.onset().max(Beats.ZERO) : tone.onset();
  }

  private static boolean passes(List<Tone> tones, int i) {
    return i + 1 < tones.size()
        && tones.get(i).length().isBefore(Beats.ONE)
        && (i == 0 || isStep(tones.get(i - 1), tones.get(i)))
        && isStep(tones.get(i), tones.get(i + 1));
  }

  private static boolean isStep(Tone from, Tone to) {
    return Math.abs(to.reached().midi() - from.reached().midi()) <= 2;
  }
}
