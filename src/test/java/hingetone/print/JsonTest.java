package hingetone.print;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.time.Beats;
import hingetone.time.Position;
import hingetone.time.Tempo;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class JsonTest {
  @Test
  void keys_keep_their_order_and_an_empty_optional_is_null() {
    String text =
        Json.text(
            Json.object(
                "title", "Harbour \"wall\"",
                "at", Json.position(new Position(5, Beats.parse("2+1/2").orElseThrow())),
                "bend", Optional.empty(),
                "notes", List.of("A", "C")));

    assertThat(text)
        .isEqualTo(
            """
            {
              "title": "Harbour \\"wall\\"",
              "at": {
                "bar": 5,
                "beat": "2+1/2"
              },
              "bend": null,
              "notes": [ "A", "C" ]
            }
            """);
  }

  /** RFC 8259, section 7: any character may be escaped, those beyond 16 bits as a pair. */
  @Test
  void what_it_says_is_the_same_in_every_character_set() {
    assertThat(Json.text(Json.object("title", "Gr\u00fcn \ud83c\udfb8 \u009b")))
        .isEqualTo("{\n  \"title\": \"Gr\\u00fcn \\ud83c\\udfb8 \\u009b\"\n}\n");
  }

  @Test
  void numbers_are_written_out_without_an_exponent() {
    Object tree =
        List.of(
            new BigDecimal("1E+2"),
            new BigDecimal("112.50"),
            0.00004,
            0.25,
            120_000_000.0,
            7,
            Tempo.of(400).bpm());

    assertThat(Json.text(tree)).isEqualTo("[ 100, 112.50, 0.000040, 0.25, 120000000, 7, 400 ]\n");
  }
}
