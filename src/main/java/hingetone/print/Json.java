package hingetone.print;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectWriter;
import hingetone.time.Position;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** JSON from plain maps, lists, texts, numbers and optionals, keys in the order they were put. */
public final class Json {
  private static final ObjectWriter WRITER =
      new ObjectMapper()
          .writer(
              new DefaultPrettyPrinter(
                      Separators.createDefaultInstance()
                          .withObjectFieldValueSpacing(Separators.Spacing.AFTER))
                  .withObjectIndenter(new DefaultIndenter("  ", "\n")));

  private Json() {}

  /**
   * An object with its keys in the order given: {@code object("bar", 5, "beat", "2+1/2")}. An empty
   * {@link Optional} becomes {@code null}, a full one its value.
   *
   * @param keysAndValues names and values by turns
   */
  public static Map<String, Object> object(Object... keysAndValues) {
    Map<String, Object> object = new LinkedHashMap<>();
    for (int i = 0; i < keysAndValues.length; i += 2) {
      Object value = keysAndValues[i + 1];
      object.put(
          (String) keysAndValues[i], value instanceof Optional<?> o ? o.orElse(null) : value);
    }
    return object;
  }

  /** A position as every answer writes it: {@code {"bar": 5, "beat": "2+1/2"}}. */
  public static Map<String, Object> position(Position position) {
    return object("bar", position.bar(), "beat", position.beat().toString());
  }

  /**
   * The text of a tree of maps, lists, texts, numbers, booleans and nulls, ended by a line break.
   * All but printable ASCII is escaped (RFC 8259, section 7), so that nothing is lost on the way,
   * whatever the character set.
   */
  public static String text(Object tree) {
    try {
      return escaped(WRITER.writeValueAsString(tree)) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException("not plain values: " + e.getOriginalMessage(), e);
    }
  }

  /** Outside its texts JSON holds nothing that needs it. */
  private static String escaped(String json) {
    StringBuilder out = new StringBuilder(json.length());
    json.codePoints()
        .forEach(
            c -> {
              if (c == '\n' || c >= ' ' && c <= '~') {
                out.appendCodePoint(c);
              } else {
                Character.toString(c)
                    .chars()
                    .forEach(unit -> out.append(String.format("\\u%04x", unit)));
              }
            });
    return out.toString();
  }
}
