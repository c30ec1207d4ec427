package hingetone.screen.terminal;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.screen.Message;
import hingetone.screen.State;
import hingetone.screen.States;
import hingetone.screen.picture.Size;
import hingetone.screen.picture.TerminalLook;
import hingetone.screen.picture.TerminalLook.Depth;
import hingetone.screen.view.View;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.logging.Handler;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.jline.terminal.Attributes;
import org.jline.terminal.Attributes.LocalFlag;
import org.jline.terminal.Terminal;
import org.jline.terminal.Terminal.Signal;
import org.jline.terminal.impl.ExternalTerminal;
import org.jline.utils.ScreenTerminal;
import org.jline.utils.ScreenTerminal.VirtualTerminal;
import org.junit.jupiter.api.Test;

/** Against JLine's own model of a terminal, which reads what is sent as a terminal would. */
class TerminalScreenTest {
  private static final TerminalLook LOOK = new TerminalLook(Depth.MANY, false);

  private static VirtualTerminal terminal(int rows, int columns) throws IOException {
    return ScreenTerminal.withTerminal("test", "xterm-256color", columns, rows);
  }

  /** The rows that a terminal shows, trailing blanks cut. */
  private static String shown(VirtualTerminal terminal) {
    StringBuilder text = new StringBuilder();
    terminal.screen().toString().lines().forEach(l -> text.append(l.stripTrailing()).append('\n'));
    return text.toString();
  }

  @Test
  void a_terminal_shows_what_the_view_says_through_every_change() throws IOException {
    VirtualTerminal terminal = terminal(24, 80);
    try (TerminalScreen screen = TerminalScreen.on(terminal.terminal(), LOOK, () -> {})) {
      for (State state : States.everyTwoBeats()) {
        screen.show(state);
        String expected = View.render(state, state.size()).text();
        assertThat(shown(terminal)).isEqualTo(expected);
      }
    }
  }

  @Test
  void two_hundred_sizes_in_a_row_leave_no_trace() throws IOException {
    long seed = 20;
    Random random = new Random(seed);
    VirtualTerminal terminal = terminal(24, 80);
    try (TerminalScreen screen = TerminalScreen.on(terminal.terminal(), LOOK, () -> {})) {
      State state = States.everyTwoBeats().get(5);
      for (int i = 0; i < 200; i++) {
        Size size = new Size(2 + random.nextInt(45), 5 + random.nextInt(125));
        terminal.screen().setSize(org.jline.terminal.Size.of(size.columns(), size.rows()));
        State resized = States.resized(state, size);
        screen.show(resized);
        assertThat(shown(terminal))
            .as("seed %d, size %s", seed, size)
            .isEqualTo(View.render(resized, size).text());
      }
    }
  }

  @Test
  void keys_have_their_names() throws IOException, InterruptedException {
    VirtualTerminal terminal = terminal(24, 80);
    BlockingQueue<Message> heard = new LinkedBlockingQueue<>();
    try (TerminalScreen screen = TerminalScreen.on(terminal.terminal(), LOOK, () -> {})) {
      screen.listen(heard::add);
      String typed = "a\033[A\033OB\033[C\033OD\033[5~\033[6~\033[H \r\t\003\014?ß";
      terminal.terminal().processInputBytes(typed.getBytes(StandardCharsets.UTF_8));
      for (String name :
          List.of(
              "a",
              "up",
              "down",
              "right",
              "left",
              "page up",
              "page down",
              "home",
              "space",
              "enter",
              "tab",
              "ctrl c",
              "ctrl l",
              "?",
              "ß")) {
        Message message = heard.poll(10, TimeUnit.SECONDS);
        assertThat(message).isInstanceOf(Message.Stroke.class);
        assertThat(((Message.Stroke) message).key()).isEqualTo(name);
      }
    }
  }

  @Test
  void a_change_of_size_is_passed_on() throws IOException, InterruptedException {
    VirtualTerminal terminal = terminal(24, 80);
    BlockingQueue<Message> heard = new LinkedBlockingQueue<>();
    try (TerminalScreen screen = TerminalScreen.on(terminal.terminal(), LOOK, () -> {})) {
      screen.listen(heard::add);
      terminal.terminal().setSize(org.jline.terminal.Size.of(100, 30));
      terminal.terminal().raise(Signal.WINCH);
      assertThat(heard.poll(10, TimeUnit.SECONDS))
          .isEqualTo(new Message.Resized(new Size(30, 100)));
    }
  }

  /** A terminal that keeps every byte it is sent. */
  private final ByteArrayOutputStream sent = new ByteArrayOutputStream();

  private Terminal keeping(String type) throws IOException {
    TerminalScreen.takeTypeAsGiven(type);
    return new ExternalTerminal(
        "test", type, InputStream.nullInputStream(), sent, StandardCharsets.UTF_8);
  }

  private String sentSoFar() {
    return sent.toString(StandardCharsets.UTF_8);
  }

  /** Bracketed paste: DEC private mode 2004, as xterm's list of control sequences has it. */
  @Test
  void while_it_is_open_a_paste_is_marked_as_such() throws IOException {
    TerminalScreen screen = TerminalScreen.on(keeping("xterm"), LOOK, () -> {});
    assertThat(sentSoFar()).contains("\033[?2004h").doesNotContain("\033[?2004l");
    screen.close();
    assertThat(sentSoFar().substring(sentSoFar().indexOf("\033[?2004h"))).contains("\033[?2004l");
  }

  @Test
  void whoever_steps_aside_gives_the_terminal_back_and_draws_anew_when_woken() throws IOException {
    Terminal terminal = keeping("xterm");
    Attributes before = terminal.getAttributes();
    State state = States.everyTwoBeats().get(0);
    List<Boolean> asFound = new ArrayList<>();
    Runnable untilWoken =
        () -> {
          boolean given = sentSoFar().endsWith("\033[?2004l\033[?25h\033[?1049l");
          asFound.add(given && flags(terminal.getAttributes()).equals(flags(before)));
          sent.reset();
        };
    try (TerminalScreen screen = TerminalScreen.on(terminal, LOOK, untilWoken)) {
      screen.show(state);
      assertThat(flags(terminal.getAttributes())).isNotEqualTo(flags(before));
      screen.stepAside(state);
      assertThat(asFound).containsExactly(true);
      assertThat(flags(terminal.getAttributes())).isNotEqualTo(flags(before));
      assertThat(sentSoFar())
          .startsWith("\033[?1049h\033[?25l\033[?2004h")
          .contains("\033[0m\033[2J");
    }
  }

  private static Set<LocalFlag> flags(Attributes attributes) {
    return Set.copyOf(attributes.getLocalFlags());
  }

  @Test
  void a_terminal_that_nobody_has_heard_of_is_used_without_a_word() throws IOException {
    List<LogRecord> warnings = new ArrayList<>();
    Handler keeping =
        new Handler() {
          @Override
          public void publish(LogRecord warning) {
            warnings.add(warning);
          }

          @Override
          public void flush() {}

          @Override
          public void close() {}
        };
    Logger library = Logger.getLogger("org.jline");
    library.addHandler(keeping);
    try (TerminalScreen screen = TerminalScreen.on(keeping("frobozz-9"), LOOK, () -> {})) {
      screen.show(States.everyTwoBeats().get(0));
    } finally {
      library.removeHandler(keeping);
    }
    assertThat(warnings).isEmpty();
    assertThat(sentSoFar()).contains("E minor");
  }
}
