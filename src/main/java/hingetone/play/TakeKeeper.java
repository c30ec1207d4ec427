package hingetone.play;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.midi.Received;
import hingetone.screen.Message;
import hingetone.take.PlayedNotes;
import hingetone.take.Take;
import hingetone.take.TakeEvent;
import hingetone.take.TakeFiles.Journal;
import hingetone.take.TakeMidi;
import hingetone.text.reading.Source;
import java.io.IOException;
import java.io.OutputStream;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

/**
 * Records takes, and always holds the last minutes so that what was just played can still be kept.
 * A take that cannot be written ends with a line for the player; the music goes on.
 */
public final class TakeKeeper {
  private static final long HELD_NANOS = TimeUnit.MINUTES.toNanos(4);
  private static final DateTimeFormatter NAME = DateTimeFormatter.ofPattern("yyyy-MM-dd-HHmm");

  private record Held(TakeEvent event, long nanos) {}

  private final Performance.Takes takes;
  private final Executor thread;
  private final Consumer<Message> screen;

  /** The last minutes, from a bar line on. */
  private final Deque<Held> lately = new ArrayDeque<>();

  /** What the instrument was set to when the last minutes began. */
  private final PlayedNotes before = new PlayedNotes();

  private Optional<Journal> journal = Optional.empty();

  /**
   * Keeps nothing yet.
   *
   * @param thread does the work, one thing after the other
   * @param screen is told what is recorded
   */
  TakeKeeper(Performance.Takes takes, Executor thread, Consumer<Message> screen) {
    this.takes = takes;
    this.thread = thread;
    this.screen = screen;
    thread.execute(this::finishOld);
    takes.record().ifPresent(name -> thread.execute(() -> begin(name)));
  }

  /** What a program that was killed left unfinished. */
  private void finishOld() {
    try {
      takes.files().finish(TakeKeeper::writeMidi).forEach(n -> tell("Kept from last time: " + n));
    } catch (IOException e) {
      tell("An unfinished take cannot be finished: " + e.getMessage());
    }
  }

  /** Adds an event; on the thread that was given. */
  void add(TakeEvent told, long nanos) {
    TakeEvent event = fromChart(told);
    lately.add(new Held(event, nanos));
    if (event instanceof TakeEvent.Bar) {
      forgetBefore(nanos - HELD_NANOS);
    }
    journal.ifPresent(open -> write(open, event));
  }

  /** Keys count from those of the chart's text. */
  private TakeEvent fromChart(TakeEvent event) {
    return event instanceof TakeEvent.Bar bar
        ? new TakeEvent.Bar(bar.number(), bar.keyShift() + takes.keyShift())
        : event;
  }

  private static void follow(PlayedNotes notes, TakeEvent event) {
    if (event instanceof TakeEvent.Sent sent) {
      notes.take(sent.message());
    } else if (event instanceof TakeEvent.Lost lost) {
      notes.lost(lost.nanos());
    }
  }

  /** Forgets whole bars. */
  private void forgetBefore(long nanos) {
    while (beginsAnew(nanos)) {
      do {
        follow(before, lately.remove().event());
      } while (!(lately.element().event() instanceof TakeEvent.Bar));
    }
  }

  /** Whether a bar after the first of those held has begun before a moment. */
  private boolean beginsAnew(long nanos) {
    return lately.stream()
        .skip(1)
        .filter(held -> held.event() instanceof TakeEvent.Bar)
        .findFirst()
        .filter(next -> next.nanos() <= nanos)
        .isPresent();
  }

  /** Records from the next bar on under a name, or ends what is recorded; never waits. */
  void recordOrEnd() {
    thread.execute(
        () -> {
          if (journal.isPresent()) {
            end();
          } else {
            begin(today());
          }
        });
  }

  /** Keeps the last minutes as a take; never waits. */
  void keepLast() {
    thread.execute(
        () -> {
          boolean played = lately.stream().anyMatch(h -> h.event() instanceof TakeEvent.Sent);
          if (!played) {
            tell("Nothing was played lately that could be kept.");
            return;
          }
          try {
            Journal last = takes.files().begin(takes.files().free(today()), takes.chart());
            settings(last, before, lately.element().nanos());
            for (Held held : lately) {
              last.add(held.event());
            }
            last.close();
            takes.files().finish(TakeKeeper::writeMidi);
            tell("Kept as " + last.name() + ".");
          } catch (IOException e) {
            tell("It cannot be kept: " + e.getMessage());
          }
        });
  }

  /** Ends what is recorded; never waits. */
  void close() {
    thread.execute(() -> journal.ifPresent(open -> end()));
  }

  private static String today() {
    return LocalDateTime.now().format(NAME);
  }

  private void begin(String wanted) {
    String name = takes.files().free(wanted);
    try {
      Journal open = takes.files().begin(name, takes.chart());
      settings(open, now(), 0);
      journal = Optional.of(open);
      screen.accept(new Message.Recording(Optional.of(name)));
      tell("Recording " + name + ".");
    } catch (IOException e) {
      tell("No take can be recorded: " + e.getMessage());
    }
  }

  /** What the instrument is set to now. */
  private PlayedNotes now() {
    PlayedNotes now = new PlayedNotes();
    before.settings(0).forEach(now::take);
    lately.forEach(held -> follow(now, held.event()));
    return now;
  }

  private static void settings(Journal open, PlayedNotes notes, long nanos) throws IOException {
    for (Received message : notes.settings(nanos)) {
      open.add(new TakeEvent.Sent(message));
    }
  }

  private void end() {
    journal.ifPresent(
        open -> {
          journal = Optional.empty();
          screen.accept(new Message.Recording(Optional.empty()));
          try {
            open.close();
            takes.files().finish(TakeKeeper::writeMidi);
            tell("The take " + open.name() + " is kept.");
          } catch (IOException e) {
            tell("The take " + open.name() + " cannot be finished: " + e.getMessage());
          }
        });
  }

  private void write(Journal open, TakeEvent event) {
    try {
      open.add(event);
    } catch (IOException e) {
      tell("Recording has ended, the take cannot be written: " + e.getMessage());
      end();
    }
  }

  private void tell(String words) {
    screen.accept(new Message.Notice(words));
  }

  /**
   * Writes a take's notes.
   *
   * @param text its chart
   * @throws IOException also where the chart cannot be read any more
   */
  public static void writeMidi(String text, Take take, OutputStream out) throws IOException {
    Chart chart =
        ChartReader.read(new Source("", text))
            .value()
            .orElseThrow(() -> new IOException("its chart cannot be read any more"));
    TakeMidi.write(chart.title(), Form.of(chart), take, out);
  }
}
