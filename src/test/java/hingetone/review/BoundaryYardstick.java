package hingetone.review;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.take.PlacedNote;
import hingetone.take.TakeReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Our cuts beside those of the local boundary detection model at its best threshold, on a folder of
 * labelled takes made by {@code src/build/takes}. Run by hand with the folder. A boundary is right
 * within one stroke of a labelled one, each counted once; the take's first note is left out.
 */
final class BoundaryYardstick {
  private static final double TOGETHER = 0.08;

  private record Tally(int right, int told, int wanted) {
    Tally plus(Tally other) {
      return new Tally(right + other.right, told + other.told, wanted + other.wanted);
    }

    double f1() {
      return 2.0 * right / (told + wanted);
    }
  }

  private BoundaryYardstick() {}

  public static void main(String[] args) throws IOException {
    Tally ours = new Tally(0, 0, 0);
    Tally[] model = new Tally[100];
    for (Path file : files(Path.of(args[0]))) {
      String name = file.toString().replaceFirst("\\.mid$", "");
      Chart chart = ChartReader.readFile(name + ".yaml").value().orElseThrow();
      Played played = Played.of(TakeReader.read(file.toFile()), chart, chart.countIn(), 0);
      List<PlacedNote> notes = strokes(played);
      List<Integer> wanted = labelled(name, played, notes);
      ours = ours.plus(tally(wanted, cuts(played, notes)));
      double[] strengths = LocalBoundaries.of(notes);
      for (int k = 0; k < model.length; k++) {
        double threshold = k / 100.0;
        List<Integer> told =
            IntStream.range(1, strengths.length)
                .filter(i -> strengths[i] > threshold)
                .boxed()
                .toList();
        Tally here = tally(wanted, told);
        model[k] = model[k] == null ? here : model[k].plus(here);
      }
    }
    int best = 0;
    for (int k = 0; k < model.length; k++) {
      best = model[k].f1() > model[best].f1() ? k : best;
    }
    System.out.printf("ours F1 %.3f, %s%n", ours.f1(), ours);
    System.out.printf("model F1 %.3f at %.2f, %s%n", model[best].f1(), best / 100.0, model[best]);
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.filter(f -> f.toString().endsWith(".mid")).sorted().toList();
    }
  }

  /** Of notes struck together the first. */
  private static List<PlacedNote> strokes(Played played) {
    List<PlacedNote> strokes = new ArrayList<>();
    for (PlacedNote note : played.notes()) {
      double before =
          strokes.isEmpty() ? Double.NEGATIVE_INFINITY : strokes.get(strokes.size() - 1).at();
      if (note.at() - before > TOGETHER) {
        strokes.add(note);
      }
    }
    return strokes;
  }

  private static List<Integer> cuts(Played played, List<PlacedNote> strokes) {
    return PhraseFinder.of(played).stream()
        .skip(1)
        .map(span -> nearest(strokes, played.notes().get(span.from()).at()))
        .toList();
  }

  private static List<Integer> labelled(String name, Played played, List<PlacedNote> strokes)
      throws IOException {
    JsonNode labels = new ObjectMapper().readTree(Path.of(name + ".json").toFile());
    List<Integer> wanted = new ArrayList<>();
    for (JsonNode phrase : labels.get("phrases")) {
      double seconds =
          labels.get("notes").get(phrase.get("first").asInt()).get("seconds").asDouble();
      double at = seconds / labels.get("quarterSeconds").asDouble();
      wanted.add(nearest(strokes, at));
    }
    return wanted.subList(1, wanted.size());
  }

  private static int nearest(List<PlacedNote> strokes, double at) {
    int best = 0;
    for (int i = 0; i < strokes.size(); i++) {
      boolean nearer = Math.abs(strokes.get(i).at() - at) < Math.abs(strokes.get(best).at() - at);
      best = nearer ? i : best;
    }
    return best;
  }

  /** Exact ones are matched first. */
  private static Tally tally(List<Integer> wanted, List<Integer> told) {
    List<Integer> left = new ArrayList<>(wanted);
    List<Integer> open = new ArrayList<>(told);
    open.removeIf(left::remove);
    open.removeIf(
        place -> left.remove((Integer) (place - 1)) || left.remove((Integer) (place + 1)));
    return new Tally(wanted.size() - left.size(), told.size(), wanted.size());
  }
}
