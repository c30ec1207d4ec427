package hingetone.print;

import hingetone.hearing.HeardNote;
import hingetone.hearing.Transcription;
import hingetone.hearing.Transcription.Placed;
import hingetone.neck.Fretboard;
import hingetone.text.Stamp;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A recording as text tab: above each note when it begins and how long it lasts, in seconds.
 *
 * <pre>
 * begins  0.31  0.80
 * lasts   0.45  0.31
 * E4    |-8b10-|------
 * B3    |------|-8c---
 * </pre>
 */
public final class HeardTab {
  /** What a page of it bears at its end. */
  public static final Stamp STAMP = new Stamp("heard-txt");

  private HeardTab() {}

  /** What the signs mean. */
  public static final String LEGEND =
      "8b10 fret 8 bent until it sounds like fret 10, 8b10r8 and let down again, 10r8 struck bent and"
          + " let down,\n8c a quarter tone up, 5s7 slid, h7 hammered on, p5 pulled off, ~ vibrato,"
          + " ? doubtful.\n";

  /**
   * The rows, without line breaks, in blocks that are no wider than they may be.
   *
   * @param width characters in a row, 40 and more
   */
  public static List<String> of(Transcription written, Fretboard neck, int width) {
    List<String> rows = new ArrayList<>();
    List<StringBuilder> block = head(neck);
    double before = Double.NaN;
    for (List<Placed> moment : written.moments()) {
      List<String> cells = cells(moment, neck.strings(), before);
      int wide = cells.stream().mapToInt(String::length).max().orElse(0) + 1;
      if (block.get(0).length() + wide > width) {
        close(block, rows);
        block = head(neck);
      }
      for (int row = 0; row < block.size(); row++) {
        String filler = row < 2 ? " " : "-";
        String cell = cells.get(row);
        block.get(row).append(cell).append(filler.repeat(wide - cell.length()));
      }
      before = moment.get(moment.size() - 1).note().reached();
    }
    close(block, rows);
    return rows;
  }

  private static List<StringBuilder> head(Fretboard neck) {
    List<StringBuilder> block = new ArrayList<>();
    block.add(new StringBuilder("begins "));
    block.add(new StringBuilder("lasts  "));
    for (int string = 1; string <= neck.strings(); string++) {
      block.add(new StringBuilder(String.format("%-5s|-", neck.tuning().string(string))));
    }
    return block;
  }

  private static void close(List<StringBuilder> block, List<String> rows) {
    block.forEach(row -> rows.add(row.toString().stripTrailing()));
    rows.add("");
  }

  private static List<String> cells(List<Placed> moment, int strings, double before) {
    HeardNote first = moment.get(0).note();
    List<String> cells = new ArrayList<>();
    cells.add(String.format(Locale.ROOT, "%.2f", first.at()));
    cells.add(String.format(Locale.ROOT, "%.2f", first.end() - first.at()));
    for (int string = 1; string <= strings; string++) {
      StringBuilder cell = new StringBuilder();
      for (Placed placed : moment) {
        if (placed.spot().isPresent() && placed.spot().get().string() == string) {
          cell.append(sign(placed.note(), placed.spot().get().fret(), before));
        }
      }
      cells.add(cell.toString());
    }
    return cells;
  }

  private static String sign(HeardNote note, int fret, double before) {
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
