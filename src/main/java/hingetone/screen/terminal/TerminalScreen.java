package hingetone.screen.terminal;

import hingetone.screen.Message;
import hingetone.screen.State;
import hingetone.screen.Viewer;
import hingetone.screen.picture.Frame;
import hingetone.screen.picture.Painter;
import hingetone.screen.picture.Size;
import hingetone.screen.picture.TerminalLook;
import hingetone.screen.view.View;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOError;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Consumer;
import org.jline.terminal.Attributes;
import org.jline.terminal.Terminal;
import org.jline.terminal.Terminal.Signal;
import org.jline.terminal.TerminalBuilder;
import org.jline.terminal.spi.SystemStream;
import org.jline.terminal.spi.TerminalProvider;
import org.jline.utils.InfoCmp;

/**
 * A terminal used as a full screen. While it is open the terminal shows the second screen without a
 * cursor; however the program ends, the terminal is given back as it was.
 */
public final class TerminalScreen implements Viewer, AutoCloseable {
  /** The second screen, no cursor, pasted text marked as such (bracketed paste), all blank. */
  private static final String ENTER = "\033[?1049h\033[?25l\033[?2004h\033[2J";

  private static final String LEAVE = "\033[0m\033[?7h\033[?2004l\033[?25h\033[?1049l";

  private static Optional<CompletableFuture<Terminal>> prepared = Optional.empty();

  private final Terminal terminal;
  private final OutputStream out;
  private final Attributes attributes;
  private final Painter painter;
  private final Runnable untilWoken;
  private final Thread hook = new Thread(this::leaveAtOnce, "restore the terminal");
  private boolean open = true;

  private TerminalScreen(Terminal terminal, TerminalLook look, Runnable untilWoken) {
    this.terminal = terminal;
    this.untilWoken = untilWoken;
    this.out = terminal.output();
    this.painter = new Painter(look);
    this.attributes = terminal.getAttributes();
    enter();
  }

  private synchronized void enter() {
    if (open) {
      write(ENTER);
      terminal.enterRawMode();
    }
  }

  private synchronized void leave() {
    write(LEAVE);
    terminal.setAttributes(attributes);
  }

  /** Whether both ends of the program are a terminal that can do more than print lines. */
  public static boolean isPossible() {
    if (TerminalLook.isPlain(System.getenv(), System.getProperty("os.name"))) {
      return false;
    }
    try {
      TerminalProvider provider = TerminalProvider.load("jni");
      return provider.isSystemStream(SystemStream.Input)
          && provider.isSystemStream(SystemStream.Output);
    } catch (IOException | RuntimeException | LinkageError e) {
      return System.console() != null;
    }
  }

  /** Looks for the terminal on a thread of its own, for {@link #open} to take soon. */
  public static void prepare() {
    prepared = Optional.of(CompletableFuture.supplyAsync(TerminalScreen::found));
  }

