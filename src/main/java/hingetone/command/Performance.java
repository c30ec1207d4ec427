package hingetone.command;

import hingetone.chart.Form;
import hingetone.exchange.Shown;
import hingetone.screen.Band;
import hingetone.screen.Facts;
import hingetone.screen.Look;
import hingetone.screen.Message;
import hingetone.screen.PlainView;
import hingetone.screen.Runner;
import hingetone.screen.Settings;
import hingetone.screen.Size;
import hingetone.screen.State;
import hingetone.screen.Viewer;
import hingetone.screen.terminal.TerminalScreen;
import hingetone.text.Printable;
import hingetone.time.Clock;
import hingetone.time.Position;
import hingetone.transport.Command;
import hingetone.transport.LapSource;
import hingetone.transport.Moment;
import hingetone.transport.Setup;
import hingetone.transport.Transport;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;

/**
 * Playing before a screen: the transport and the screen side by side, each told what the other
 * does, and one ordered end of both.
 */
final class Performance {
  /** Opens the output for some laps. */
  interface Output {
    /**
     * The transport on that output.
     *
     * @param listener hears of its moments
     * @param say takes one line for the player
     */
    Transport open(LapSource laps, Consumer<Moment> listener, Consumer<String> say);
  }

  /** Foot pedals, or none. */
  interface Pedals {
    /** Listens from now on; gives what ends it. */
    Runnable listen(Consumer<Message> keys);
  }

