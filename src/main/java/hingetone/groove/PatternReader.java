package hingetone.groove;

import hingetone.score.GeneralMidi;
import hingetone.text.Problems;
import hingetone.text.Quote;
import hingetone.text.Span;
import hingetone.text.Suggestion;
import hingetone.text.Word;
import hingetone.text.Yaml;
import hingetone.text.YamlFields;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Reads what is drawn with one sign a step: drum patterns, fills, and the lines of bass and chords.
 */
final class PatternReader {
  private static final List<String> DRUM_PATTERN_KEYS = List.of("weight", "meter", "band", "lanes");
  private static final List<String> FILL_KEYS =
      List.of("weight", "meter", "band", "size", "beats", "lanes");
  private static final List<String> LINE_KEYS = List.of("weight", "meter", "band", "line");
  private static final String DRUM_SIGNS = "Xxg123456789.";
  private static final Pattern BAR = Pattern.compile("[^|]*[^|\\s][^|]*");
  private static final Pattern CELL = Pattern.compile("\\S+");
  private static final int MOST_STEPS_A_BEAT = 8;
  private static final int CELLS = 3;

  private final Problems problems;
  private final List<Meter> meters;
  private final boolean metersKnown;

  /**
   * A reader for one groove.
   *
   * @param meters the groove's meters, none when it fits any; empty when they could not be read:
   *     then only the signs are looked at
   */
  PatternReader(Problems problems, Optional<List<Meter>> meters) {
    this.problems = problems;
    this.meters = meters.orElse(List.of());
    this.metersKnown = meters.isPresent();
  }

  /** The percussion key that a name stands for; a wrong name is reported. */
  static Optional<Integer> percussion(Problems problems, Yaml.Text name) {
    Optional<Integer> key = GeneralMidi.percussionKey(name.value());
    if (key.isEmpty()) {
      List<String> names =
          GeneralMidi.PERCUSSION.stream().map(n -> n.toLowerCase(Locale.ROOT)).toList();
      problems.add(
          name.span(),
          "unknown percussion instrument \"" + Quote.of(name.value()) + "\"",
          "I expected a General MIDI name such as acoustic snare, bass drum 1 or closed hi-hat.",
          Suggestion.nearest(name.value(), names));
    }
    return key;
  }

  List<DrumPattern> drumPatterns(YamlFields drums) {
    List<DrumPattern> patterns = new ArrayList<>();
    for (YamlFields fields : patterns(drums, DRUM_PATTERN_KEYS)) {
      Use use = use(fields);
      Map<Integer, Strip> lanes = new HashMap<>();
      for (Yaml.Entry lane : lanes(fields)) {
        Optional<Integer> key = percussion(problems, lane.key());
        Optional<Strip> strip = strip(lane.value(), DRUM_SIGNS, use);
        if (key.isPresent() && strip.isPresent()) {
          lanes.put(key.get(), strip.get());
        }
      }
      patterns.add(new DrumPattern(use, lanes));
    }
    return patterns;
  }

  List<Fill> fills(YamlFields drums) {
    List<Fill> fills = new ArrayList<>();
    for (YamlFields fields : drums.list("fills", FILL_KEYS)) {
      Use use = use(fields);
      Fill.Size size =
          fields.read(
              "size",
              text -> enumNamed(Fill.Size.values(), text),
              Fill.Size.MEDIUM,
              "I expected small, medium or big.");
      int beats = fields.whole("beats", 1, 16, 1, "");
      Map<Integer, String> lanes = new HashMap<>();
      for (Yaml.Entry lane : lanes(fields)) {
        Optional<Integer> key = percussion(problems, lane.key());
        Optional<String> signs = fillSigns(lane.value(), beats);
        if (key.isPresent() && signs.isPresent()) {
          lanes.put(key.get(), signs.get());
        }
      }
      fills.add(new Fill(use, size, beats, lanes));
    }
    return fills;
  }

  List<Line> lines(YamlFields part, String signs) {
    List<Line> lines = new ArrayList<>();
    for (YamlFields fields : patterns(part, LINE_KEYS)) {
      Use use = use(fields);
      if (!fields.has("line")) {
        fields.missing("line");
      }
      fields
          .text("line")
          .flatMap(text -> strip(text, signs, use))
          .ifPresent(strip -> lines.add(new Line(use, strip)));
    }
    return lines;
  }

  private List<YamlFields> patterns(YamlFields part, List<String> known) {
    if (!part.has("patterns")) {
      part.missing("patterns");
    }
    return part.list("patterns", known);
  }

  private static List<Yaml.Entry> lanes(YamlFields fields) {
    if (!fields.has("lanes")) {
      fields.missing("lanes");
    }
    return fields.entries("lanes", "I expected instruments and signs, as in closed hi-hat: x.x.");
  }

  private Use use(YamlFields fields) {
    int weight = fields.whole("weight", 1, 100, 1, "");
    Optional<Meter> meter =
        fields.read(
            "meter",
            text -> Meter.parse(text).filter(this::isOwn).map(Optional::of),
            Optional.empty(),
            "I expected one of the groove's own meters.");
    if (meter.isEmpty() && meters.size() > 1 && !fields.has("meter")) {
      fields.missing("meter");
    }
    Optional<Thickness> band =
        fields.read(
            "band",
            text -> enumNamed(Thickness.values(), text).map(Optional::of),
            Optional.empty(),
            "I expected light, normal or full.");
    return new Use(weight, meter, band);
  }