  private static Terminal found() {
    if (!isPossible()) {
      throw new IllegalStateException("there is no terminal");
    }
    try {
      return terminal();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Takes the terminal the program was started in.
   *
   * @throws IOException if there is none
   */
  public static TerminalScreen open(TerminalLook look) throws IOException {
    TerminalScreen screen = new TerminalScreen(take(), look, JobControl::stop);
    Runtime.getRuntime().addShutdownHook(screen.hook);
    return screen;
  }

  private static Terminal take() throws IOException {
    try {
      return prepared.isPresent() ? prepared.get().join() : terminal();
    } catch (CompletionException e) {
      throw new IOException(e.getCause().getMessage(), e);
    }
  }

  /**
   * JLine starts another program to talk to a terminal, which takes long: here only where the
   * native library is out of reach.
   */
  private static Terminal terminal() throws IOException {
    takeTypeAsGiven(System.getenv().getOrDefault("TERM", ""));
    // Control characters are for Keys to read: in a paste they mean nothing.
    System.setProperty(TerminalBuilder.PROP_SOFTWARE_SIGNALS, "false");
    TerminalBuilder builder =
        TerminalBuilder.builder().system(true).dumb(false).graphemeCluster(false);
    try {
      return builder.exec(false).build();
    } catch (IOException | IllegalStateException e) {
      return builder.exec(true).build();
    }
  }

  /**
   * Keeps JLine from asking another program what a type of terminal can do, and from a warning over
   * the screen where that has never heard of it: nothing is used here but ECMA-48.
   */
  static void takeTypeAsGiven(String type) {
    InfoCmp.setLoadedInfoCmp(type, InfoCmp.getDefaultInfoCmp("ansi"));
  }

  /**
   * Takes a given terminal.
   *
   * @param untilWoken stops the program while the terminal is somebody else's
   */
  public static TerminalScreen on(Terminal terminal, TerminalLook look, Runnable untilWoken) {
    return new TerminalScreen(terminal, look, untilWoken);
  }

  /** The size now. */
  public Size size() {
    return new Size(terminal.getSize().getRows(), terminal.getSize().getColumns());
  }

  /** Passes on keys and changes of size from now on; a closed input ends it. */
  public void listen(Consumer<Message> to) {
    terminal.handle(Signal.INT, signal -> to.accept(new Message.Over()));
    terminal.handle(
        Signal.WINCH, signal -> whileOpen(() -> to.accept(new Message.Resized(size()))));
    JobControl.whenAskedToStop(() -> strike("ctrl z", to));
    JobControl.whenWoken(() -> whileOpen(() -> woken(to)));
    Thread reading =
        new Thread(
            () -> {
              whileOpen(() -> read(to));
              to.accept(new Message.Over());
            },
            "keys");
    reading.setDaemon(true);
    reading.start();
  }

  private void woken(Consumer<Message> to) {
    enter();
    to.accept(new Message.Resized(size()));
    strike("ctrl l", to);
  }

  private void read(Consumer<Message> to) {
    try {
      Keys keys = new Keys(terminal.reader());
      for (Optional<String> key = keys.next(); key.isPresent(); key = keys.next()) {
        strike(key.get(), to);
      }
    } catch (IOException | IOError e) {
      // Nobody is left to strike a key.
    }
  }

  private static void strike(String key, Consumer<Message> to) {
    to.accept(new Message.Stroke(key, System.nanoTime()));
  }

  /** Does something with the terminal, which may be closed meanwhile. */
  private void whileOpen(Runnable work) {
    try {
      work.run();
    } catch (IllegalStateException e) {
      if (!isClosed()) {
        throw e;
      }
    }
  }

  /** Whether JLine has closed it, as it does first when the program is ended from outside. */
  private boolean isClosed() {
    try {
      terminal.writer();
      return false;
    } catch (IllegalStateException e) {
      return true;
    }
  }

  @Override
  public void show(State state) {
    draw(View.render(state, state.size()));
  }

  @Override
  public void again(State state) {
    painter.forget();
    show(state);
  }

  @Override
  public void stepAside(State state) {
    whileOpen(
        () -> {
          leave();
          untilWoken.run();
          enter();
          again(state);
        });
  }

  private void draw(Frame frame) {
    write(painter.paint(frame));
  }

  private synchronized void write(String text) {
    if (!open || text.isEmpty()) {
      return;
    }
    try {
      out.write(text.getBytes(StandardCharsets.UTF_8));
      out.flush();
    } catch (IOException e) {
      if (isClosed()) {
        open = false;
        return;
      }
      throw new UncheckedIOException("The terminal cannot be written to: " + e.getMessage(), e);
    }
  }

  /** In a shutdown hook JLine may have closed the terminal already, so this writes past it. */
  private synchronized void leaveAtOnce() {
    if (open) {
      open = false;
      try {
        terminal.setAttributes(attributes);
      } catch (RuntimeException | IOError e) {
        // JLine has closed it, or it is gone: the modes are beyond reach.
      }
      try (FileOutputStream direct = new FileOutputStream(FileDescriptor.out)) {
        direct.write(LEAVE.getBytes(StandardCharsets.US_ASCII));
      } catch (IOException e) {
        // The terminal is gone: nothing is left to restore.
      }
    }
  }

  @Override
  public void close() throws IOException {
    try {
      write(LEAVE);
    } catch (UncheckedIOException e) {
      // It takes nothing any more; its modes may still be given back.
    }
    synchronized (this) {
      open = false;
    }
    try {
      terminal.setAttributes(attributes);
      terminal.close();
    } catch (IllegalStateException e) {
      // The program is being ended from outside, and JLine has given the terminal back already.
    }
  }
}
