package hingetone.print;

import hingetone.hearing.HeardNote;
import hingetone.hearing.Transcription;
import hingetone.hearing.Transcription.Placed;
import hingetone.neck.Fretboard;
import hingetone.print.HeardBars.Barred;
import hingetone.text.Stamp;
import hingetone.time.Meter;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A recording as text tab: above each note when it begins and how long it lasts, in seconds, or
 * with a chart its bar, its beat and its length in beats.
 *
 * <pre>
 * begins  0.31  0.80          bar     3           4
 * lasts   0.45  0.31          beat    1    3+1/2  1
 * E4    |-8b10-|------        lasts   2    1/2    1
 * B3    |------|-8c---        E4    |-8b10--------|-5-
 * </pre>
 */
public final class HeardTab {
  /** What a page of it bears at its end. */
  public static final Stamp STAMP = new Stamp("heard-txt");

  /** What the signs mean. */
  public static final String LEGEND =
      "8b10 fret 8 bent until it sounds like fret 10, 8b10r8 and let down again, 10r8 struck bent and"
          + " let down,\n8c a quarter tone up, 5s7 slid, h7 hammered on, p5 pulled off, ~ vibrato,"
          + " ? doubtful.\n";

  private final Fretboard neck;
  private final Optional<HeardBars> bars;
  private final int width;
  private final List<String> heads;
  private final List<String> rows = new ArrayList<>();
  private List<StringBuilder> block = List.of();
  private int lastBar = Integer.MIN_VALUE;
  private double before = Double.NaN;

  private HeardTab(Fretboard neck, Optional<HeardBars> bars, int width) {
    this.neck = neck;
    this.bars = bars;
    this.width = width;
    this.heads = bars.isPresent() ? List.of("bar", "beat", "lasts") : List.of("begins", "lasts");
  }

  /**
   * The rows, without line breaks, in blocks that are no wider than they may be.
   *
   * @param bars the bars of a chart, where there is one
   * @param width characters in a row, 40 and more
   */
  public static List<String> of(
      Transcription written, Fretboard neck, Optional<HeardBars> bars, int width) {
    HeardTab tab = new HeardTab(neck, bars, width);
    tab.begin();
    int index = 0;
    for (List<Placed> moment : written.moments()) {
      tab.add(moment, index);
      index += moment.size();
    }
    tab.close();
    return tab.rows;
  }

  private void begin() {
    block = new ArrayList<>();
    heads.forEach(head -> block.add(new StringBuilder(String.format("%-7s", head))));
    for (int string = 1; string <= neck.strings(); string++) {
      block.add(new StringBuilder(String.format("%-5s|-", neck.tuning().string(string))));
    }
  }

  private void close() {
    block.forEach(row -> rows.add(row.toString().stripTrailing()));
    rows.add("");
  }

  /** The notes that begin together, and the number of the first of them. */
  private void add(List<Placed> moment, int index) {
    Optional<Barred> barred = bars.map(b -> b.notes().get(index));
    int bar = barred.map(b -> position(b).bar()).orElse(lastBar);
    List<String> cells = new ArrayList<>(barred.map(this::inBars).orElse(inSeconds(moment)));
    cells.addAll(strings(moment));
    int wide = cells.stream().mapToInt(String::length).max().orElse(0) + 1;
    if (block.get(0).length() + wide + 2 > width) {
      close();
      begin();
      cells.set(0, barred.map(b -> "" + bar).orElse(cells.get(0)));
      wide = Math.max(wide, cells.get(0).length() + 1);
    } else if (bar != lastBar && lastBar != Integer.MIN_VALUE) {
      addColumn(block.stream().map(row -> "").toList(), 0, "  ", "|-");
    }
    addColumn(cells, wide, "", "");
    lastBar = bar;
    before = moment.get(moment.size() - 1).note().reached();
  }

  /** A column as wide as is said, after a text of its own for heads and for strings. */
  private void addColumn(List<String> cells, int wide, String inHeads, String onStrings) {
    for (int row = 0; row < block.size(); row++) {
      boolean head = row < heads.size();
      String cell = cells.get(row);
      String filler = (head ? " " : "-").repeat(wide - cell.length());
      block.get(row).append(head ? inHeads : onStrings).append(cell).append(filler);
    }
  }

  private Position position(Barred barred) {
    return bars.orElseThrow().form().position(barred.start());
  }

  private static List<String> inSeconds(List<Placed> moment) {
    HeardNote first = moment.get(0).note();
    return List.of(
        String.format(Locale.ROOT, "%.2f", first.at()),
        String.format(Locale.ROOT, "%.2f", first.end() - first.at()));
  }

  /** Bar, where it is a new one, beat and length in the beats of its meter. */
  private List<String> inBars(Barred barred) {
    Position position = position(barred);
    Meter meter = bars.orElseThrow().form().bar(position.bar()).meter();
    return List.of(
        position.bar() == lastBar ? "" : "" + position.bar(),
        position.beat().toString(),
        meter.toBeats(barred.end().minus(barred.start())).toString());
  }

  private List<String> strings(List<Placed> moment) {
    List<String> cells = new ArrayList<>();
    for (int string = 1; string <= neck.strings(); string++) {
      StringBuilder cell = new StringBuilder();
      for (Placed placed : moment) {
        if (placed.spot().isPresent() && placed.spot().get().string() == string) {
          cell.append(sign(placed.note(), placed.spot().get().fret()));
        }
      }
      cells.add(cell.toString());
    }
    return cells;
  }

  private String sign(HeardNote note, int fret) {
    int bent = fret + note.bent();
    String sign =
        switch (note.technique()) {
          case PLAIN -> "" + fret;
          case BEND -> fret + "b" + bent;
          case CURL -> fret + "c";
          case PREBEND -> bent + "r" + fret;
          case RELEASE -> fret + "b" + bent + "r" + fret;
          case SLIDE -> Math.max(0, fret + Math.round(note.struck() - note.reached())) + "s" + fret;
          case LEGATO -> (note.reached() >= before ? "h" : "p") + fret;
        };
    return sign + (note.vibrato() ? "~" : "") + (note.certainty() < 0.6 ? "?" : "");
  }
}
