package hingetone.play;

import hingetone.chart.Form;
import hingetone.journal.Activity;
import hingetone.journal.LogEntry;
import hingetone.journal.PracticeLog;
import hingetone.midi.Received;
import hingetone.output.CommandFailure;
import hingetone.plan.ExampleChoice;
import hingetone.plan.Plan;
import hingetone.play.Chores.Kind;
import hingetone.screen.ChartFacts;
import hingetone.screen.Effect;
import hingetone.screen.Message;
import hingetone.screen.Runner;
import hingetone.screen.State;
import hingetone.screen.State.Terminal;
import hingetone.screen.ViewSettings;
import hingetone.screen.Viewer;
import hingetone.screen.picture.Size;
import hingetone.screen.picture.TerminalLook;
import hingetone.screen.terminal.JobControl;
import hingetone.screen.terminal.TerminalScreen;
import hingetone.screen.view.PlainView;
import hingetone.sequencer.Command;
import hingetone.sequencer.LapSource;
import hingetone.sequencer.PlaySetup;
import hingetone.sequencer.SequencerEvent;
import hingetone.sequencer.Status;
import hingetone.sound.SoundBank;
import hingetone.take.TakeFiles;
import hingetone.text.Printable;
import hingetone.time.Clock;
import hingetone.time.Position;
import hingetone.transport.Transport;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/**
 * Playing before a screen: the transport and the screen side by side, each told what the other
 * does, and one ordered end of both.
 */
public final class Performance {
  private static final int END_SECONDS = 2;

  /** Opens the output for some laps. */
  public interface Output {
    /**
     * The transport on that output.
     *
     * @param listener hears of its moments
     * @param say takes one line for the player
     */
    Transport open(LapSource laps, Consumer<SequencerEvent> listener, Consumer<String> say);
  }

  /** A MIDI instrument or foot pedals, or neither. */
  public interface Instrument {
    /**
     * Listens from now on; gives what ends it.
     *
     * @param player gets the messages
     * @param events gets the port's losses and returns
     */
    Runnable listen(Consumer<Received> player, Consumer<SequencerEvent> events);
  }

  /**
   * Where takes and the practice log are kept.
   *
   * @param files the folder of the takes
   * @param chart the chart's text, as it is kept with a take
   * @param keyShift how far the keys played lie from those of that text, in semitones
   * @param record the name of a take that is recorded from the start; empty for none
   * @param log what was practised
   */
  public record Takes(
      TakeFiles files, String chart, int keyShift, Optional<String> record, PracticeLog log) {}

  /**
   * Who plays.
   *
   * @param instrument what is listened to
   * @param settings what the player chose to see
   * @param takes where what is played is kept
   */
  public record Player(Instrument instrument, KeptSettings settings, Takes takes) {}

  private final Form form;
  private final Optional<Command.Ramp> ramp;
  private final Output output;
  private final Player player;
  private final Optional<Coach.Lesson> lesson;
  private final Chores chores = new Chores(oneThread("chores"));
  private final ExecutorService stage = oneThread("stage");
  private final ExecutorService listener = oneThread("listening");
  private final ExecutorService log = oneThread("log");

  // Known on the thread of the stage only.
  private final Deque<Runnable> ends = new ArrayDeque<>();
  private Optional<BandControl> open = Optional.empty();
  private volatile Optional<Coach> coach = Optional.empty();

  private volatile Arrangement arrangement;

  /** Who speaks when, as the screen has it; there as soon as there is a screen. */
  private volatile Plan plan;

  /**
   * A performance that has not begun.
   *
   * @param ramp how the tempo goes from lap to lap
   * @param lesson what is drilled; empty for free play
   */
  public Performance(
      Arrangement arrangement,
      Optional<Command.Ramp> ramp,
      Output output,
      Player player,
      Optional<Coach.Lesson> lesson) {
    this.arrangement = arrangement;
    this.form = Form.of(arrangement.chart());
    this.ramp = ramp;
    this.output = output;
    this.player = player;
    this.lesson = lesson;
  }

  /** Plays on the full screen until the player leaves. */
  public void onScreen() throws IOException {
    TerminalLook look = TerminalLook.of(System.getenv(), System.getProperty("os.name"));
    try (TerminalScreen screen = TerminalScreen.open(look)) {
      on(screen, look);
    }
  }

  /** Plays on a screen until the player leaves. */
  public void on(TerminalScreen screen, TerminalLook look) {
    Consumer<Consumer<Message>> listen =
        messages -> {
          screen.listen(messages);
          learn(0, messages);
        };
    run(state(arrangement.sketch(), new Terminal(screen.size(), look.ascii())), screen, listen);
  }