  private final Form form;
  private final Optional<Command.Ramp> ramp;
  private final Output output;
  private final Pedals pedals;
  private final ScreenSettings kept;
  private final ExecutorService worker =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread thread = new Thread(task, "facts");
            thread.setDaemon(true);
            return thread;
          });
  private volatile Arrangement arrangement;

  /**
   * A performance that has not begun.
   *
   * @param ramp how the tempo goes from lap to lap
   */
  Performance(
      Arrangement arrangement,
      Optional<Command.Ramp> ramp,
      Output output,
      Pedals pedals,
      ScreenSettings kept) {
    this.arrangement = arrangement;
    this.form = Form.of(arrangement.chart());
    this.ramp = ramp;
    this.output = output;
    this.pedals = pedals;
    this.kept = kept;
  }

  /** Plays on the full screen until the player leaves. */
  void onScreen() throws IOException {
    Look look = Look.of(System.getenv());
    try (TerminalScreen screen = TerminalScreen.open(look)) {
      on(screen, look);
    }
  }

  /** Plays on a screen until the player leaves. */
  void on(TerminalScreen screen, Look look) {
    Consumer<Consumer<Message>> listen =
        messages -> {
          screen.listen(messages);
          worker.execute(() -> messages.accept(new Message.Learned(arrangement.facts(0))));
        };
    run(state(arrangement.sketch(), look.ascii(), screen.size()), screen, listen);
  }

  /** Plays with a line of text for each event; a word typed and Enter is a key. */
  void inLines(PrintWriter out, boolean readsKeys) {
    State start = state(arrangement.facts(0), true, new Size(0, 0));
    Viewer lines =
        new Viewer() {
          @Override
          public void told(State before, Message message, State after) {
            PlainView.lines(before, message, after).stream()
                .map(Printable::line)
                .forEach(out::println);
            out.flush();
          }
        };
    run(start, lines, readsKeys ? Performance::readWords : keys -> {});
  }

  private State state(Facts facts, boolean ascii, Size size) {
    Band band = Band.at(form.bar(1).section().tempo(), Setup.USUAL.volume());
    return State.of(facts, band, kept.read(), ascii, size);
  }

  /**
   * The screen is shown first; the output is opened meanwhile, and the band begins when it is
   * there.
   *
   * @param listen is given who takes keys
   */
  private void run(State start, Viewer viewer, Consumer<Consumer<Message>> listen) {
    CompletableFuture<Stage> stage = new CompletableFuture<>();
    Runner runner =
        new Runner(start, viewer, effect -> stage.thenAccept(there -> there.perform(effect)));
    Hearing hearing = new Hearing(form, Clock.SYSTEM, runner::offer, shift -> learn(shift, runner));
    listen.accept(runner::offer);
    CompletableFuture<Transport> opening =
        CompletableFuture.supplyAsync(
            () ->
                output.open(
                    arrangement.laps(),
                    hearing::hear,
                    words -> runner.offer(new Message.Notice(words))));
    opening.whenComplete(
        (transport, failure) -> {
          if (failure == null) {
            stage.complete(begin(transport, hearing, runner));
          } else {
            runner.offer(new Message.Over());
          }
        });
    Runnable endOfPedals = pedals.listen(runner::offer);
    try {
      runner.run();
    } finally {
      endOfPedals.run();
      end(opening);
    }
  }

  private static void end(CompletableFuture<Transport> opening) {
    try {
      opening.join().close();
    } catch (CompletionException e) {
      if (e.getCause() instanceof CommandFailure failure) {
        throw failure;
      }
      throw e;
    }
  }

  private Stage begin(Transport transport, Hearing hearing, Runner runner) {
    Runtime.getRuntime().addShutdownHook(new Thread(transport::close, "last notes"));
    Thread ears = new Thread(() -> hearing.run(transport.playhead()), "hearing");
    ears.setDaemon(true);
    ears.start();
    ramp.ifPresent(transport::send);
    transport.send(new Command.Play());
    return new Stage(
        transport,
        () -> worker.execute(() -> nextGroove(transport, runner)),
        next -> worker.execute(() -> hear(next.apply(arrangement.shown()), transport, runner)),
        settings -> keep(settings, runner));
  }

  /** Other example phrases from the next bar on. */
  private void hear(Optional<Shown> other, Transport transport, Runner runner) {
    int bar = transport.playhead().at(Clock.SYSTEM.nanos()).position().bar();
    try {
      follow(arrangement.showing(other, Position.of(bar + 1, 1)), transport);
    } catch (CommandFailure e) {
      // A phrase file of the player's own that cannot be read: the music goes on as it was.
      runner.offer(new Message.Notice(e.getMessage().lines().findFirst().orElse("")));
      return;
    }
    learn(transport.status().keyShift(), runner);
    String words = other.map(which -> "Listen to " + which.words() + ".").orElse("All yours.");
    runner.offer(new Message.Notice(words));
  }

  private void nextGroove(Transport transport, Runner runner) {
    Optional<Arrangement> next = arrangement.inNextGroove();
    next.ifPresent(other -> follow(other, transport));
    String words = next.map(other -> "Groove: " + other.feel()).orElse("No other groove fits.");
    runner.offer(new Message.Notice(words));
  }

  /** Plays another arrangement from the next bar on; what cannot be played changes nothing. */
  private void follow(Arrangement other, Transport transport) {
    transport.follow(other.laps());
    arrangement = other;
  }

  private void learn(int shift, Runner runner) {
    worker.execute(() -> runner.offer(new Message.Learned(arrangement.facts(shift))));
  }

  private void keep(Settings settings, Runner runner) {
    worker.execute(
        () -> {
          try {
            kept.keep(settings);
          } catch (IOException e) {
            runner.offer(new Message.Notice("This choice cannot be kept: " + e.getMessage()));
          }
        });
  }

  /** A line is a key by its name, an empty one the space bar. */
  private static void readWords(Consumer<Message> keys) {
    Thread reading =
        new Thread(
            () -> {
              BufferedReader in =
                  new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset()));
              in.lines()
                  .map(line -> line.isBlank() ? "space" : line.strip())
                  .forEach(key -> keys.accept(new Message.Stroke(key, System.nanoTime())));
            },
            "words");
    reading.setDaemon(true);
    reading.start();
  }
}
