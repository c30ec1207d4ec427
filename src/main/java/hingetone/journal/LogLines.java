package hingetone.journal;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.StringWriter;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Entries as lines of JSON, one object a line, to carry a log from one machine to another. */
public final class LogLines {
  private static final JsonFactory FACTORY = new JsonFactory();

  private LogLines() {}

  /** The line of an entry, without its end. */
  public static String of(LogEntry entry) {
    StringWriter line = new StringWriter();
    try (JsonGenerator out = FACTORY.createGenerator(line)) {
      out.writeStartObject();
      out.writeStringField("start", entry.start().toString());
      out.writeStringField("activity", entry.activity().toString());
      out.writeStringField("chart", entry.chart());
      out.writeStringField("keys", entry.keys());
      out.writeNumberField("seconds", entry.seconds());
      write(out, "bpm", entry.bpm());
      write(out, "score", entry.score());
      out.writeEndObject();
    } catch (IOException e) {
      throw new IllegalStateException("a text in memory takes everything", e);
    }
    return line.toString();
  }

  private static void write(JsonGenerator out, String name, Optional<Double> value)
      throws IOException {
    if (value.isPresent()) {
      out.writeNumberField(name, value.get());
    } else {
      out.writeNullField(name);
    }
  }

  /**
   * Reads lines; empty ones are passed over.
   *
   * @param name what the lines come from, for a message
   * @throws LogFailure with the first line that is no entry
   */
  public static List<LogEntry> read(String name, List<String> lines) throws LogFailure {
    List<LogEntry> entries = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      if (!lines.get(i).isBlank()) {
        try {
          entries.add(read(lines.get(i)));
        } catch (IOException | DateTimeException | IllegalArgumentException e) {
          throw new LogFailure(
              name
                  + ", line "
                  + (i + 1)
                  + ": I expected an entry as log --export writes it, and nothing was added.",
              e);
        }
      }
    }
    return entries;
  }

  private static LogEntry read(String line) throws IOException {
    Map<String, Object> values = new HashMap<>();
    try (JsonParser in = FACTORY.createParser(line)) {
      expect(in.nextToken() == JsonToken.START_OBJECT);
      while (in.nextToken() == JsonToken.FIELD_NAME) {
        String name = in.currentName();
        JsonToken token = in.nextToken();
        expect(token.isScalarValue());
        if (token.isNumeric()) {
          values.put(name, in.getDoubleValue());
        } else if (token == JsonToken.VALUE_STRING) {
          values.put(name, in.getText());
        }
      }
      expect(in.currentToken() == JsonToken.END_OBJECT && in.nextToken() == null);
    }
    return new LogEntry(
        Instant.parse(text(values, "start")),
        Activity.of(text(values, "activity")).orElseThrow(IllegalArgumentException::new),
        text(values, "chart"),
        text(values, "keys"),
        number(values, "seconds").orElseThrow(IllegalArgumentException::new).longValue(),
        number(values, "bpm"),
        number(values, "score"));
  }

  private static void expect(boolean holds) {
    if (!holds) {
      throw new IllegalArgumentException("no entry");
    }
  }

  private static String text(Map<String, Object> values, String name) {
    expect(values.get(name) instanceof String);
    return (String) values.get(name);
  }

  private static Optional<Double> number(Map<String, Object> values, String name) {
    Object value = values.get(name);
    expect(value == null || value instanceof Double);
    return Optional.ofNullable((Double) value);
  }
}