  private boolean isOwn(Meter meter) {
    return meters.stream().anyMatch(own -> Groove.sameFigures(own, meter));
  }

  private static <E extends Enum<E>> Optional<E> enumNamed(E[] values, String text) {
    return Arrays.stream(values)
        .filter(v -> v.name().toLowerCase(Locale.ROOT).equals(text))
        .findFirst();
  }

  private Optional<Strip> strip(Yaml value, String signs, Use use) {
    if (!(value instanceof Yaml.Text text) || text.isEmpty()) {
      problems.add(value.span(), "no signs", expected(signs));
      return Optional.empty();
    }
    if (!metersKnown) {
      text.words(problems.source(), BAR).forEach(bar -> areKnown(bar, signs));
      return Optional.empty();
    }
    return meters.isEmpty() ? byBeat(text, signs) : barByBar(text, signs, use);
  }

  private Optional<Strip> barByBar(Yaml.Text text, String signs, Use use) {
    Meter meter = use.meter().orElse(meters.get(0));
    List<String> bars = new ArrayList<>();
    boolean fine = true;
    for (Word bar : text.words(problems.source(), BAR)) {
      fine &= areKnown(bar, signs) && fits(bar, meter.beatsPerBar(), "a bar of " + meter);
      bars.add(withoutSpaces(bar));
    }
    return fine ? Optional.of(new Strip(bars, false)) : Optional.empty();
  }

  private Optional<Strip> byBeat(Yaml.Text text, String signs) {
    List<Word> cells = text.words(problems.source(), CELL);
    boolean fine = cells.size() == CELLS && cells.stream().allMatch(c -> c.text().length() == 2);
    if (!fine) {
      problems.add(
          text.span(),
          "a groove for any meter is drawn in three cells of two signs",
          "One cell for beat 1, one for the other strong beats, one for the weak: X. x. ..");
      return Optional.empty();
    }
    boolean known = true;
    for (Word cell : cells) {
      known &= areKnown(cell, signs);
    }
    return known
        ? Optional.of(new Strip(cells.stream().map(Word::text).toList(), true))
        : Optional.empty();
  }

  private Optional<String> fillSigns(Yaml value, int beats) {
    if (!(value instanceof Yaml.Text text) || text.isEmpty()) {
      problems.add(value.span(), "no signs", expected(DRUM_SIGNS));
      return Optional.empty();
    }
    Word whole = whole(text);
    if (!areKnown(whole, DRUM_SIGNS) || !metersKnown) {
      return Optional.empty();
    }
    if (!meters.isEmpty()) {
      return fits(whole, beats, beats + (beats == 1 ? " beat" : " beats"))
          ? Optional.of(withoutSpaces(whole))
          : Optional.empty();
    }
    List<Word> cells = text.words(problems.source(), CELL);
    if (cells.size() != beats || cells.stream().anyMatch(c -> c.text().length() != 2)) {
      problems.add(
          text.span(),
          "a fill for any meter has a cell of two signs for each beat",
          "For " + beats + " beats I expected " + beats + " cells: x. xx");
      return Optional.empty();
    }
    // A space at the end tells cells from steps where there is only one.
    return Optional.of(String.join(" ", cells.stream().map(Word::text).toList()) + " ");
  }

  private Word whole(Yaml.Text text) {
    String source = problems.source().text();
    return new Word(
        text.inner().length() == 0
            ? text.value()
            : source.substring(text.inner().start(), text.inner().end()),
        text.inner());
  }

  private boolean areKnown(Word drawn, String signs) {
    for (int i = 0; i < drawn.text().length(); i++) {
      char c = drawn.text().charAt(i);
      if (!Character.isWhitespace(c) && signs.indexOf(c) < 0) {
        int start = drawn.span().start() + i;
        problems.add(
            new Span(start, start + 1),
            "\"" + Quote.of(Character.toString(c)) + "\" is no sign of this line",
            expected(signs));
        return false;
      }
    }
    return true;
  }

  private static String expected(String signs) {
    return "I expected these signs, one a step: "
        + String.join(" ", signs.replace(".", "").split(""))
        + " and the dot.";
  }

  /** Whether the steps divide each beat evenly. */
  private boolean fits(Word drawn, int beats, String what) {
    int steps = withoutSpaces(drawn).length();
    if (steps > 0 && steps % beats == 0 && steps / beats <= MOST_STEPS_A_BEAT) {
      return true;
    }
    problems.add(
        drawn.span(),
        steps + " steps do not divide " + what,
        "I expected the same number of steps for each beat: "
            + beats
            + ", "
            + 2 * beats
            + ", "
            + 3 * beats
            + " or "
            + 4 * beats
            + " steps.");
    return false;
  }

  private static String withoutSpaces(Word drawn) {
    return drawn.text().replaceAll("\\s+", "");
  }
}
