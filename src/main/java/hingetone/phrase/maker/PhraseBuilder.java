package hingetone.phrase.maker;

import hingetone.chart.Fluency;
import hingetone.chart.Form.Bar;
import hingetone.chart.Section;
import hingetone.ground.Ground;
import hingetone.neck.Bend;
import hingetone.neck.Fretboard;
import hingetone.neck.Shape;
import hingetone.neck.Spot;
import hingetone.phrase.Phrase;
import hingetone.phrase.Statement;
import hingetone.phrase.Tone;
import hingetone.phrase.maker.Melody.Blank;
import hingetone.phrase.maker.Melody.Contour;
import hingetone.theory.Key;
import hingetone.theory.Pitch;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/** What statements and replies are made with: rhythm, melody, bends and fingering, put together. */
final class PhraseBuilder {
  /** Quarter notes of half a second and slower get some sixteenths, of a second many. */
  private static final double SLOW_QUARTER = 0.42;

  private static final double BUSY_INTO_TURNAROUND = 0.25;
  private static final double BEND = 0.45;
  private static final double BENT_LANDING = 0.8;
  private static final Beats BENDABLE = Beats.of(1, 2);

  /** A whole tone: as far as the maker lets a bend go. */
  private static final int WIDEST_BEND = Bend.Size.WHOLE.semitones();

  private final PhraseHarmony harmony;
  private final Ground ground;
  private final Fretboard neck;
  private final Fluency fluency;
  private final List<Statement> bank;
  private final Predicate<Section> swings;

  /**
   * @param fluency how fast the player gets
   * @param bank the statements that may be taken as they are
   * @param swings whether the band swings in a section
   */
  PhraseBuilder(
      PhraseHarmony harmony,
      Ground ground,
      Fluency fluency,
      List<Statement> bank,
      Predicate<Section> swings) {
    this.harmony = harmony;
    this.ground = ground;
    this.neck = ground.fretboard();
    this.fluency = fluency;
    this.bank = bank;
    this.swings = swings;
  }

  PhraseBuilder withFluency(Fluency other) {
    return new PhraseBuilder(harmony, ground, other, bank, swings);
  }

  PhraseBuilder withBank(List<Statement> other, Predicate<Section> nowSwings) {
    return new PhraseBuilder(harmony, ground, fluency, other, nowSwings);
  }

  List<Statement> bank() {
    return bank;
  }

  boolean swings(Section section) {
    return swings.test(section);
  }

  Ground ground() {
    return ground;
  }

  PhraseHarmony harmony() {
    return harmony;
  }

  /** The hand on the pentatonic shape of a task's key that lies where the ground's route is. */
  HandPosition hand(PhraseTask task) {
    Position landing = task.prompt().landOn();
    Key key = harmony.keyAt(task.space().landing());
    Shape route = ground.neckAt(landing.bar(), landing.beat());
    HandPosition hand = HandPosition.on(neck, ground.nearest(key.pentatonic(), route));
    boolean riff = harmony.barAt(task.space().landing()).section().isOverRiff();
    return riff ? hand : hand.stretched();
  }

  /** The hand that has some notes under it, as near to a task's fret as can be. */
  HandPosition handOver(PhraseTask task, List<Tone> tones) {
    List<Integer> midi = tones.stream().map(tone -> tone.pitch().midi()).toList();
    return HandPosition.over(neck, midi, hand(task).low()).orElseGet(() -> hand(task));
  }

  RhythmMaker rhythm(PhraseTask task) {
    return new RhythmMaker(task.random(), busy(task));
  }

  /** How likely sixteenths are: where it is slow, and a little more into a turnaround. */
  double busy(PhraseTask task) {
    Bar bar = harmony.barAt(task.space().landing());
    double quarter = 60 / bar.section().tempo().quartersPerMinute(bar.meter()).toDouble();
    double slow = Math.max(0, Math.min(0.5, quarter - SLOW_QUARTER));
    return slow + (quarter > 0.3 && leadsOn(task) ? BUSY_INTO_TURNAROUND : 0);
  }

