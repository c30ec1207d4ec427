package hingetone.backing;

import hingetone.groove.DrumPattern;
import hingetone.groove.Fill;
import hingetone.score.Fullness;
import hingetone.score.Note;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.LongStream;

/** Plays the drums: patterns with small changes, fills, and a crash where a section starts. */
final class Drummer {
  private static final int BASS_DRUM = 36;
  private static final int SIDE_STICK = 37;
  private static final int SNARE = 38;
  private static final int CRASH_VELOCITY = 108;
  private static final int GHOST_VELOCITY = 50;
  private static final int ORNAMENT_PERCENT = 45;

  /** How many ornaments are ghost notes at least; where the groove keeps still, nearly all. */
  private static final int GHOSTS_PERCENT = 67;

  private static final int TURNAROUND_ORNAMENTS = 3;
  private static final int FASTEST_FOR_SIXTEENTHS = 160;
  private static final Beats ORNAMENT_LENGTH = Beats.of(1, 4);
  private static final Set<Integer> BASS_DRUMS = Set.of(35, 36);
  private static final Set<Integer> FEET = Set.of(35, 36, 44);

  /** Hand clap, tambourine, cabasa and maracas. */
  private static final Set<Integer> SHAKERS = Set.of(39, 54, 69, 70);

  private static final Set<Integer> SNARES = Set.of(37, 38, 40);

  /** Closed, pedal and open hi-hat, rides and ride bell: what a crash takes the place of. */
  private static final Set<Integer> TIME_KEEPERS = Set.of(42, 44, 46, 51, 53, 59);

  private final Dice dice;

  Drummer(Dice dice) {
    this.dice = dice;
  }

  /** The notes of a lap, swing included. */
  List<Note> play(List<BarPlan> plans) {
    List<Note> lap = new ArrayList<>();
    for (BarPlan plan : plans) {
      for (Note note : bar(plan)) {
        Beats length = note.length().min(Beats.of(1, 4)).dividedBy(2);
        lap.add(note.withOnset(plan.played(note.onset())).withLength(length));
      }
    }
    return lap;
  }

  /** The strokes of a bar as drawn, onsets from the bar line. */
  private List<Note> bar(BarPlan plan) {
    Random chance = dice.at("drums", plan.bar().number());
    PatternChoice.Drawn<DrumPattern> drawn =
        new PatternChoice<>(plan.groove().drums().patterns(), dice).at(plan);
    List<Note> strokes = new ArrayList<>(drawn.pattern().strokes(drawn.bar(), plan.bar().meter()));
    int loudest = loudestOfHands(strokes);
    if (plan.band() == Fullness.LIGHT) {
      strokes.removeIf(note -> note.velocity() < GHOST_VELOCITY);
    }
    for (int i = ornaments(plan, chance); i > 0; i--) {
      ornament(strokes, plan, chance);
    }
    if (plan.stop()) {
      strokes.removeIf(note -> note.onset().isPositive());
    }
    plan.fill().ifPresent(fill -> playFill(strokes, fill, plan.bar().meter(), loudest));
    if (plan.bar().isFirstOfSection()) {
      crash(strokes, plan, Math.min(CRASH_VELOCITY, loudest));
    }
    return strokes.stream().map(n -> n.withVelocity(plan.velocity(n.velocity()))).toList();
  }

  private static int loudestOfHands(List<Note> strokes) {
    return strokes.stream()
        .filter(note -> !FEET.contains(note.key()) && !SHAKERS.contains(note.key()))
        .mapToInt(Note::velocity)
        .max()
        .orElse(CRASH_VELOCITY);
  }

  /**
   * The hands leave the pattern for the fill; so do the feet where the fill has strokes for them.
   * Another player's claps and shakers go on. The fill is no louder than the pattern it follows: as
   * a whole softer, where its loudest stroke would be louder.
   */
  private static void playFill(List<Note> strokes, Fill fill, Meter meter, int loudest) {
    List<Note> drawn = fill.strokes(meter);
    int drawnLoudest = drawn.stream().mapToInt(Note::velocity).max().orElse(loudest);
    double softer = Math.min(1, (double) loudest / drawnLoudest);
    List<Note> filled =
        drawn.stream()
            .map(n -> n.withVelocity(Math.max(1, (int) Math.round(softer * n.velocity()))))
            .toList();
    boolean feetToo = filled.stream().anyMatch(note -> FEET.contains(note.key()));
    strokes.removeIf(
        note ->
            !note.onset().isBefore(fill.start(meter))
                && !SHAKERS.contains(note.key())
                && (feetToo || !FEET.contains(note.key())));
    strokes.addAll(filled);
  }

