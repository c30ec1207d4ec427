package hingetone.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class PrintableTest {
  /** The table "Bidi_Control" of Unicode's PropList.txt (UAX 9, table 4; from memory). */
  private static final Set<Integer> BIDIRECTIONAL =
      Set.of(
          0x061C, 0x200E, 0x200F, 0x202A, 0x202B, 0x202C, 0x202D, 0x202E, 0x2066, 0x2067, 0x2068,
          0x2069);

  /** The controls of ECMA-48: C0 (its 5.2), DEL, and C1 (its 5.3). */
  private static boolean isControl(int c) {
    return c < 0x20 || c >= 0x7F && c <= 0x9F;
  }

  /** Production 2 of XML 1.0 (W3C Recommendation, fifth edition). */
  private static boolean isXml(int c) {
    return c == 9
        || c == 0xA
        || c == 0xD
        || c >= 0x20 && c <= 0xD7FF
        || c >= 0xE000 && c <= 0xFFFD
        || c >= 0x10000;
  }

  @Test
  void nothing_passes_that_a_terminal_obeys_or_xml_forbids_and_the_width_stays() {
    List<String> wrong = new ArrayList<>();
    for (int c = 0; c <= Character.MAX_CODE_POINT; c++) {
      String written = Character.toString(c);
      String shown = Printable.line(written);
      int passed = shown.codePointAt(0);
      if (isControl(passed)
          || BIDIRECTIONAL.contains(passed)
          || !isXml(passed)
          || DisplayWidth.of(written) != DisplayWidth.of(shown)) {
        wrong.add("U+%04X".formatted(c));
      }
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  void words_of_all_scripts_and_pictures_pass_as_they_are() {
    String words = "Größe × ¾ … Ελλάδα שלום العربية 港の壁 한국어 می‌خواهم 👩‍🎤 é 🚀";
    assertThat(Printable.line(words)).isEqualTo(words);
  }

  @Test
  void lines_stay_in_a_text_and_not_in_a_line() {
    String text = "one\r\ntwo\tand\rthree\n\u001b[31m";
    assertThat(Printable.text(text)).isEqualTo("one\ntwo and·three\n·[31m");
    assertThat(Printable.line(text)).isEqualTo("one··two and·three··[31m");
  }

  @Test
  void every_way_to_write_leads_through_the_gate() {
    StringWriter written = new StringWriter();
    PrintWriter out = new GatedWriter(new PrintWriter(written));
    out.print("\u0007a");
    out.write(new char[] {'\u001b', 'b'}, 0, 2);
    out.write('\u009b');
    out.append("\u202ec").append('\u0007').printf("%s%n", "\u001b");
    out.println("d\ne\u009b");
    assertThat(written.toString().replace(System.lineSeparator(), "\n"))
        .isEqualTo("·a·b··c··\nd\ne·\n");
  }

  @Test
  void a_sign_stands_for_each_character_that_does_not_pass() {
    String all =
        IntStream.of(0, 7, 0x1B, 0x85, 0xAD, 0x2028, 0xFEFF, 0xD800, 0xE0041, 0xFFFF)
            .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
            .toString();
    assertThat(Printable.line(all)).isEqualTo("·".repeat(10));
    assertThat(DisplayWidth.of(all)).isEqualTo(10);
  }
}