  /** Whether a task's phrase is the last of its section, which leads on into the next. */
  boolean leadsOn(PhraseTask task) {
    Beats end = task.space().landing().plus(task.space().after());
    return harmony.barAt(end.minus(Beats.ONE)).isLastOfSection();
  }

  /** The pulses from a place of a phrase on, the place itself first, up to an end. */
  List<Beats> pulses(PhraseTask task, Beats from, Beats end) {
    Position landing = harmony.form().position(task.space().landing());
    Meter meter = harmony.form().bar(landing.bar()).meter();
    List<Beats> pulses = new ArrayList<>();
    pulses.add(from);
    RhythmMaker.pulses(meter, (int) landing.beat().numerator(), end).stream()
        .filter(pulse -> pulse.isAfter(from))
        .forEach(pulses::add);
    return pulses;
  }

  /** Where a body that has room until {@code most} ends: on a pulse, or right at the end. */
  Beats bodyEnd(PhraseTask task, Beats most) {
    List<Beats> ends = new ArrayList<>(pulses(task, Beats.ZERO, most));
    ends.add(most);
    int fewest = Math.max(1, (int) Math.ceil(0.7 * (ends.size() - 1)));
    return ends.get(fewest + task.random().nextInt(ends.size() - fewest));
  }

  Melody melody(PhraseTask task, HandPosition hand, Contour contour, boolean closed) {
    return new Melody(harmony, hand, task.space().landing(), contour, closed, task.random());
  }

  /** Blanks for the strokes of a pickup, all moving one way. */
  static List<Blank> blanks(List<RhythmNote> strokes, int direction) {
    List<Blank> blanks = new ArrayList<>();
    for (RhythmNote stroke : strokes) {
      blanks.add(Blank.of(stroke).going(blanks.isEmpty() ? 0 : direction));
    }
    return blanks;
  }

  /** A body from a place to an end, ending on the way over a line where the prompt has one. */
  List<Blank> body(PhraseTask task, Beats from, Beats end, Optional<CrossingPhrase> over) {
    Beats until = over.map(CrossingPhrase::start).orElse(end);
    List<Blank> blanks = new ArrayList<>();
    if (from.isBefore(until)) {
      rhythm(task).body(pulses(task, from, until), until).forEach(s -> blanks.add(Blank.of(s)));
    }
    over.ifPresent(way -> blanks.addAll(way.blanks()));
    return blanks;
  }

  /** The phrase as it is handed out: perhaps a bend in it, and a place for every note. */
  MadePhrase made(PhraseTask task, HandPosition hand, List<Tone> tones, String why) {
    return made(task, hand, tones, Optional.empty(), why);
  }

  /** The same, over a line on a way. */
  MadePhrase made(
      PhraseTask task,
      HandPosition hand,
      List<Tone> tones,
      Optional<CrossingPhrase> way,
      String why) {
    Key key = harmony.keyAt(task.space().landing());
    List<Tone> slower = new Thinning(harmony, task.space().landing(), fluency, way).of(tones);
    List<Tone> there =
        slower.stream().map(tone -> onNeck(key, tone)).map(t -> spelled(task, t)).toList();
    List<Tone> landed = bends(task) ? withBentLanding(task, hand, there, way) : there;
    Phrase phrase = new Phrase(key, playable(hand, landed, way));
    List<Spot> spots = Fingering.of(neck, phrase.tones(), hand.low(), way);
    return new MadePhrase(task.prompt(), phrase, spots, why);
  }

  /**
   * A note that a neck of few or unusual strings lacks moves to an octave it has, or next to it.
   */
  private Tone onNeck(Key key, Tone tone) {
    boolean there = !neck.spotsOf(tone.pitch()).isEmpty();
    return there ? tone : tone.withPitch(key.spell(neck.nearest(tone.pitch().midi())));
  }

