package hingetone.chart;

import hingetone.text.Quote;
import hingetone.text.reading.Problems;
import hingetone.text.reading.Source;
import hingetone.text.reading.Span;
import hingetone.text.reading.Word;
import hingetone.theory.Chord;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Reads the bars of a section: {@code | Cm7 | Fm7 / / Bb7 | % |: G7 :| x3}. After a slip it goes on
 * at the next bar, so that each gives one message.
 */
final class BarsReader {
  private static final Pattern TOKEN = Pattern.compile("[|:]+|[^\\s|:]+");
  private static final Pattern COMMENT = Pattern.compile("(^|\\s)#.*");
  private static final Pattern SIGN = Pattern.compile("[|:]+");
  private static final Pattern BAR_LINE = Pattern.compile(":?\\|{1,2}:?");
  private static final Pattern TIMES = Pattern.compile("[xX×][0-9]{1,9}");

  private final Problems problems;
  private final Source source;
  private final Optional<Meter> meter;
  private final int most;
  private final List<ChartBar> bars = new ArrayList<>();
  private List<Word> current = new ArrayList<>();
  private Optional<Word> openRepeat = Optional.empty();
  private int repeatFrom;
  private int repeatsInside;
  private boolean mayRepeatFromStart = true;
  private boolean full;

  /**
   * A reader for one section.
   *
   * @param meter the section's meter, where it could be read; without one beats are not counted
   * @param most how many bars it may have
   */
  BarsReader(Problems problems, Optional<Meter> meter, int most) {
    this.most = most;
    this.problems = problems;
    this.source = problems.source();
    this.meter = meter;
  }

  /** The bars in a stretch of the source; a bar with a problem is there, but without chords. */
  List<ChartBar> read(Span within) {
    int first = source.lineOf(within.start());
    int last = source.lineOf(within.end());
    for (int line = first; line <= last && !full; line++) {
      Span span = source.spanOfLine(line);
      int start = Math.max(span.start(), within.start());
      int end = Math.max(start, Math.min(span.end(), within.end()));
      String text = source.text(new Span(start, end));
      int written = COMMENT.matcher(text).replaceFirst("").length();
      readLine(Word.all(source, new Span(start, start + written), TOKEN));
    }
    openRepeat.ifPresent(
        open ->
            problems.add(
                open.span(),
                "a repeat that is not closed",
                "Close it with :| behind its last bar, and x3 behind that for three times."));
    return bars;
  }

  private void readLine(List<Word> tokens) {
    boolean afterLine = false;
    for (int i = 0; i < tokens.size() && !full; i++) {
      Word token = tokens.get(i);
      if (!SIGN.matcher(token.text()).matches()) {
        current.add(token);
        afterLine = false;
        continue;
      }
      if (current.isEmpty() && afterLine && token.text().equals("|")) {
        emptyBar(token);
      }
      finishBar();
      Optional<Word> next =
          i + 1 < tokens.size() ? Optional.of(tokens.get(i + 1)) : Optional.empty();
      Optional<Word> times = next.filter(n -> TIMES.matcher(n.text()).matches());
      if (barLine(token, times) && times.isPresent()) {
        i++;
        afterLine = false;
      } else {
        afterLine = token.text().equals("|");
      }
    }
    finishBar();
  }

  private void emptyBar(Word line) {
    problems.add(
        line.span(),
        "an empty bar",
        "I expected a chord, % for the bar before once more, or N.C. for no chord.");
    bars.add(silent());
  }

  /** Acts on a bar line; says whether it closes a repeat, so that x3 may follow. */
  private boolean barLine(Word line, Optional<Word> times) {
    String text = line.text();
    if (!BAR_LINE.matcher(text).matches()) {
      problems.add(
          line.span(),
          "\"" + text + "\" is no bar line",
          "I know | between bars, |: where a repeat starts and :| where it ends.");
      return false;
    }
    boolean closes = text.startsWith(":");
    if (closes) {
      closeRepeat(line, times);
    }
    if (text.endsWith(":")) {
      openRepeat(line);
    }
    return closes;
  }

  private void openRepeat(Word line) {
    if (openRepeat.isPresent()) {
      problems.add(
          line.span(),
          "a repeat inside a repeat",
          "Close the first one with :| before the next one starts.");
      repeatsInside++;
      return;
    }
    openRepeat = Optional.of(line);
    repeatFrom = bars.size();
  }

  private void closeRepeat(Word line, Optional<Word> times) {
    if (repeatsInside > 0) {
      repeatsInside--;
      return;
    }
    if (openRepeat.isEmpty() && !mayRepeatFromStart) {
      problems.add(
          line.span(), "a repeat that was not opened", "It starts with |: before its first bar.");
      return;
    }
    int count = times.map(this::count).orElse(2);
    List<ChartBar> repeated = List.copyOf(bars.subList(repeatFrom, bars.size()));
    if (repeated.isEmpty()) {
      problems.add(line.span(), "nothing to repeat", "I expected bars between |: and :|.");
    }
    for (int time = 1; time < count && !full; time++) {
      repeated.forEach(bar -> add(bar, times.orElse(line)));
    }
    openRepeat = Optional.empty();
    mayRepeatFromStart = false;
  }

  private int count(Word times) {
    int count = Integer.parseInt(times.text().substring(1));
    if (count < 2 || count > 999) {
      problems.add(
          times.span(),
          "\"" + Quote.of(times.text()) + "\" for a repeat",
          "I expected x2 to x999: how often it is played in all.");
      return 2;
    }
    return count;
  }

