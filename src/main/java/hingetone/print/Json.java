package hingetone.print;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import hingetone.time.Position;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * JSON from plain maps, lists, texts, numbers and optionals, keys in the order they were put. Every
 * number is written out, without an exponent: {@code 100}, not {@code 1E+2}.
 */
public final class Json {
  private static final ObjectWriter WRITER =
      JsonMapper.builder()
          .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
          .addModule(new SimpleModule().addSerializer(new WrittenOut()))
          .build()
          .writer(
              new DefaultPrettyPrinter(
                      Separators.createDefaultInstance()
                          .withObjectFieldValueSpacing(Separators.Spacing.AFTER))
                  .withObjectIndenter(new DefaultIndenter("  ", "\n")));

  private Json() {}

  /** Writes a fraction digit by digit, however small. */
  private static final class WrittenOut extends StdSerializer<Double> {
    WrittenOut() {
      super(Double.class);
    }

    @Override
    public void serialize(Double value, JsonGenerator out, SerializerProvider unused)
        throws IOException {
      out.writeNumber(BigDecimal.valueOf(value));
    }
  }

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
