package hingetone.screen.picture;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.screen.Examples;
import hingetone.screen.picture.TerminalLook.Depth;
import hingetone.screen.view.View;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class PainterTest {
  private static final Size SIZE = new Size(24, 80);

  @Test
  void the_same_picture_sends_nothing() {
    Painter painter = new Painter(new TerminalLook(Depth.MANY, false));
    Frame frame = View.render(Examples.playing(1, "1"), SIZE);
    assertThat(painter.paint(frame)).isNotEmpty();
    assertThat(painter.paint(frame)).isEmpty();
  }

  @Test
  void a_beat_sends_far_less_than_a_picture() {
    Painter painter = new Painter(new TerminalLook(Depth.MANY, false));
    int whole = painter.paint(View.render(Examples.playing(1, "1"), SIZE)).length();
    int beat = painter.paint(View.render(Examples.playing(1, "2"), SIZE)).length();
    assertThat(beat).isLessThan(whole / 4);
  }

  @Test
  void updates_are_wrapped_for_terminals_with_synchronised_updates() {
    String sent =
        new Painter(new TerminalLook(Depth.NONE, false))
            .paint(View.render(Examples.stopped(), SIZE));
    assertThat(sent).startsWith("\033[?2026h").endsWith("\033[?2026l");
  }

  @Test
  void without_colours_no_colour_is_sent() {
    String sent =
        new Painter(new TerminalLook(Depth.NONE, false))
            .paint(View.render(Examples.playing(7, "3"), SIZE));
    assertThat(sent).doesNotContain("38;").doesNotContain(";94").doesNotContain(";35");
  }

  private static TerminalLook look(Map<String, String> environment) {
    return TerminalLook.of(environment, "Linux");
  }

  @Test
  void the_environment_says_what_the_terminal_can_show() {
    String term = "xterm-256color";
    assertThat(look(Map.of("TERM", term, "LANG", "de_DE.UTF-8")))
        .isEqualTo(new TerminalLook(Depth.MANY, false));
    assertThat(look(Map.of("TERM", term, "COLORTERM", "truecolor", "LC_ALL", "C")))
        .isEqualTo(new TerminalLook(Depth.TRUE, true));
    assertThat(look(Map.of("TERM", term, "NO_COLOR", "1")).depth()).isEqualTo(Depth.NONE);
    assertThat(look(Map.of("TERM", term, "NO_COLOR", "")).depth()).isEqualTo(Depth.MANY);
    assertThat(look(Map.of("TERM", "vt220")).depth()).isEqualTo(Depth.SIXTEEN);
    assertThat(look(Map.of("TERM", "dumb")).depth()).isEqualTo(Depth.NONE);
  }

  @Test
  void without_a_type_of_terminal_there_are_lines_except_on_windows_which_names_none() {
    Map<String, String> none = Map.of("LANG", "en_GB.UTF-8");
    for (String system : List.of("Linux", "Mac OS X", "FreeBSD")) {
      assertThat(TerminalLook.isPlain(none, system)).as(system).isTrue();
      assertThat(TerminalLook.of(none, system).depth()).as(system).isEqualTo(Depth.NONE);
    }
    for (String system : List.of("Windows 10", "Windows 11", "Windows Server 2022")) {
      assertThat(TerminalLook.isPlain(none, system)).as(system).isFalse();
      assertThat(TerminalLook.of(none, system).depth()).as(system).isEqualTo(Depth.TRUE);
      assertThat(TerminalLook.of(Map.of("NO_COLOR", "1"), system).depth()).isEqualTo(Depth.NONE);
      assertThat(TerminalLook.isPlain(Map.of("TERM", "dumb"), system)).as(system).isTrue();
    }
    for (String type : List.of("dumb", "dumb-emacs-ansi", "unknown")) {
      assertThat(TerminalLook.isPlain(Map.of("TERM", type), "Linux")).as(type).isTrue();
    }
    assertThat(TerminalLook.isPlain(Map.of("TERM", "frobozz-9"), "Linux")).isFalse();
  }

  /** Relative luminance and contrast as WCAG 2.1 defines them (formula from memory). */
  @Test
  void every_colour_can_be_read_on_black_and_on_white() {
    for (Ink ink : Ink.values()) {
      if (ink != Ink.PLAIN) {
        for (int rgb : new int[] {TerminalLook.rgb(ink), cube(TerminalLook.index(ink))}) {
          double light = luminance(rgb);
          assertThat((light + 0.05) / 0.05).as(ink + " on black").isGreaterThan(4);
          assertThat(1.05 / (light + 0.05)).as(ink + " on white").isGreaterThan(4);
        }
      }
    }
  }

  /** The 6 × 6 × 6 cube of xterm's 256 colours: levels 0, 95, 135, 175, 215, 255. */
  private static int cube(int index) {
    int[] levels = {0, 95, 135, 175, 215, 255};
    int n = index - 16;
    return levels[n / 36] << 16 | levels[n / 6 % 6] << 8 | levels[n % 6];
  }

  private static double luminance(int rgb) {
    return 0.2126 * linear(rgb >> 16)
        + 0.7152 * linear(rgb >> 8 & 255)
        + 0.0722 * linear(rgb & 255);
  }

  private static double linear(int channel) {
    double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }
}
