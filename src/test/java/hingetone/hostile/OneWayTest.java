package hingetone.hostile;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.chart.Leave;
import hingetone.ground.Ground;
import hingetone.ground.ways.Crossing;
import hingetone.neck.Fretboard;
import hingetone.neck.Spot;
import hingetone.phrase.maker.MadePhrase;
import hingetone.phrase.maker.PhraseMaker;
import hingetone.plan.Plan;
import hingetone.plan.Prompt;
import hingetone.print.MapSelection;
import hingetone.print.MapText;
import hingetone.print.PlanJson;
import hingetone.print.PlanText;
import hingetone.screen.ChartFacts;
import hingetone.screen.FactFinder;
import hingetone.text.reading.Source;
import hingetone.time.Position;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The screen, the map, the example and its tab go over a line on the same way: read from what they
 * say and show, over charts drawn by lot. A prompt that starts on the line goes over nothing.
 */
class OneWayTest {
  private static final Pattern PLACE = Pattern.compile("string (\\d+) fret (\\d+)");

  private final List<String> other = new ArrayList<>();
  private int gone;
  private int withoutRoom;

  @Test
  void screen_map_example_and_tab_name_one_way() {
    named(30);
    assertThat(gone).isGreaterThan(10);
  }

  @Test
  @Tag("long")
  void they_do_so_over_two_hundred_charts() {
    named(200);
    assertThat(gone).isGreaterThan(100);
  }

  private void named(int charts) {
    for (long number = 1; number <= charts; number++) {
      Source source = new Source("drawn.yaml", ChartDrawing.of(number).text());
      Optional<Chart> chart = ChartReader.read(source).value();
      if (chart.isPresent()) {
        over(number, chart.get());
      }
    }
    assertThat(other).isEmpty();
    assertThat(withoutRoom).as("of %d", gone).isLessThan(gone / 10);
  }

  private void over(long number, Chart chart) {
    Form form = Form.of(chart);
    Ground ground = Ground.of(form, Fretboard.of(chart.tuning(), chart.capo()));
    Plan plan = Plan.of(chart, form);
    PhraseMaker maker = PhraseMaker.of(plan, ground, chart.seed());
    ChartFacts facts = FactFinder.of(chart.title(), "plain", ground, plan);
    for (Prompt prompt : plan.promptsOfLap(2)) {
      if (prompt.crossing().isPresent()) {
        Crossing crossing = ground.crossingOf(prompt.landOn());
        String where = "chart " + number + " prompt " + prompt.index();
        check(where, facts.crossingInto(crossing.atBar()).orElseThrow(), maker.make(prompt));
      }
    }
    maps(number, chart, ground, facts);
    plans(number, plan, ground, facts);
  }

  /** The printed plan and its JSON have under each prompt that crosses what the screen says. */
  private void plans(long number, Plan plan, Ground ground, ChartFacts facts) {
    Function<Prompt, List<String>> ways = p -> PlanText.way(p, ground).stream().toList();
    List<String> printed = PlanText.of(plan, 2, ways).lines().map(String::strip).toList();
    JsonNode tree = parsed(PlanJson.of(plan.promptsOfLap(2), ground));
    for (JsonNode prompt : tree.get("prompts")) {
      if (prompt.get("crossing").isNull()) {
        continue;
      }
      int bar = prompt.get("landOn").get("bar").asInt();
      ChartFacts.Crossing screen = nextCrossing(facts, bar);
      String kind = prompt.get("crossing").asText();
      List<String> said = kind.equals("run") ? screen.run() : screen.hold();
      Optional<String> words = said.stream().findFirst().map(w -> kind + ": " + w);
      Optional<String> json = Optional.ofNullable(prompt.get("way").textValue());
      if (!json.equals(words)) {
        other.add("chart " + number + " JSON of the plan: " + json + ", screen " + words);
      }
      boolean onPage = bar <= 2 * plan.form().bars().size();
      if (onPage && words.isPresent() && !printed.contains(words.get())) {
        other.add("chart " + number + " plan lacks " + words.get());
      }
    }
  }

  private static ChartFacts.Crossing nextCrossing(ChartFacts facts, int bar) {
    return IntStream.range(bar, bar + 2 * facts.form().bars().size())
        .mapToObj(facts::crossingInto)
        .flatMap(Optional::stream)
        .findFirst()
        .orElseThrow();
  }

