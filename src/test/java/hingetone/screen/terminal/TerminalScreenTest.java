package hingetone.screen.terminal;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.screen.Look;
import hingetone.screen.Look.Depth;
import hingetone.screen.Message;
import hingetone.screen.Size;
import hingetone.screen.State;
import hingetone.screen.States;
import hingetone.screen.View;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.jline.terminal.Terminal.Signal;
import org.jline.utils.ScreenTerminal;
import org.jline.utils.ScreenTerminal.VirtualTerminal;
import org.junit.jupiter.api.Test;

/** Against JLine's own model of a terminal, which reads what is sent as a terminal would. */
class TerminalScreenTest {
  private static final Look LOOK = new Look(Depth.MANY, false);

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
    try (TerminalScreen screen = TerminalScreen.on(terminal.terminal(), LOOK)) {
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
    try (TerminalScreen screen = TerminalScreen.on(terminal.terminal(), LOOK)) {
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
    try (TerminalScreen screen = TerminalScreen.on(terminal.terminal(), LOOK)) {
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
    try (TerminalScreen screen = TerminalScreen.on(terminal.terminal(), LOOK)) {
      screen.listen(heard::add);
      terminal.terminal().setSize(org.jline.terminal.Size.of(100, 30));
      terminal.terminal().raise(Signal.WINCH);
      assertThat(heard.poll(10, TimeUnit.SECONDS))
          .isEqualTo(new Message.Resized(new Size(30, 100)));
    }
  }
}
