package hingetone.screen.terminal;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNoException;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import org.jline.utils.NonBlocking;
import org.jline.utils.NonBlockingReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Sequences as xterm's own list of control sequences (ctlseqs) and the terminals named have them.
 */
class KeysTest {
  private static final Duration TEN_SECONDS = Duration.ofSeconds(10);

  /** Nothing comes for as long as anybody waits. */
  private static final char SILENCE = '\uFFFF';

  /** What was typed, without a terminal and without waiting. */
  private static final class Typed extends NonBlockingReader {
    private final String text;
    private int at;

    Typed(String text) {
      this.text = text;
    }

    @Override
    protected int read(long timeout, boolean isPeek) {
      int c = at < text.length() ? text.charAt(at++) : EOF;
      return c == SILENCE ? READ_EXPIRED : c;
    }

    @Override
    public int readBuffered(char[] b, int off, int len, long timeout) {
      throw new UnsupportedOperationException("one character at a time");
    }

    @Override
    public void close() {}
  }

  private static List<String> keys(String typed) throws IOException {
    Keys keys = new Keys(new Typed(typed));
    List<String> names = new ArrayList<>();
    for (Optional<String> key = keys.next(); key.isPresent(); key = keys.next()) {
      names.add(key.get());
    }
    return names;
  }

  @Test
  void characters_are_themselves_and_controls_have_names() throws IOException {
    assertThat(keys("a?ß漢\ud83c\udfb8 \r\n\t\003\014\032\177\b"))
        .containsExactly(
            "a",
            "?",
            "ß",
            "漢",
            "\ud83c\udfb8",
            "space",
            "enter",
            "enter",
            "tab",
            "ctrl c",
            "ctrl l",
            "ctrl z",
            "backspace",
            "backspace");
    assertThat(keys(SILENCE + "a" + SILENCE + SILENCE + "b")).containsExactly("a", "b");
    assertThat(keys("\000\001\034\037\u0080\u009b")).isEmpty();
  }

  @Test
  void arrows_and_their_neighbours_are_known_in_every_form() throws IOException {
    assertThat(keys("\033[A\033OB\033[C\033OD\033[5~\033[6~"))
        .containsExactly("up", "down", "right", "left", "page up", "page down");
    assertThat(keys("\033[H\033OH\033[1~\033[7~")).containsOnly("home").hasSize(4);
    assertThat(keys("\033[F\033OF\033[4~\033[8~")).containsOnly("end").hasSize(4);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\033[3~", // delete
        "\033[2~", // insert
        "\033OP", // F1
        "\033[15~", // F5
        "\033[[A", // F1 on Linux' own console
        "\033[[E",
        "\033[1;5A", // up with Ctrl
        "\033[27;2;13~",
        "\033d", // d with Alt
        "\033[<0;12;3M", // a mouse
        "\033[?1;2c", // a terminal's answer
        "\033[I"
      })
  void a_key_without_a_name_does_nothing_and_none_of_its_characters_acts(String sequence)
      throws IOException {
    assertThat(keys("a" + sequence + "b")).containsExactly("a", "b");
  }

  @Test
  void escape_alone_is_a_key_and_so_is_each_of_two() throws IOException {
    assertThat(keys("\033" + SILENCE + "a\033\033[A\033"))
        .containsExactly("esc", "a", "esc", "up", "esc");
    assertThat(keys("\033[" + SILENCE + "a\033[1" + SILENCE + "b\033O" + SILENCE + "c"))
        .containsExactly("a", "b", "c");
  }

  @Test
  void a_terminal_can_be_closed_while_a_key_is_awaited() throws Exception {
    CountDownLatch waits = new CountDownLatch(1);
    InputStream silent =
        new InputStream() {
          @Override
          public synchronized int read() {
            waits.countDown();
            try {
              wait();
            } catch (InterruptedException e) {
              Thread.currentThread().interrupt();
            }
            return -1;
          }
        };
    NonBlockingReader reader =
        NonBlocking.nonBlocking("test", NonBlocking.nonBlocking("test", silent), UTF_8);
    Thread reading = new Thread(() -> assertThatNoException().isThrownBy(new Keys(reader)::next));
    reading.setDaemon(true);
    reading.start();
    waits.await();
    assertThat(CompletableFuture.runAsync(() -> close(reader))).succeedsWithin(TEN_SECONDS);
  }

  private static void close(NonBlockingReader reader) {
    try {
      reader.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void pasted_text_is_dropped_whatever_it_holds() throws IOException {
    String pasted = "qdb\003\032.\r\n\033[A\033[200~\033\033[201\033[20 0~\u00df";
    assertThat(keys("a\033[200~" + pasted + "\033[201~b\033[200~\033[201~c"))
        .containsExactly("a", "b", "c");
  }

  @Test
  void a_paste_whose_end_got_lost_is_over_when_nothing_more_comes() throws IOException {
    assertThat(keys("\033[200~dq" + SILENCE + "a")).containsExactly("a");
    assertThat(keys("\033[200~dq")).isEmpty();
  }
}