  /** Plays with a line of text for each event; a word typed and Enter is a key. */
  public void inLines(PrintWriter out, boolean readsKeys) {
    State start = state(arrangement.facts(0), new Terminal(new Size(0, 0), true));
    Viewer lines =
        new Viewer() {
          @Override
          public void told(State before, Message message, State after) {
            PlainView.lines(before, message, after).stream()
                .map(Printable::line)
                .forEach(out::println);
            out.flush();
          }

          @Override
          public void stepAside(State state) {
            JobControl.stop();
          }
        };
    Consumer<Consumer<Message>> words = readsKeys ? Performance::readWords : keys -> {};
    Consumer<Consumer<Message>> stops =
        keys ->
            JobControl.whenAskedToStop(
                () -> keys.accept(new Message.Stroke("ctrl z", System.nanoTime())));
    run(start, lines, words.andThen(stops));
  }

  private State state(ChartFacts facts, Terminal terminal) {
    Status status = Status.atRest(form.bar(1).section().tempo(), PlaySetup.USUAL.volume());
    return State.of(facts, status, player.settings().read(), terminal);
  }

  /**
   * The screen is shown first; the output is opened meanwhile, and the band begins when it is
   * there.
   *
   * @param listen is given who takes keys
   */
  private void run(State start, Viewer viewer, Consumer<Consumer<Message>> listen) {
    plan = start.facts().plan();
    Runner runner = new Runner(start, viewer, effect -> stage.execute(() -> perform(effect)));
    try (Faults faults = new Faults(() -> runner.offer(new Message.Over()))) {
      listen.accept(runner::offer);
      stage.execute(() -> begin(runner::offer));
      try {
        runner.run();
      } finally {
        end();
      }
      faults.check();
    }
  }

  private void begin(Consumer<Message> shown) {
    Sitting sitting = new Sitting(subject(), Instant::now, entries(shown));
    ends.push(() -> end(sitting));
    Consumer<Message> screen =
        message -> {
          shown.accept(message);
          sitting.hear(message);
        };
    TakeKeeper keeper = new TakeKeeper(player.takes(), listener, screen);
    ends.push(() -> endListening(keeper));
    Listening listening = new Listening(form, () -> plan, keeper, Clock.SYSTEM, listener, screen);
    Consumer<Message> heard =
        message -> {
          screen.accept(message);
          if (message instanceof Message.Beat beat) {
            listening.beat(beat.now());
            coach.ifPresent(there -> there.beat(beat.now()));
          }
        };
    HeardBeats hearing = new HeardBeats(form, Clock.SYSTEM, heard, shift -> learn(shift, screen));
    Consumer<SequencerEvent> events =
        event -> {
          hearing.hear(event);
          listening.hear(event);
          sitting.hear(event);
          coach.ifPresent(there -> there.hear(event));
        };
    Consumer<String> say = words -> screen.accept(new Message.Notice(words));
    Transport transport = output.open(arrangement.laps(), events, say);
    ends.push(transport::close);
    coach = lesson.map(what -> coach(what, transport, screen));
    Runtime.getRuntime().addShutdownHook(new Thread(transport::close, "last notes"));
    Thread ears = daemon(() -> hearing.run(transport.playhead()), "hearing");
    ears.start();
    ends.push(ears::interrupt);
    ends.push(
        player
            .instrument()
            .listen(
                message -> {
                  listening.play(message);
                  coach.ifPresent(there -> there.play(message));
                },
                event -> {
                  HeardBeats.tell(event, screen);
                  listening.hear(event);
                  coach.ifPresent(there -> there.hear(event));
                }));
    open =
        Optional.of(
            new BandControl(
                transport,
                () -> later(Kind.GROOVE, screen, () -> nextGroove(transport, screen)),
                () -> later(Kind.SOUNDS, screen, () -> nextSounds(transport, screen)),
                next ->
                    later(
                        Kind.EXAMPLES,
                        screen,
                        () -> hear(next.apply(arrangement.shown()), transport, screen)),
                fret -> later(Kind.POSITION, screen, () -> stayAround(fret, transport, screen)),
                keeper,
                settings -> later(Kind.SETTINGS, screen, () -> keep(settings, screen))));
    ramp.ifPresent(transport::send);
    transport.send(new Command.Play());
  }

  /** Keeps entries in the log; an exercise has an entry of its own for the minutes played in it. */
  private Consumer<LogEntry> entries(Consumer<Message> screen) {
    Consumer<LogEntry> keep = Sitting.into(player.takes().log(), screen);
    return entry -> {
      if (lesson.isEmpty() || entry.activity() == Activity.TAKE) {
        log.execute(() -> keep.accept(entry));
      }
    };
  }

  private Sitting.Subject subject() {
    String keys =
        form.bars().stream()
            .map(bar -> bar.key().toString())
            .distinct()
            .collect(Collectors.joining(", "));
    return new Sitting.Subject(arrangement.chart().title(), keys);
  }

  /** What was practised is kept before the program ends. */
  private void end(Sitting sitting) {
    sitting.end();
    await(log);
  }

  /** What is recorded is kept before anything else ends. */
  private void endListening(TakeKeeper keeper) {
    keeper.close();
    await(listener);
  }