  private void add(ChartBar bar, Word place) {
    if (bars.size() < most) {
      bars.add(bar);
    } else if (!full) {
      full = true;
      openRepeat = Optional.empty();
      problems.add(
          place.span(),
          "more than " + ChartReader.MOST_BARS + " bars",
          "Write it once: a section comes as often as the form names it.");
    }
  }

  private void finishBar() {
    if (!current.isEmpty()) {
      Word place = current.get(0);
      ChartBar bar = bar(current).orElseGet(this::silent);
      current = new ArrayList<>();
      add(bar, place);
    }
  }

  private ChartBar silent() {
    Beats length = Beats.of(meter.map(Meter::beatsPerBar).orElse(1));
    return new ChartBar(List.of(new ChartBar.Slot(Beats.ONE, length, Optional.empty())));
  }

  private Optional<ChartBar> bar(List<Word> words) {
    Span whole = new Span(words.get(0).span().start(), words.get(words.size() - 1).span().end());
    Optional<Word> before = words.stream().filter(w -> w.text().equals("%")).findFirst();
    if (before.isPresent()) {
      return barBefore(words, before.get());
    }
    List<Optional<Chord>> chords = new ArrayList<>();
    boolean slashed = false;
    for (Word word : words) {
      boolean slash = word.text().equals("/");
      slashed |= slash;
      Optional<Optional<Chord>> chord = slash ? sounding(chords, word) : chord(word);
      if (chord.isEmpty()) {
        return Optional.empty();
      }
      chords.add(chord.get());
    }
    int beats = meter.map(Meter::beatsPerBar).orElse(chords.size());
    return slashed ? byBeats(chords, words, beats, whole) : evenly(chords, words, beats, whole);
  }

  private Optional<ChartBar> barBefore(List<Word> words, Word sign) {
    if (words.size() > 1) {
      problems.add(
          sign.span(), "% beside a chord", "% stands alone: it is the whole bar before once more.");
      return Optional.empty();
    }
    if (bars.isEmpty()) {
      problems.add(
          sign.span(), "% in the first bar", "There is no bar before it. Write its chords.");
      return Optional.empty();
    }
    return Optional.of(bars.get(bars.size() - 1));
  }

  /** The chord that a slash holds on: the one before it in the bar, or at the end of the last. */
  private Optional<Optional<Chord>> sounding(List<Optional<Chord>> chords, Word slash) {
    if (!chords.isEmpty()) {
      return Optional.of(chords.get(chords.size() - 1));
    }
    if (bars.isEmpty()) {
      problems.add(
          slash.span(),
          "a slash before any chord",
          "A / is one more beat of the chord before it. Write a chord first.");
      return Optional.empty();
    }
    List<ChartBar.Slot> last = bars.get(bars.size() - 1).chords();
    return Optional.of(last.get(last.size() - 1).chord());
  }

  private Optional<Optional<Chord>> chord(Word word) {
    if (word.text().matches("(?i)N\\.?C\\.?")) {
      return Optional.of(Optional.empty());
    }
    return new ChordReader(problems).read(word).map(Optional::of);
  }

  private Optional<ChartBar> evenly(
      List<Optional<Chord>> chords, List<Word> words, int beats, Span whole) {
    int count = chords.size();
    if (beats % count != 0) {
      problems.add(
          whole,
          count + " chords in a bar of " + beats + (beats == 1 ? " beat" : " beats"),
          count > beats
              ? "A bar has at most one chord a beat."
              : "Chords share a bar evenly where its beats divide. Else a / is one more beat:\n  | "
                  + shared(words, beats)
                  + " |");
      return Optional.empty();
    }
    Beats each = Beats.of(beats / count);
    List<ChartBar.Slot> slots = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      slots.add(new ChartBar.Slot(Beats.ONE.plus(each.times(i)), each, chords.get(i)));
    }
    return Optional.of(new ChartBar(slots));
  }

  /** The same chords with slashes, the first ones holding longer. */
  private static String shared(List<Word> words, int beats) {
    List<String> filled = new ArrayList<>();
    for (int i = 0; i < words.size(); i++) {
      int length = beats / words.size() + (i < beats % words.size() ? 1 : 0);
      filled.add(words.get(i).text() + " /".repeat(length - 1));
    }
    return String.join(" ", filled);
  }

  private Optional<ChartBar> byBeats(
      List<Optional<Chord>> chords, List<Word> words, int beats, Span whole) {
    if (chords.size() != beats) {
      problems.add(
          whole,
          chords.size() + (chords.size() == 1 ? " beat" : " beats") + " in a bar of " + beats,
          "In a bar with slashes each chord and each / is one beat.");
      return Optional.empty();
    }
    List<ChartBar.Slot> slots = new ArrayList<>();
    for (int i = 0; i < beats; i++) {
      if (i > 0 && words.get(i).text().equals("/")) {
        ChartBar.Slot held = slots.remove(slots.size() - 1);
        slots.add(new ChartBar.Slot(held.beat(), held.beats().plus(Beats.ONE), held.chord()));
      } else {
        slots.add(new ChartBar.Slot(Beats.of(i + 1L), Beats.ONE, chords.get(i)));
      }
    }
    return Optional.of(new ChartBar(slots));
  }
}
