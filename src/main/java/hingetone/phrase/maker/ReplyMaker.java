package hingetone.phrase.maker;

import hingetone.phrase.Phrase;
import hingetone.phrase.Tone;
import hingetone.phrase.maker.Melody.Blank;
import hingetone.phrase.maker.Melody.Contour;
import hingetone.theory.Key;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Makes replies to a statement, closed where the statement stayed open: its opening with another
 * ending, its rhythm turned the other way, or a line as long going against it.
 */
final class ReplyMaker {
  /** How often a first reply opens like its statement; from there on up to the next, its rhythm. */
  private static final double SAME_OPENING = 0.5;

  private static final double SAME_RHYTHM = 0.9;
  private static final int TRIES = 6;

  private final PhraseBuilder bench;
  private final PhraseTask task;
  private final Phrase statement;
  private final double choice;
  private final int turn;
  private final Random random;
  private final Optional<CrossingPhrase> over;

  /**
   * @param statement the statement
   * @param choice what kind its first reply is, 0 to 1
   * @param turn how many replies it has had before, so that two replies differ in kind
   */
  ReplyMaker(PhraseBuilder bench, PhraseTask task, Phrase statement, double choice, int turn) {
    this.bench = bench;
    this.task = task;
    this.statement = StatementOpening.topLine(statement);
    this.choice = choice;
    this.turn = turn;
    this.random = task.random();
    this.over = CrossingPhrase.of(bench, task);
  }

  MadePhrase make() {
    if (over.isPresent()) {
      return overTheLine().orElseGet(this::against);
    }
    boolean opens = choice < SAME_OPENING == (turn % 2 == 0);
    if (turn == 0 && choice >= SAME_RHYTHM) {
      return against();
    }
    Optional<MadePhrase> made =
        opens ? sameOpening().or(this::sameRhythm) : sameRhythm().or(this::sameOpening);
    return made.orElseGet(this::against);
  }

  private Optional<MadePhrase> sameOpening() {
    StatementOpening opening = StatementOpening.of(bench, task, statement);
    Beats end = end();
    if (opening.tones().size() < 2 || !opening.cut().isBefore(end) || !keepsTune(opening)) {
      return nearOpening();
    }
    List<Blank> blanks =
        new ArrayList<>(opening.tones().stream().map(StatementOpening::blank).toList());
    blanks.addAll(bench.body(task, opening.cut(), end, Optional.empty()));
    HandPosition hand = bench.handOver(task, opening.tones());
    List<Tone> tones = bench.melody(task, hand, contour(), true).fill(blanks);
    return Optional.of(
        bench.made(
            task,
            hand,
            tones,
            "Opens like the statement" + opening.how() + " and ends another way," + rest(tones)));
  }

  /** The opening bent to the chords under it, as long as it still goes up and down like it. */
  private Optional<MadePhrase> nearOpening() {
    Beats cut = StatementOpening.middle(statement);
    boolean fits =
        !statement.start().negated().isAfter(task.space().before()) && cut.isBefore(end());
    if (!fits || !cut.isPositive()) {
      return Optional.empty();
    }
    List<Blank> blanks = models(statement.before(cut).tones());
    int opening = blanks.size();
    blanks.addAll(bench.body(task, cut, end(), Optional.empty()));
    HandPosition hand = bench.hand(task);
    List<Tone> tones = bench.melody(task, hand, contour(), true).fill(blanks);
    return opening > 1 && goesLike(tones, opening)
        ? Optional.of(
            bench.made(
                task,
                hand,
                tones,
                "Opens like the statement, fitted to the chords, and ends another way,"
                    + rest(tones)))
        : Optional.empty();
  }

  /** Notes of the statement as models: in this key, and in the octave nearest to the hand. */
  private List<Blank> models(List<Tone> tones) {
    Key key = bench.harmony().keyAt(task.space().landing());
    Phrase there = new Phrase(statement.key(), tones).inKey(key);
    int[] under = bench.hand(task).notes();
    double middle = (under[0] + under[under.length - 1]) / 2.0;
    double mean = there.tones().stream().mapToInt(t -> t.reached().midi()).average().orElseThrow();
    int octaves = (int) Math.round((middle - mean) / 12);
    List<Blank> blanks = new ArrayList<>();
    for (Tone tone : there.octaves(octaves).tones()) {
      RhythmNote stroke = new RhythmNote(tone.onset(), tone.length());
      int way = blanks.isEmpty() ? 0 : directionTo(tones, blanks.size());
      blanks.add(Blank.near(stroke, tone.reached().midi()).going(way));
    }
    return blanks;
  }