  private Tone spelled(PhraseTask task, Tone tone) {
    ChordUnder under = harmony.under(task.space().landing().plus(tone.onset()));
    Tone struck = tone.withPitch(under.spell(tone.pitch().midi()));
    return tone.bend().map(to -> struck.withBend(under.spell(to.midi()))).orElse(struck);
  }

  /** Bends that the hand cannot do, or too wide ones, are fretted instead. */
  private List<Tone> playable(HandPosition hand, List<Tone> tones, Optional<CrossingPhrase> way) {
    return tones.stream()
        .map(
            tone ->
                tone.bend().isEmpty()
                        || way.flatMap(w -> w.placeOf(tone)).isPresent()
                        || canBend(hand, tone.pitch(), tone.reached())
                    ? tone
                    : tone.withPitch(tone.reached()))
        .toList();
  }

  /** Whether a task stands where strings are bent: on a riff, on power chords or in a blues. */
  private boolean bends(PhraseTask task) {
    Section section = harmony.barAt(task.space().landing()).section();
    return section.isOverRiff() || section.key().isBlues();
  }

  /** More often than not the landing is bent to, where a hand can do it. */
  private List<Tone> withBentLanding(
      PhraseTask task, HandPosition hand, List<Tone> tones, Optional<CrossingPhrase> way) {
    Tone landing = new Phrase(harmony.keyAt(task.space().landing()), tones).landing();
    boolean alone = tones.stream().filter(t -> t.onset().equals(landing.onset())).count() == 1;
    boolean free = landing.bend().isEmpty() && way.flatMap(w -> w.placeOf(landing)).isEmpty();
    if (!alone || !free || task.random().nextDouble() >= BENT_LANDING) {
      return tones;
    }
    return bent(task, hand, landing)
        .map(b -> tones.stream().map(tone -> tone.equals(landing) ? b : tone).toList())
        .orElse(tones);
  }

  /** A note bent up to by a whole or a half tone from a note of the scale there. */
  private Optional<Tone> bent(PhraseTask task, HandPosition hand, Tone tone) {
    ChordUnder under = harmony.under(task.space().landing().plus(tone.onset()));
    Key key = under.key();
    return IntStream.of(2, 1)
        .mapToObj(semitones -> under.spell(tone.pitch().midi() - semitones))
        .filter(
            below ->
                key.pentatonic().contains(below.name()) || under.inScale(below.name().chroma()))
        .filter(below -> !tone.length().isBefore(BENDABLE) && canBend(hand, below, tone.pitch()))
        .map(below -> tone.withPitch(below).withBend(tone.pitch()))
        .findFirst();
  }

  /** Now and then one note is bent up to, where strings are bent and the scale has the note. */
  List<Tone> withBend(PhraseTask task, HandPosition hand, List<Tone> tones, int from) {
    Random random = task.random();
    List<Tone> out = new ArrayList<>(tones);
    if (random.nextDouble() >= BEND) {
      return out;
    }
    List<Integer> order = new ArrayList<>();
    for (int i = from; i < tones.size(); i++) {
      order.add(i);
    }
    order.sort(Comparator.comparing((Integer i) -> tones.get(i).length()).reversed());
    for (int i : order) {
      Optional<Tone> bent = bent(task, hand, tones.get(i));
      if (bent.isPresent()) {
        out.set(i, bent.get());
        return out;
      }
    }
    return out;
  }

  private static boolean canBend(HandPosition hand, Pitch from, Pitch to) {
    List<Spot> spots = hand.spots(from.midi());
    return Bend.Size.of(to.midi() - from.midi())
        .filter(size -> size.semitones() <= WIDEST_BEND && !spots.isEmpty())
        .filter(size -> spots.stream().allMatch(spot -> size.isPlayableAt(spot, from.midi())))
        .isPresent();
  }
}
