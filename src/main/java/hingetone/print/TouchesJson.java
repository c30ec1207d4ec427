package hingetone.print;

import static hingetone.print.Json.object;

import hingetone.neck.Bend;
import hingetone.neck.DoubleStop;
import hingetone.neck.Figure;
import hingetone.neck.Fretboard;
import hingetone.neck.HeldBend;
import hingetone.neck.Shape;
import hingetone.theory.Scale;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What fingers do in the shapes of a scale, each once for the whole neck. A bend or a double stop
 * lies in every shape that has its frets.
 */
final class TouchesJson {
  private final Fretboard neck;
  private final List<Shape> shapes;

  private TouchesJson(Fretboard neck, List<Shape> shapes) {
    this.neck = neck;
    this.shapes = shapes;
  }

  static Object tree(Fretboard neck, Scale scale, List<Shape> shapes) {
    TouchesJson json = new TouchesJson(neck, shapes);
    return object(
        "scale", scale.toString(),
        "bends", json.each(Bend::all).map(TouchesJson::bend).toList(),
        "heldBends", json.each(HeldBend::all).map(json::heldBend).toList(),
        "doubleStops", json.doubleStops());
  }

  private <T> Stream<T> each(Function<Shape, List<T>> ofShape) {
    return shapes.stream().flatMap(shape -> ofShape.apply(shape).stream()).distinct();
  }

  private static Object bend(Bend bend) {
    return object(
        "string", bend.from().string(),
        "fret", bend.from().fret(),
        "cents", bend.size().cents(),
        "from", bend.from().pitch().toString(),
        "to", bend.to().toString(),
        "release", bend.release().map(Object::toString));
  }

  /** A bend by its place and size, the note held above it, the same an octave away. */
  private Object heldBend(HeldBend pair) {
    Figure figure = Figure.of(pair);
    return object(
        "string", pair.bend().from().string(),
        "fret", pair.bend().from().fret(),
        "cents", pair.bend().size().cents(),
        "heldString", pair.held().string(),
        "heldFret", pair.held().fret(),
        "octaveLower", figure.octaves(neck, -1).map(MapJson::spots),
        "octaveHigher", figure.octaves(neck, 1).map(MapJson::spots));
  }

  /** For each pair of strings the frets on both and, in the same order, the intervals. */
  private List<Object> doubleStops() {
    Map<List<Integer>, List<DoubleStop>> byStrings =
        each(DoubleStop::all)
            .collect(
                Collectors.groupingBy(
                    stop -> List.of(stop.low().string(), stop.high().string()),
                    LinkedHashMap::new,
                    Collectors.toList()));
    return byStrings.entrySet().stream()
        .map(
            entry ->
                (Object)
                    object(
                        "strings", entry.getKey(),
                        "frets", each(entry, s -> List.of(s.low().fret(), s.high().fret())),
                        "intervals", each(entry, s -> s.interval().toString())))
        .toList();
  }

  private static List<Object> each(
      Map.Entry<List<Integer>, List<DoubleStop>> stops, Function<DoubleStop, Object> value) {
    return stops.getValue().stream().map(value).toList();
  }
}