  private static int directionTo(List<Tone> tones, int i) {
    return direction(tones.get(i - 1), tones.get(i));
  }

  private boolean goesLike(List<Tone> tones, int opening) {
    return IntStream.range(1, opening)
        .allMatch(i -> directionTo(statement.tones(), i) == directionTo(tones, i));
  }

  /**
   * With a way over a line: the statement's notes before it as far as there is room for them, or
   * its rhythm after it.
   */
  private Optional<MadePhrase> overTheLine() {
    CrossingPhrase way = over.orElseThrow();
    boolean onLine = !way.arrival().isPositive();
    Beats from = onLine ? way.last().end() : task.space().before().negated();
    Beats until = onLine ? end() : way.start();
    List<Tone> kept =
        statement.tones().stream()
            .filter(tone -> !tone.onset().isBefore(from) && tone.onset().isBefore(until))
            .map(tone -> tone.withLength(tone.length().min(until.minus(tone.onset()))))
            .toList();
    if (kept.size() < 2) {
      return Optional.empty();
    }
    List<Blank> blanks = new ArrayList<>(onLine ? way.blanks() : List.of());
    blanks.addAll(models(kept));
    blanks.addAll(onLine ? List.of() : way.blanks());
    HandPosition hand = bench.hand(task);
    List<Tone> tones = bench.melody(task, hand, contour(), true).fill(blanks);
    String rhythm =
        onLine ? ", then goes on in the statement's rhythm," : ", after the statement's rhythm,";
    return Optional.of(
        bench.made(task, hand, way.with(tones), over, way.why() + rhythm + rest(tones)));
  }

  /** Whether it still goes up and down where the statement does. */
  private boolean keepsTune(StatementOpening opening) {
    return IntStream.range(1, opening.tones().size())
        .allMatch(
            i ->
                direction(statement.tones().get(i - 1), statement.tones().get(i))
                    == direction(opening.tones().get(i - 1), opening.tones().get(i)));
  }

  private Optional<MadePhrase> sameRhythm() {
    boolean fits =
        !statement.start().negated().isAfter(task.space().before())
            && !statement.end().isAfter(task.space().after());
    if (!fits || statement.tones().stream().noneMatch(t -> t.onset().isZero())) {
      return Optional.empty();
    }
    Key key = statement.key();
    return Stream.of(key.pentatonic(), key.heptatonic())
        .flatMap(scale -> FittedPhrase.of(bench, task, statement.mirrored(scale)).stream())
        .map(mirror -> inRhythm(mirror.phrase().tones()))
        .filter(InRhythm::isTurnedRound)
        .findFirst()
        .or(() -> Optional.of(inRhythm(List.of())))
        .map(this::made);
  }

  /** A line in the statement's rhythm, and whether it goes the other way all along. */
  private record InRhythm(HandPosition hand, List<Tone> tones, boolean isTurnedRound) {}

  /**
   * The statement's rhythm with a line of its own.
   *
   * @param guide the line to follow up to its last note, which comes to rest; none for any line
   *     that moves the other way where it can
   */
  private InRhythm inRhythm(List<Tone> guide) {
    List<Tone> said = statement.tones();
    List<Blank> blanks = new ArrayList<>();
    for (int i = 0; i < said.size(); i++) {
      RhythmNote stroke = new RhythmNote(said.get(i).onset(), said.get(i).length());
      int way = i == 0 ? 0 : -direction(said.get(i - 1), said.get(i));
      boolean led = i + 1 < Math.min(said.size(), guide.size());
      blanks.add(led ? StatementOpening.blank(guide.get(i)) : Blank.of(stroke).going(way));
    }
    HandPosition hand = guide.isEmpty() ? bench.hand(task) : bench.handOver(task, guide);
    List<Tone> tones = bench.melody(task, hand, contour(), true).fill(blanks);
    return new InRhythm(hand, tones, isTurnedRound(said, tones));
  }

