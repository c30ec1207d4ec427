package hingetone.print;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.time.Beats;
import hingetone.time.Position;
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
}