  /** Lets a thread do what it has been given, within its time. */
  private static void await(ExecutorService thread) {
    thread.shutdown();
    try {
      thread.awaitTermination(END_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void perform(Effect effect) {
    if (effect instanceof Effect.Grade given) {
      coach.ifPresent(there -> there.grade(given.grade()));
    } else {
      open.ifPresent(there -> there.perform(effect));
    }
  }

  private Coach coach(Coach.Lesson what, Transport transport, Consumer<Message> screen) {
    Coach.Band band =
        new Coach.Band() {
          @Override
          public void follow(Arrangement other) {
            later(
                Kind.EXAMPLES,
                screen,
                () -> {
                  Performance.this.follow(other, transport);
                  learn(transport.status().keyShift(), screen);
                });
          }

          @Override
          public void send(Command command) {
            transport.send(command);
          }

          @Override
          public void show(Message message) {
            screen.accept(message);
          }
        };
    return new Coach(what, arrangement, band, Clock.SYSTEM, listener);
  }

  /** Ends what was begun, the latest first; an output that hangs is left to itself. */
  private void end() {
    stage.execute(() -> ends.forEach(Runnable::run));
    await(stage);
  }

  /**
   * Does what takes its time; where it fails the player is told, and the music goes on as it was.
   */
  private void later(Kind kind, Consumer<Message> screen, Runnable work) {
    chores.add(
        kind,
        () -> {
          try {
            work.run();
          } catch (RuntimeException e) {
            String words = CommandFailure.of(e).getMessage();
            screen.accept(new Message.Notice(words.lines().findFirst().orElse("")));
          }
        });
  }

  /** Other example phrases from the next bar on. */
  private void hear(Optional<ExampleChoice> other, Transport transport, Consumer<Message> screen) {
    int bar = transport.playhead().at(Clock.SYSTEM.nanos()).position().bar();
    follow(arrangement.showing(other, Position.of(bar + 1, 1)), transport);
    learn(transport.status().keyShift(), screen);
    String words = other.map(which -> "Listen to " + which.words() + ".").orElse("All yours.");
    screen.accept(new Message.Notice(words));
  }

  /** The shapes and the example phrases around a fret, from the next bar on, or free. */
  private void stayAround(Optional<Integer> fret, Transport transport, Consumer<Message> screen) {
    Arrangement other = arrangement.at(fret);
    if (other.shown().isPresent()) {
      follow(other, transport);
    } else {
      arrangement = other;
    }
    learn(transport.status().keyShift(), screen);
    String words = fret.map(f -> "Your hand stays around fret " + f + ".").orElse("Free again.");
    screen.accept(new Message.Notice(words));
  }

  private void nextGroove(Transport transport, Consumer<Message> screen) {
    Optional<Arrangement> next = arrangement.inNextGroove();
    next.ifPresent(other -> follow(other, transport));
    learn(transport.status().keyShift(), screen);
    String words = next.map(other -> "Groove: " + other.groove()).orElse("No other groove fits.");
    screen.accept(new Message.Notice(words));
  }

  /** Another bank of sounds from the next note on; the music does not wait for it. */
  private static void nextSounds(Transport transport, Consumer<Message> screen) {
    Optional<SoundBank> next = transport.bank().flatMap(SoundBank::next);
    next.ifPresent(transport::play);
    String words =
        next.map(SoundBank::told)
            .orElse(
                transport
                    .bank()
                    .map(bank -> "No other bank of sounds is installed than " + bank.name() + ".")
                    .orElse("No sound of mine is playing here."));
    screen.accept(new Message.Notice(words));
  }

  /** Plays another arrangement from the next bar on; what cannot be played changes nothing. */
  private void follow(Arrangement other, Transport transport) {
    transport.follow(other.laps());
    arrangement = other;
  }

  private void learn(int shift, Consumer<Message> screen) {
    later(
        Kind.FACTS,
        screen,
        () -> {
          ChartFacts facts = arrangement.facts(shift);
          plan = facts.plan();
          screen.accept(new Message.Learned(facts));
        });
  }

  private void keep(ViewSettings settings, Consumer<Message> screen) {
    try {
      player.settings().keep(settings);
    } catch (IOException e) {
      screen.accept(new Message.Notice("This choice cannot be kept: " + e.getMessage()));
    }
  }

  /** A line is a key by its name, an empty one the space bar. */
  private static void readWords(Consumer<Message> keys) {
    Runnable reading =
        () -> {
          BufferedReader in =
              new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset()));
          in.lines()
              .map(line -> line.isBlank() ? "space" : line.strip())
              .forEach(key -> keys.accept(new Message.Stroke(key, System.nanoTime())));
        };
    daemon(reading, "words").start();
  }

  private static ExecutorService oneThread(String name) {
    return Executors.newSingleThreadExecutor(work -> daemon(work, name));
  }

  private static Thread daemon(Runnable work, String name) {
    Thread thread = new Thread(work, name);
    thread.setDaemon(true);
    return thread;
  }
}
