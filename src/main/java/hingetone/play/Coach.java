package hingetone.play;

import hingetone.chart.Form;
import hingetone.drill.Drill;
import hingetone.drill.Exercise;
import hingetone.drill.Performed;
import hingetone.drill.Round;
import hingetone.drill.RoundScore;
import hingetone.midi.Received;
import hingetone.plan.ExampleChoice;
import hingetone.plan.Plan;
import hingetone.score.Note;
import hingetone.score.Role;
import hingetone.screen.Message;
import hingetone.sequencer.Command;
import hingetone.sequencer.SequencerEvent;
import hingetone.take.PlacedNote;
import hingetone.take.PlayedBars.Place;
import hingetone.time.Beats;
import hingetone.time.Clock;
import hingetone.time.Position;
import hingetone.time.Tempo;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;

/**
 * Leads through an exercise while the band plays: the first lap is the example, the second the
 * warm-up, each further one a round, scored a beat after its end. Everything is done on the thread
 * given, one thing after the other; who tells it something never waits.
 */
public final class Coach {
  private static final int EXAMPLE_LAP = 1;
  private static final int WARM_UP_LAP = 2;

  private final Lesson lesson;
  private final Band band;
  private final Clock clock;
  private final Executor thread;
  private final Form form;
  private final HeardNotes heard;
  private Drill drill;
  private Arrangement arrangement;
  private int keyShift;
  private long begun;
  private int lastLap;
  private boolean timeIsUp;

  /**
   * What is drilled.
   *
   * @param drill the exercise as it begins
   * @param lasting after how long it ends
   * @param listens whether there is an instrument; without one the player gives grades
   * @param arrangements the music of a level
   * @param done is given the exercise after each round
   */
  public record Lesson(
      Drill drill,
      Duration lasting,
      boolean listens,
      Arrangements arrangements,
      Consumer<Drill> done) {}

  /** The music of levels. */
  public interface Arrangements {
    /**
     * The music of a level.
     *
     * @param examples which phrases the machine plays
     */
    Arrangement of(Exercise.Level level, Optional<ExampleChoice> examples);
  }

  /** What can be asked of the band and the screen. */
  interface Band {
    /** Another arrangement from the next bar on. */
    void follow(Arrangement other);

    /** A live change. */
    void send(Command command);

    /** Something for the screen. */
    void show(Message message);
  }

  /**
   * A coach of a lesson.
   *
   * @param first the arrangement with which the band begins
   */
  Coach(Lesson lesson, Arrangement first, Band band, Clock clock, Executor thread) {
    this.lesson = lesson;
    this.band = band;
    this.clock = clock;
    this.thread = thread;
    this.drill = lesson.drill();
    this.arrangement = first;
    this.form = Form.of(first.chart());
    this.heard = new HeardNotes(form, form.bars().size() + 2);
  }

  /** The examples of the first lap: all phrases. */
  public static Optional<ExampleChoice> examples() {
    return Optional.of(ExampleChoice.ALL);
  }

  /** A message of the instrument. */
  void play(Received message) {
    thread.execute(() -> heard.take(message));
  }

  /** Something that happened to the band or to the instrument. */
  void hear(SequencerEvent event) {
    thread.execute(
        () -> {
          if (event instanceof SequencerEvent.BarLine bar) {
            keyShift = bar.keyShift();
          }
          heard.hear(event, clock.nanos());
        });
  }

  /** A beat is heard, in quarter notes from bar 1. */
  void beat(Beats now) {
    long nanos = clock.nanos();
    thread.execute(() -> turn(form.position(now), nanos));
  }

  /** The player's own grade of the round before, 1 to 5. */
  void grade(int grade) {
    thread.execute(() -> take(Round.graded(grade)));
  }

  private void turn(Position at, long nanos) {
    if (begun == 0) {
      begun = nanos;
      say(drill.exercise().goal());
      silence();
    }
    int bars = form.bars().size();
    int lap = form.lapOf(at.bar());
    int inLap = Math.floorMod(at.bar() - 1, bars) + 1;
    boolean isLine = at.beat().equals(Beats.ONE);
    if (lap == EXAMPLE_LAP && inLap == bars && isLine) {
      follow(quiet());
      say("Your turn: warm up. " + sentence(drill.now().words()));
    } else if (lap == WARM_UP_LAP && inLap == bars && isLine) {
      say("Now it counts.");
    } else if (lap > WARM_UP_LAP + 1
        && lap != lastLap
        && inLap == 1
        && at.beat().equals(Beats.of(2))) {
      lastLap = lap;
      ended(lap - 1, nanos);
    }
  }

  /** Without the example; where the machine asks, it goes on to do so. */
  private Optional<ExampleChoice> quiet() {
    return drill.exercise().machineAsks()
        ? Optional.of(ExampleChoice.STATEMENTS)
        : Optional.empty();
  }

  private void follow(Optional<ExampleChoice> examples) {
    arrangement = lesson.arrangements().of(drill.now(), examples);
    band.follow(arrangement);
  }

  private void silence() {
    int bars = drill.now().silentBars();
    band.send(bars == 0 ? Command.SilentBars.NONE : new Command.SilentBars(bars, bars));
  }

  private void ended(int lap, long nanos) {
    Optional<Place> here = heard.at(nanos);
    boolean waited = timeIsUp;
    timeIsUp = nanos - begun >= lesson.lasting().toNanos();
    if (lesson.listens() && here.isPresent()) {
      take(RoundScore.of(drill.exercise(), drill.level(), performed(lap, here.get(), nanos)));
    } else if (waited) {
      // The last grade is waited for a round long.
      band.show(new Message.Over());
    } else {
      band.show(new Message.Question("How was that round? 1 (poor) to 5 (clean)"));
    }
  }

  private Performed performed(int lap, Place here, long nanos) {
    double from = form.startOf((lap - 1) * form.bars().size() + 1).toDouble() - 4;
    List<PlacedNote> notes =
        heard.placed(here, nanos).stream().filter(note -> note.at() >= from).toList();
    Plan plan = Plan.of(arrangement.chart(), form);
    return new Performed(plan, lap, keyShift, here.nanosPerBeat() / 1e6, notes, machine(lap));
  }

  /** What the machine played in a lap. */
  private List<PlacedNote> machine(int lap) {
    double start = form.startOf((lap - 1) * form.bars().size() + 1).toDouble();
    return arrangement.laps().lap(lap).part(Role.LEAD).stream()
        .flatMap(part -> part.notes().stream())
        .map(note -> placed(note, start))
        .toList();
  }

  private PlacedNote placed(Note note, double start) {
    double at = start + note.onset().toDouble();
    double key = note.key() + keyShift;
    return new PlacedNote(at, at + note.length().toDouble(), key, key, note.velocity());
  }

  private void take(Round round) {
    Drill before = drill;
    drill = drill.after(round);
    lesson.done().accept(drill);
    StringBuilder words = new StringBuilder(sentence(round.words()));
    if (drill.level() != before.level()) {
      words.append(" Now ").append(drill.now().words()).append('.');
      follow(quiet());
      silence();
    }
    Tempo tempo = drill.ladder().now();
    if (!tempo.equals(before.ladder().now())) {
      boolean up = tempo.bpm().compareTo(before.ladder().now().bpm()) > 0;
      words.append(up ? " Up to " : " Down to ").append(tempo).append('.');
      band.send(new Command.SetTempo(tempo));
    }
    say(words.toString());
    if (timeIsUp) {
      band.show(new Message.Over());
    }
  }

  private static String sentence(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1) + ".";
  }

  private void say(String words) {
    band.show(new Message.Notice(words));
  }
}
