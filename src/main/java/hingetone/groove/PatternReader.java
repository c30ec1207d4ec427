package hingetone.groove;

import hingetone.score.Fullness;
import hingetone.score.GeneralMidi;
import hingetone.text.Quote;
import hingetone.text.Suggestion;
import hingetone.text.reading.Problems;
import hingetone.text.reading.Span;
import hingetone.text.reading.Word;
import hingetone.text.reading.Yaml;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;

/**
 * Reads what is drawn with one sign a step: drum patterns, fills, and the lines of bass and chords.
 */
final class PatternReader {
  static final String PERCUSSION_EXPECTED =
      "I expected a General MIDI name such as acoustic snare, bass drum 1 or closed hi-hat.";
  private static final String DRUM_SIGNS = "Xxg123456789.";
  private static final Pattern BAR = Pattern.compile("[^|]*[^|\\s][^|]*");
  private static final Pattern CELL = Pattern.compile("\\S+");
  private static final int MOST_STEPS_A_BEAT = 8;
  private static final int MOST_BEATS = 32;
  private static final int CELLS = 3;

  private final Problems problems;
  private final Optional<List<Meter>> meters;

  /**
   * A reader for one groove.
   *
   * @param meters the groove's meters, none of them when it fits any; empty where they could not be
   *     read, and then lengths are not checked
   */
  PatternReader(Problems problems, Optional<List<Meter>> meters) {
    this.problems = problems;
    this.meters = meters;
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
          PERCUSSION_EXPECTED,
          Suggestion.nearest(name.value(), names));
    }
    return key;
  }

  List<DrumPattern> drumPatterns(GrooveFields drums) {
    List<DrumPattern> patterns = new ArrayList<>();
    drums.require(GrooveKey.PATTERNS);
    for (GrooveFields fields : drums.list(GrooveKey.PATTERNS, GrooveKey.Place.PATTERN)) {
      PatternUse use = use(fields);
      Map<Integer, StepLine> lanes = lanes(fields, signs -> strip(signs, DRUM_SIGNS, use));
      DrumPattern pattern = new DrumPattern(use, lanes);
      if (lanes.values().stream().anyMatch(lane -> pattern.length() % lane.length() != 0)) {
        problems.add(
            fields.place(GrooveKey.LANES),
            "lanes of different lengths",
            "The longest has "
                + pattern.length()
                + " bars; another may have as many, or so few that they go into them.");
      }
      patterns.add(pattern);
    }
    checkMeters(drums, patterns);
    return patterns;
  }

  List<Fill> fills(GrooveFields drums) {
    List<Fill> fills = new ArrayList<>();
    for (GrooveFields fields : drums.list(GrooveKey.FILLS, GrooveKey.Place.FILL)) {
      PatternUse use = use(fields);
      Fill.Size size = fields.choice(GrooveKey.SIZE, Fill.Size.values()).orElse(Fill.Size.MEDIUM);
      int beats = fields.whole(GrooveKey.BEATS, 1, MOST_BEATS, 1, "");
      drawnFor(use)
          .filter(meter -> beats > meter.beatsPerBar())
          .ifPresent(
              meter ->
                  problems.add(
                      fields.place(GrooveKey.BEATS),
                      "a fill longer than its bar",
                      "A bar of " + meter + " has " + meter.beatsPerBar() + " beats."));
      fills.add(new Fill(use, size, beats, lanes(fields, signs -> fillLine(signs, beats))));
    }
    return fills;
  }

  List<LinePattern> lines(GrooveFields player, String signs) {
    List<LinePattern> lines = new ArrayList<>();
    player.require(GrooveKey.PATTERNS);
    for (GrooveFields fields : player.list(GrooveKey.PATTERNS, GrooveKey.Place.LINE)) {
      PatternUse use = use(fields);
      fields.require(GrooveKey.LINE);
      fields
          .text(GrooveKey.LINE, "I expected one sign a step, of these: " + spaced(signs))
          .flatMap(text -> strip(text, signs, use))
          .ifPresent(strip -> lines.add(new LinePattern(use, strip)));
    }
    checkMeters(player, lines);
    return lines;
  }

  /** Every meter of the groove needs a pattern, else a chart in it could not be played. */
  private void checkMeters(GrooveFields player, List<? extends hingetone.groove.Pattern> patterns) {
    if (problems.anyIn(player.span())) {
      return;
    }
    for (Meter meter : meters.orElse(List.of())) {
      if (patterns.stream().noneMatch(pattern -> pattern.use().fits(meter))) {
        problems.add(
            player.place(GrooveKey.PATTERNS),
            "no pattern for " + meter,
            "The groove says it is drawn for " + meter + " too; draw one with meter: " + meter);
      }
    }
  }

  private <T> Map<Integer, T> lanes(GrooveFields fields, Function<Yaml.Text, Optional<T>> read) {
    fields.require(GrooveKey.LANES);
    String expected = "I expected instruments and their signs, as in closed hi-hat: x.x.";
    Map<Integer, T> lanes = new HashMap<>();
    for (Yaml.Entry lane : fields.entries(GrooveKey.LANES, expected)) {
      Optional<Integer> key = percussion(problems, lane.key());
      Optional<T> signs = Optional.empty();
      if (lane.value() instanceof Yaml.Text text && !text.isEmpty()) {
        signs = read.apply(text);
      } else {
        problems.add(lane.key().span(), "no signs for this instrument", expected);
      }
      if (key.filter(lanes::containsKey).isPresent()) {
        problems.add(lane.key().span(), "an instrument drawn twice", "One lane holds it all.");
      } else if (key.isPresent() && signs.isPresent()) {
        lanes.put(key.get(), signs.get());
      }
    }
    return lanes;
  }

  private PatternUse use(GrooveFields fields) {
    int weight = fields.whole(GrooveKey.WEIGHT, 1, 100, 1, "");
    if (meters.orElse(List.of()).size() > 1) {
      fields.require(GrooveKey.DRAWN_FOR);
    }
    Optional<Meter> meter =
        fields.read(
            GrooveKey.DRAWN_FOR,
            text -> Meter.parse(text).filter(this::isOwn),
            "one of the groove's own meters");
    return new PatternUse(weight, meter, fields.choice(GrooveKey.BAND, Fullness.values()));
  }

  private boolean isOwn(Meter meter) {
    return meters.isEmpty()
        || meters.get().stream().anyMatch(own -> Groove.sameFigures(own, meter));
  }

  /** The meter that a pattern's bars must fill; empty where that is not known, or any. */
  private Optional<Meter> drawnFor(PatternUse use) {
    return use.meter().or(() -> meters.filter(m -> m.size() == 1).map(m -> m.get(0)));
  }

  private boolean isForAny() {
    return meters.filter(List::isEmpty).isPresent();
  }

  private Optional<StepLine> strip(Yaml.Text text, String signs, PatternUse use) {
    List<Word> words = text.words(problems.source(), isForAny() ? CELL : BAR);
    boolean known = words.stream().allMatch(word -> areKnown(word, signs));
    if (!known) {
      return Optional.empty();
    }
    List<String> drawn = words.stream().map(PatternReader::withoutSpaces).toList();
    if (!isForAny()) {
      Optional<Meter> meter = drawnFor(use);
      boolean fitting =
          meter.isEmpty()
              || words.stream()
                  .filter(bar -> !fits(bar, meter.get().beatsPerBar(), "a bar of " + meter.get()))
                  .findFirst()
                  .isEmpty();
      return fitting && !drawn.isEmpty()
          ? Optional.of(new StepLine(drawn, false))
          : Optional.empty();
    }
    if (drawn.size() == CELLS && drawn.stream().allMatch(cell -> cell.length() == 2)) {
      return Optional.of(new StepLine(drawn, true));
    }
    problems.add(
        text.span(),
        "a groove for any meter is drawn in three cells of two signs",
        "One cell for beat 1, one for the other strong beats, one for the weak: X. x. ..");
    return Optional.empty();
  }

  private Optional<FillLine> fillLine(Yaml.Text text, int beats) {
    Word whole = new Word(source(text), text.inner());
    if (!areKnown(whole, DRUM_SIGNS)) {
      return Optional.empty();
    }
    if (!isForAny()) {
      return meters.isEmpty() || fits(whole, beats, beats == 1 ? "1 beat" : beats + " beats")
          ? Optional.of(new FillLine(List.of(withoutSpaces(whole)), false))
          : Optional.empty();
    }
    List<Word> cells = text.words(problems.source(), CELL);
    if (cells.size() != beats || cells.stream().anyMatch(c -> c.text().length() != 2)) {
      problems.add(
          text.span(),
          "a fill for any meter has a cell of two signs for each beat",
          "For " + beats + (beats == 1 ? " beat" : " beats") + " I expected as many, as in x. xx");
      return Optional.empty();
    }
    return Optional.of(new FillLine(cells.stream().map(Word::text).toList(), true));
  }

  private String source(Yaml.Text text) {
    return problems.source().text().substring(text.inner().start(), text.inner().end());
  }

  private boolean areKnown(Word drawn, String signs) {
    for (int i = 0; i < drawn.text().length(); i++) {
      char c = drawn.text().charAt(i);
      if (!Character.isWhitespace(c) && signs.indexOf(c) < 0) {
        int start = drawn.span().start() + i;
        int end = drawn.text().offsetByCodePoints(i, 1) + drawn.span().start();
        problems.add(
            new Span(start, end),
            "\""
                + Quote.of(drawn.text().substring(i, end - drawn.span().start()))
                + "\" is no sign of this line",
            "I expected one sign a step, of these: " + spaced(signs));
        return false;
      }
    }
    return true;
  }

  private static String spaced(String signs) {
    return String.join(" ", signs.split(""));
  }

  /** Whether the steps divide each beat evenly. */
  private boolean fits(Word drawn, int beats, String what) {
    int steps = withoutSpaces(drawn).length();
    if (steps % beats == 0 && steps / beats <= MOST_STEPS_A_BEAT) {
      return true;
    }
    problems.add(
        drawn.span(),
        (steps == 1 ? "1 step does" : steps + " steps do") + " not divide " + what,
        "I expected the same number of steps for each beat, at most "
            + MOST_STEPS_A_BEAT
            + ": "
            + beats
            + ", "
            + 2 * beats
            + ", "
            + 3 * beats
            + " or "
            + 4 * beats
            + " steps, say.");
    return false;
  }

  private static String withoutSpaces(Word drawn) {
    return drawn.text().replaceAll("\\s+", "");
  }
}
