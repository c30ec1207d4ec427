package hingetone.print;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.PrettyPrinter;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import hingetone.time.Position;
import java.io.IOException;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * JSON from plain maps, lists, texts, numbers and optionals, keys in the order they were put. Every
 * number is written out, without an exponent: {@code 100}, not {@code 1E+2}.
 */
public final class Json {
  private static final JsonFactory FACTORY =
      JsonFactory.builder().enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN).build();

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
    StringWriter text = new StringWriter();
    try (JsonGenerator out = FACTORY.createGenerator(text)) {
      out.setPrettyPrinter(layout());
      write(tree, out);
    } catch (IOException e) {
      throw new IllegalStateException("a text in memory takes everything", e);
    }
    return escaped(text.toString()) + "\n";
  }

  private static PrettyPrinter layout() {
    return new DefaultPrettyPrinter(
            Separators.createDefaultInstance()
                .withObjectFieldValueSpacing(Separators.Spacing.AFTER))
        .withObjectIndenter(new DefaultIndenter("  ", "\n"));
  }

  private static void write(Object value, JsonGenerator out) throws IOException {
    if (value instanceof Map<?, ?> object) {
      out.writeStartObject();
      for (Map.Entry<?, ?> entry : object.entrySet()) {
        out.writeFieldName((String) entry.getKey());
        write(entry.getValue(), out);
      }
      out.writeEndObject();
    } else if (value instanceof List<?> list) {
      out.writeStartArray();
      for (Object item : list) {
        write(item, out);
      }
      out.writeEndArray();
    } else {
      writePlain(value, out);
    }
  }

  private static void writePlain(Object value, JsonGenerator out) throws IOException {
    if (value == null) {
      out.writeNull();
    } else if (value instanceof String text) {
      out.writeString(text);
    } else if (value instanceof Boolean truth) {
      out.writeBoolean(truth);
    } else if (value instanceof Number number) {
      out.writeNumber(new BigDecimal(number.toString()));
    } else {
      throw new IllegalArgumentException("not a plain value: " + value.getClass());
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