  private static JsonNode parsed(String json) {
    try {
      return new ObjectMapper().readTree(json);
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The example says the screen's words, and its tab has what they name. */
  private void check(String where, ChartFacts.Crossing screen, MadePhrase example) {
    boolean hold = example.prompt().crossing().orElseThrow() == Leave.HOLD;
    Optional<String> said = (hold ? screen.hold() : screen.run()).stream().findFirst();
    if (said.isEmpty()) {
      return;
    }
    gone++;
    if (!example.why().contains(" into ")) {
      withoutRoom++;
      return;
    }
    if (!example.why().contains(said.get())) {
      other.add(where + " says " + said.get() + " but plays " + example.why());
    }
    if (!example.spots().containsAll(hold ? held(said.get()) : landed(said.get()))) {
      other.add(where + " says " + said.get() + " but lies on " + example.spots());
    }
  }

  private static List<Spot> held(String words) {
    Matcher place = PLACE.matcher(words);
    assertThat(place.find()).as(words).isTrue();
    return List.of(new Spot(Integer.parseInt(place.group(1)), Integer.parseInt(place.group(2))));
  }

  /** Where a run lands: {@code strings 3 2 frets 7 8 fret by fret to frets 5 6, C4 F4 …}. */
  private static List<Spot> landed(String words) {
    Matcher walk =
        Pattern.compile("strings? ([\\d ]+) frets? [\\d ]+ fret by fret to frets? ([\\d ]+),")
            .matcher(words);
    if (walk.find()) {
      List<Integer> strings = numbers(walk.group(1));
      List<Integer> frets = numbers(walk.group(2));
      return IntStream.range(0, frets.size())
          .mapToObj(i -> new Spot(strings.get(Math.min(i, strings.size() - 1)), frets.get(i)))
          .toList();
    }
    return held(words.substring(words.indexOf(" into ")));
  }

  private static List<Integer> numbers(String text) {
    return Stream.of(text.strip().split(" ")).map(Integer::parseInt).toList();
  }

  /** The map's first hold over each line lies where the screen's does. */
  private void maps(long number, Chart chart, Ground ground, ChartFacts facts) {
    MapSelection all = MapSelection.ALL;
    List<String> lines =
        MapText.lines(chart, ground, all, true, 200).stream().map(line -> line.plain()).toList();
    String text = lines.stream().collect(Collectors.joining("\n"));
    for (ChartFacts.Crossing crossing : facts.crossings()) {
      Matcher printed =
          Pattern.compile(
                  "crossing at bar " + crossing.atBar() + " .*\\n.*\\n  hold  .*\\((.*?)\\):")
              .matcher(text);
      if (printed.find() && !crossing.hold().get(0).contains(printed.group(1))) {
        other.add("chart " + number + " map: " + printed.group(1) + ", screen " + crossing.hold());
      }
      marks(number, text, crossing.atBar(), Plan.of(chart, ground.form()));
    }
  }

  /** The map marks the way that the prompts of the first laps have. */
  private void marks(long number, String text, int atBar, Plan plan) {
    String header =
        text.lines()
            .filter(line -> line.startsWith("crossing at bar " + atBar + " "))
            .findFirst()
            .orElseThrow();
    List<String> ways = new ArrayList<>();
    for (int lap = 1; lap <= 2; lap++) {
      Position line = Position.of(atBar + (lap - 1) * plan.form().bars().size(), 1);
      Stream.of(lap, lap + 1)
          .flatMap(l -> plan.promptsOfLap(l).stream())
          .filter(p -> p.crossing().isPresent())
          .filter(p -> p.speakFrom().compareTo(line) < 0 && p.stopBy().compareTo(line) >= 0)
          .map(p -> p.crossing().get().name().toLowerCase(Locale.ROOT))
          .forEach(ways::add);
    }
    String mark = ways.stream().distinct().collect(Collectors.joining(", then "));
    if (!header.endsWith(mark.isEmpty() ? header.split(";")[0] : "; " + mark)) {
      other.add("chart " + number + " map: " + header + ", plan " + ways);
    }
  }
}