  private MadePhrase made(InRhythm line) {
    String how = line.isTurnedRound ? " and turns the line round," : " with a line of its own,";
    return bench.made(
        task, line.hand, line.tones, "Takes the statement's rhythm" + how + rest(line.tones));
  }

  private static int direction(Tone from, Tone to) {
    return Integer.signum(to.reached().midi() - from.reached().midi());
  }

  /** Whether every move but the last, which comes to rest, goes the other way. */
  private static boolean isTurnedRound(List<Tone> said, List<Tone> answered) {
    return IntStream.range(1, said.size() - 1)
        .allMatch(
            i ->
                direction(said.get(i - 1), said.get(i))
                    == -direction(answered.get(i - 1), answered.get(i)));
  }

  /** As long as the statement; without a line to cross also in the opposite direction. */
  private MadePhrase against() {
    int up = rises() ? -1 : 1;
    for (int i = 0; i < TRIES && over.isEmpty(); i++) {
      MadePhrase made = ownLine("As long as the statement, going the other way");
      List<Tone> tones = made.phrase().tones();
      if (direction(tones.get(0), tones.get(tones.size() - 1)) == up) {
        return made;
      }
    }
    return ownLine(
        over.map(CrossingPhrase::why).orElse("As long as the statement, with a line of its own"));
  }

  private MadePhrase ownLine(String why) {
    List<RhythmNote> pickup = pickup();
    int up = rises() ? -1 : 1;
    List<Blank> blanks = new ArrayList<>(PhraseBuilder.blanks(pickup, up));
    Optional<CrossingPhrase> onLine = over.filter(way -> !way.arrival().isPositive());
    Beats from = Beats.ZERO;
    if (onLine.isPresent()) {
      blanks = new ArrayList<>(onLine.get().blanks());
      from = onLine.get().last().end();
    }
    Beats begin = blanks.isEmpty() ? Beats.ZERO : blanks.get(0).stroke().onset();
    Beats end = begin.plus(statement.length()).max(from.plus(Beats.ONE)).min(task.space().after());
    blanks.addAll(bench.body(task, from, end, over.filter(way -> onLine.isEmpty())));
    HandPosition hand = bench.hand(task);
    List<Tone> tones = bench.melody(task, hand, contour(), true).fill(blanks);
    List<Tone> all = over.isPresent() ? over.get().with(tones) : tones;
    return bench.made(task, hand, all, over, why + "," + rest(tones));
  }

  /** A pickup of its own; the statement's, if else the reply came out too short. */
  private List<RhythmNote> pickup() {
    List<RhythmNote> own = bench.rhythm(task).pickup(task.pickup());
    Beats length = task.space().after().minus(own.isEmpty() ? Beats.ZERO : own.get(0).onset());
    Beats beat = bench.harmony().barAt(task.space().landing()).meter().beatLength();
    boolean longEnough = !length.plus(beat).isBefore(statement.length());
    boolean fits = !statement.start().negated().isAfter(task.space().before());
    return longEnough || !fits
        ? own
        : statement.tones().stream()
            .filter(tone -> tone.onset().isNegative() && !tone.end().isPositive())
            .map(tone -> new RhythmNote(tone.onset(), tone.length()))
            .toList();
  }

  /** Where a reply of the statement's length ends that starts where the statement did. */
  private Beats end() {
    return statement.end().min(task.space().after());
  }

  private boolean rises() {
    List<Tone> tones = statement.tones();
    return direction(tones.get(0), tones.get(tones.size() - 1)) >= 0;
  }

  private Contour contour() {
    return rises() ? Contour.FALL : random.nextBoolean() ? Contour.RISE : Contour.ARCH;
  }

  private String rest(List<Tone> tones) {
    Tone last = tones.get(tones.size() - 1);
    Beats time = task.space().landing().plus(last.onset());
    return " coming to rest on " + bench.harmony().heard(last.reached().midi(), time) + ".";
  }
}
