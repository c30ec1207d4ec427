package hingetone.transport;

import hingetone.port.Port;
import hingetone.port.PortFailure;
import hingetone.port.PortOutput;
import hingetone.port.TimeLimit;
import hingetone.score.Part;
import hingetone.sequencer.ClockSignals;
import hingetone.sequencer.Command;
import hingetone.sequencer.LapSource;
import hingetone.sequencer.PlaySetup;
import hingetone.sequencer.ReadyLaps;
import hingetone.sequencer.SequencerEvent;
import hingetone.sequencer.Status;
import hingetone.sequencer.Timeline;
import hingetone.sound.OutputLine;
import hingetone.sound.SoundBank;
import hingetone.sound.Synthesizer;
import hingetone.time.Clock;
import hingetone.time.Playhead;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * Plays laps through an output, takes live changes and says where the music is.
 *
 * <p>It starts stopped, at the top; {@link Command.Play} begins. Everything may be called from any
 * thread. The listener is called on the threads that keep the time: it only puts what it gets into
 * a queue.
 */
public final class Transport implements AutoCloseable {
  private static final long END_MILLIS = 300;

  private final Playhead playhead = new Playhead();
  private final Queue<Command> commands = new ConcurrentLinkedQueue<>();
  private final AtomicBoolean closed = new AtomicBoolean();
  private final ThreadPoolExecutor worker;
  private final ReadyLaps laps;
  private final Timeline timeline;
  private final Driver driver;
  private final Thread thread;
  private final Optional<Synthesizer> synthesizer;

  private Transport(
      LapSource source,
      Function<List<Part>, Optional<String>> prepare,
      Consumer<SequencerEvent> listener,
      PlaySetup setup,
      Optional<Synthesizer> synthesizer,
      Function<Playback, Driver> driver) {
    boolean port = synthesizer.isEmpty();
    this.synthesizer = synthesizer;
    this.worker = lapWorker();
    this.laps = new ReadyLaps(source, prepare, listener, worker);
    ClockSignals signals = new ClockSignals(port && setup.midiClock());
    this.timeline = new Timeline(laps, setup, signals, port, playhead);
    this.driver = driver.apply(new Playback(timeline, playhead, commands, Clock.SYSTEM, listener));
    this.thread = daemon(this.driver, "sequencer");
    thread.setPriority(Thread.MAX_PRIORITY);
    thread.start();
  }

  /** One thread; closed, it does nothing any more. */
  private static ThreadPoolExecutor lapWorker() {
    return new ThreadPoolExecutor(
        1,
        1,
        0,
        TimeUnit.SECONDS,
        new LinkedBlockingQueue<>(),
        work -> daemon(work, "laps"),
        new ThreadPoolExecutor.DiscardPolicy());
  }

  private static Thread daemon(Runnable work, String name) {
    Thread thread = new Thread(work, name);
    thread.setDaemon(true);
    return thread;
  }

  /**
   * Plays through the synthesizer; the audio frame is the clock. Both devices are closed with it.
   *
   * @param laps makes the laps; the first is made here and now
   */
  public static Transport withSound(
      LapSource laps,
      PlaySetup setup,
      Synthesizer synthesizer,
      OutputLine line,
      Consumer<SequencerEvent> listener) {
    return new Transport(
        laps,
        parts -> prepare(synthesizer, parts),
        listener,
        setup,
        Optional.of(synthesizer),
        playback -> new SoundDriver(playback, synthesizer, line));
  }

  /** Loads the sounds of parts, and has them measured where that is not done yet. */
  private static Optional<String> prepare(Synthesizer synthesizer, List<Part> parts) {
    synthesizer.bank().measureBehind(parts);
    return synthesizer.prepare(parts);
  }

  /**
   * Plays through a MIDI port; a thread of its own meets the deadlines.
   *
   * @param latencyMillis how much later than it is sent a note is heard, as far as known
   * @throws PortFailure when the port is gone or taken
   */
  public static Transport onPort(
      LapSource laps,
      PlaySetup setup,
      Port port,
      int latencyMillis,
      Consumer<SequencerEvent> listener)
      throws PortFailure {
    PortOutput output = PortOutput.open(port, listener);
    Deadline deadline = Deadline.exact(Clock.SYSTEM);
    Transport transport = onClock(laps, setup, output, deadline, latencyMillis, listener);
    output.watch();
    return transport;
  }

  /** Plays nothing, in time: for a machine without any output. */
  public static Transport onSilentClock(
      LapSource laps, PlaySetup setup, Consumer<SequencerEvent> listener) {
    PlaySetup silent = setup.withoutMidiClock();
    return onClock(laps, silent, PortOutput.none(), Deadline.easy(Clock.SYSTEM), 0, listener);
  }

  private static Transport onClock(
      LapSource laps,
      PlaySetup setup,
      PortOutput output,
      Deadline deadline,
      int latencyMillis,
      Consumer<SequencerEvent> listener) {
    return new Transport(
        laps,
        parts -> Optional.empty(),
        listener,
        setup,
        Optional.empty(),
        playback -> new ClockDriver(playback, deadline, output, latencyMillis * 1_000_000L));
  }

  /** Makes a live change; changes take effect in the order they are sent. */
  public void send(Command command) {
    commands.add(command);
    driver.wake();
  }

  /**
   * Plays another band (a changed groove, say) from the next bar on; waits until its laps are made.
   *
   * @throws RuntimeException what making them throws; then the band stays as it was
   */
  public void follow(LapSource other) {
    laps.follow(other);
    send(new Command.Follow());
  }

  /** The bank whose sounds are heard; empty on a port and on the silent clock. */
  public Optional<SoundBank> bank() {
    return synthesizer.map(Synthesizer::bank);
  }

  /** Plays on with another bank, where there is one. Takes as long as reading its sounds. */
  public void play(SoundBank other) {
    synthesizer.ifPresent(there -> there.change(other));
  }

  /** Where the music is, as it is heard. */
  public Playhead playhead() {
    return playhead;
  }

  /** What holds at the moment. */
  public Status status() {
    return timeline.status();
  }

  /**
   * Lets every note go and closes the output, within half a second, whatever the output is doing.
   * More than once does no harm.
   */
  @Override
  public void close() {
    if (!closed.compareAndSet(false, true)) {
      return;
    }
    worker.shutdownNow();
    driver.end();
    TimeLimit.join(thread, END_MILLIS);
    driver.closeDevice();
  }
}