  private static void crash(List<Note> strokes, BarPlan plan, int velocity) {
    plan.groove()
        .drums()
        .crash()
        .ifPresent(
            key -> {
              strokes.removeIf(n -> n.onset().isZero() && TIME_KEEPERS.contains(n.key()));
              strokes.add(new Note(Beats.ZERO, Beats.of(1, 4), key, velocity));
              if (strokes.stream().noneMatch(n -> n.onset().isZero() && isBassDrum(n))) {
                strokes.add(
                    new Note(Beats.ZERO, Beats.of(1, 4), BASS_DRUM, Math.min(100, velocity)));
              }
            });
  }

  /** How many strokes are added to a bar: now and then one, several in a turnaround. */
  private static int ornaments(BarPlan plan, Random chance) {
    if (plan.turnaround()) {
      return TURNAROUND_ORNAMENTS;
    }
    int own = chance.nextInt(100) < ORNAMENT_PERCENT ? 1 : 0;
    return plan.band() == Fullness.LIGHT ? 0 : Math.max(0, own + plan.moment().ornaments());
  }

  /** A ghost note between the strokes, or a bass drum that leads back to a beat. */
  private static void ornament(List<Note> strokes, BarPlan plan, Random chance) {
    boolean ghost = chance.nextInt(100) < Math.max(GHOSTS_PERCENT, plan.groove().keep());
    Beats step = step(strokes, plan);
    List<Beats> free =
        betweenBeats(step, plan.bar().meter()).stream()
            .filter(at -> strokes.stream().noneMatch(n -> isOwn(n) && isWithin(step, n, at)))
            .toList();
    if (free.isEmpty()) {
      return;
    }
    Beats place = free.get(chance.nextInt(free.size()));
    if (ghost && strokes.stream().anyMatch(Drummer::isSnare)) {
      boolean stick = strokes.stream().noneMatch(n -> isSnare(n) && n.key() != SIDE_STICK);
      int velocity = 26 + chance.nextInt(14);
      strokes.add(new Note(place, ORNAMENT_LENGTH, stick ? SIDE_STICK : SNARE, velocity));
    } else if (strokes.stream().anyMatch(Drummer::isBassDrum)) {
      strokes.add(new Note(place, ORNAMENT_LENGTH, BASS_DRUM, 66 + chance.nextInt(14)));
    }
  }

  /** Whether a note is of the drums that ornaments are played on. */
  private static boolean isOwn(Note note) {
    return isBassDrum(note) || isSnare(note);
  }

  private static boolean isWithin(Beats step, Note note, Beats place) {
    return note.onset().isAfter(place.minus(step)) && note.onset().isBefore(place.plus(step));
  }

  /**
   * The finest division that the bar is felt in and that can still be played at the groove's
   * fastest tempo: the drummer adds notes there.
   */
  private static Beats step(List<Note> strokes, BarPlan plan) {
    Meter meter = plan.bar().meter();
    boolean swungEighths = plan.feel().percent() > 50 && plan.feel().pair().equals(Beats.ONE);
    boolean fast = plan.groove().fastest() > FASTEST_FOR_SIXTEENTHS;
    if (meter.denominator() <= 4 && strokes.stream().anyMatch(n -> isTriplet(n.onset()))) {
      return Beats.of(1, 3);
    }
    return Beats.of(1, swungEighths || fast || meter.denominator() > 4 ? 2 : 4);
  }

  private static boolean isTriplet(Beats onset) {
    return onset.denominator() % 3 == 0;
  }

  private static List<Beats> betweenBeats(Beats step, Meter meter) {
    long steps = meter.barLength().dividedBy(step).floor();
    int every = isTriplet(step) ? 3 : 2;
    return LongStream.range(0, steps).filter(n -> n % every > 0).mapToObj(step::times).toList();
  }

  static boolean isBassDrum(Note note) {
    return BASS_DRUMS.contains(note.key());
  }

  private static boolean isSnare(Note note) {
    return SNARES.contains(note.key());
  }
}
