package hingetone.text.reading;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.text.DisplayWidth;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class DiagnosticTest {
  private static String report(String text, String marked) {
    Source source = new Source("harbour.yaml", text);
    int start = text.indexOf(marked);
    return new Diagnostic(
            source,
            new Span(start, start + marked.length()),
            "unknown chord quality \"mj7\"",
            "I was reading a chord and expected a quality such as maj7, m7 or 7.",
            Optional.of("Fmaj7"))
        .report();
  }

  @Test
  void a_report_shows_the_place_what_was_expected_and_a_suggestion() {
    assertThat(report("low:\n  bars: |\n    | Cm7 | Fmj7 |\n", "mj7"))
        .isEqualTo(
            """
            harbour.yaml:3:14: unknown chord quality "mj7"
              |
            3 |     | Cm7 | Fmj7 |
              |              ^^^
            I was reading a chord and expected a quality such as maj7, m7 or 7.
            Did you mean Fmaj7?
            """);
  }

  @Test
  void carets_stand_below_the_place_behind_wide_characters_and_tabs() {
    assertThat(report("title: 港の壁\tmj7\n", "mj7"))
        .contains("1 | title: 港の壁 mj7\n")
        .contains("  |               ^^^\n");
  }

  @Test
  void a_rocket_is_two_columns_wide() {
    assertThat(DisplayWidth.of("🚀 Cm7")).isEqualTo(6);
  }

  @Test
  void columns_count_characters_not_their_utf_16_units() {
    assertThat(report("😀😀 mj7", "mj7")).startsWith("harbour.yaml:1:4:");
  }

  @Test
  void a_long_line_is_cut_to_a_window_around_the_place() {
    String report = report("x".repeat(5000) + "mj7" + "y".repeat(5000), "mj7");

    assertThat(report.lines().toList().get(2)).hasSizeLessThan(120).contains("mj7").endsWith("…");
    assertThat(report.lines().toList().get(3).indexOf('^'))
        .isEqualTo(report.lines().toList().get(2).indexOf("mj7"));
  }

  @Test
  void control_characters_never_reach_the_terminal() {
    assertThat(report("\u001b[31m\u0007 mj7", "mj7")).doesNotContain("\u001b", "\u0007");

    Source source = new Source("\u001b]0;", "key:");
    Span all = new Span(0, 4);
    assertThat(new Diagnostic(source, all, "\u0007", "a\tb\nc", Optional.of("\u009b")).report())
        .isEqualTo("·]0;:1:1: ·\n  |\n1 | key:\n  | ^^^^\na b\nc\nDid you mean ·?\n");
  }

  @Test
  void a_place_at_the_very_end_has_one_caret() {
    Source source = new Source("short.yaml", "ab");
    assertThat(Diagnostic.of(source, new Span(2, 2), "something is missing", "").report())
        .isEqualTo("short.yaml:1:3: something is missing\n  |\n1 | ab\n  |   ^\n");
  }

  @Test
  void an_empty_text_has_no_place_to_show() {
    Source source = new Source("empty.yaml", "");
    assertThat(Diagnostic.of(source, new Span(0, 0), "the file is empty", "").report())
        .isEqualTo("empty.yaml: the file is empty\n");
  }

  @Test
  void lines_are_found_whatever_ends_them() {
    Source source = new Source("x", "a\r\nbc\nd");
    assertThat(source.lineCount()).isEqualTo(3);
    assertThat(List.of(source.line(1), source.line(2), source.line(3)))
        .isEqualTo(List.of("a", "bc", "d"));
    assertThat(source.lineOf(3)).isEqualTo(2);
    assertThat(source.columnOf(4)).isEqualTo(2);
    assertThat(source.offsetOfLine(3)).isEqualTo(6);
  }
}
