package hingetone.print;

import hingetone.chart.Form;
import hingetone.neck.Fretboard;
import hingetone.neck.Spot;
import hingetone.phrase.Tone;
import hingetone.phrase.maker.MadePhrase;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.List;

/**
 * A phrase as text tab: a row for each string, the highest on top, the beats above.
 *
 * <pre>
 *      3 &amp; 4 &amp; 1 &amp; 2
 * E4 |---------|-8-----5-|
 * </pre>
 */
public final class TabText {
  private static final int LEAST_WIDTH = 3;

  private final Form form;
  private final Fretboard neck;
  private final MadePhrase made;
  private final Beats landing;
  private final Beats step;
  private final Beats from;
  private final int columns;

  private TabText(Form form, Fretboard neck, MadePhrase made) {
    this.form = form;
    this.neck = neck;
    this.made = made;
    this.landing = form.quarters(made.prompt().landOn());
    this.step = step(made);
    Beats half = Beats.of(1, 2);
    this.from = half.times(made.phrase().start().dividedBy(half).floor());
    this.columns = (int) made.phrase().end().minus(from).dividedBy(step).ceil();
  }

  /** The rows, without line breaks: the beats, then the strings from the highest down. */
  public static List<String> of(Form form, Fretboard neck, MadePhrase made) {
    return new TabText(form, neck, made).rows();
  }

  /** The coarsest part of a quarter, half of it at most, that all onsets lie on. */
  private static Beats step(MadePhrase made) {
    for (int parts : new int[] {2, 4, 6, 8, 12, 24}) {
      Beats step = Beats.of(1, parts);
      if (made.phrase().tones().stream().allMatch(t -> t.onset().modulo(step).isZero())) {
        return step;
      }
    }
    return Beats.of(1, 48);
  }

  private List<String> rows() {
    List<StringBuilder> rows = new ArrayList<>();
    rows.add(new StringBuilder("     "));
    for (int string = 1; string <= neck.strings(); string++) {
      rows.add(new StringBuilder(String.format("%-3s |", neck.tuning().string(string))));
    }
    for (int column = 0; column < columns; column++) {
      addColumn(rows, column);
    }
    for (int string = 1; string <= neck.strings(); string++) {
      rows.get(string).append('|');
    }
    return rows.stream().map(row -> row.toString().stripTrailing()).toList();
  }

  private void addColumn(List<StringBuilder> rows, int column) {
    Beats at = from.plus(step.times(column));
    Beats beat = form.position(landing.plus(at)).beat();
    boolean barLine = beat.equals(Beats.ONE) && column > 0;
    List<String> cells = new ArrayList<>();
    cells.add(count(at, beat));
    for (int string = 1; string <= neck.strings(); string++) {
      cells.add(fret(string, at));
    }
    int width = cells.stream().mapToInt(String::length).max().orElse(0) + 1;
    width = Math.max(width, LEAST_WIDTH);
    for (int row = 0; row < rows.size(); row++) {
      char filler = row == 0 ? ' ' : '-';
      StringBuilder text = rows.get(row);
      text.append(barLine ? (row == 0 ? " " : "|") : "");
      text.append(cells.get(row))
          .append(String.valueOf(filler).repeat(width - cells.get(row).length()));
    }
  }

  private String count(Beats at, Beats beat) {
    Meter meter = form.bar(form.position(landing.plus(at)).bar()).meter();
    Beats half = beat.minus(Beats.of(1, 2));
    return beat.denominator() == 1
        ? beat.toString()
        : half.denominator() == 1 && !meter.isCompound() ? "&" : "";
  }

  private String fret(int string, Beats at) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < made.spots().size(); i++) {
      Spot spot = made.spots().get(i);
      Tone tone = made.phrase().tones().get(i);
      if (spot.string() == string && tone.onset().equals(at)) {
        int bend = tone.reached().midi() - tone.pitch().midi();
        text.append(spot.fret()).append(bend > 0 ? "b" + (spot.fret() + bend) : "");
      }
    }
    return text.toString();
  }
}
