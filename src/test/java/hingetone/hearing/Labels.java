package hingetone.hearing;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import hingetone.text.Choice;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The labels of a sound of the labelled set ({@code src/build/hearing/README.md}). */
public final class Labels {
  private Labels() {}

  /**
   * One note, or two strings struck together.
   *
   * @param at seconds of the attack
   * @param end seconds; where the next begins at the latest
   * @param pitches MIDI numbers as they sound, the lower first
   * @param struck MIDI number of the pitch that the lowest begins with
   * @param kind how it begins
   * @param technique how it is played
   */
  public record Moment(
      double at,
      double end,
      List<Double> pitches,
      double struck,
      Onset.Kind kind,
      Technique technique) {}

  /** What is played in a sound, in order of time. */
  public static List<Moment> read(Path json) throws IOException {
    JsonNode labels = new ObjectMapper().readTree(json.toFile());
    double sharp = labels.get("tuningCents").asDouble() / 100;
    List<JsonNode> notes = new ArrayList<>();
    labels.get("notes").forEach(notes::add);
    notes.sort(Comparator.comparingDouble(Labels::at));
    Map<String, List<JsonNode>> together = new LinkedHashMap<>();
    for (JsonNode note : notes) {
      JsonNode stop = note.get("stop");
      String moment = stop.isNull() ? "at " + at(note) : "stop " + stop.get("group").asInt();
      together.computeIfAbsent(moment, none -> new ArrayList<>()).add(note);
    }
    List<List<JsonNode>> moments = List.copyOf(together.values());
    List<Moment> read = new ArrayList<>();
    for (int i = 0; i < moments.size(); i++) {
      double next = i + 1 < moments.size() ? at(moments.get(i + 1).get(0)) : Double.MAX_VALUE;
      read.add(moment(moments.get(i), sharp, next));
    }
    return read;
  }

  private static Moment moment(List<JsonNode> notes, double sharp, double next) {
    double end = notes.stream().mapToDouble(note -> note.get("end").asDouble()).max().orElseThrow();
    List<Double> pitches =
        notes.stream().map(note -> note.get("reached").asDouble() + sharp).sorted().toList();
    JsonNode first = notes.get(0);
    return new Moment(
        at(first),
        Math.min(end, next),
        pitches,
        first.get("struck").asDouble() + sharp,
        kind(first.get("touch").asText()),
        Choice.named(Technique.values(), first.get("kind").asText()).orElseThrow());
  }

  private static double at(JsonNode note) {
    return note.get("at").asDouble();
  }

  private static Onset.Kind kind(String touch) {
    return switch (touch) {
      case "picked", "palm" -> Onset.Kind.PICKED;
      case "hammer-on", "pull-off" -> Onset.Kind.LEGATO;
      case "slide" -> Onset.Kind.SLIDE;
      default -> throw new IllegalArgumentException("a touch I do not know: " + touch);
    };
  }
}
