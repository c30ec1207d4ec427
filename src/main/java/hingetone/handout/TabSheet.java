package hingetone.handout;

import hingetone.chart.Chart;
import hingetone.chart.Section;
import hingetone.neck.Fretboard;
import hingetone.phrase.maker.MadePhrase;
import hingetone.phrase.maker.PhraseMaker;
import hingetone.plan.Plan;
import hingetone.print.PlanText;
import hingetone.print.TabText;
import hingetone.text.Printable;
import hingetone.text.Stamp;
import java.util.ArrayList;
import java.util.List;

/** The plan as a sheet of plain text: title, tuning, and bar by bar the chords and the tab. */
public final class TabSheet {
  /** What the file bears at its end. */
  public static final Stamp STAMP = new Stamp("txt");

  private TabSheet() {}

  /**
   * The text of the sheet.
   *
   * @param laps how many laps, 1 and up
   */
  public static String of(Chart chart, Plan plan, PhraseMaker maker, int laps) {
    Section first = chart.form().get(0);
    Fretboard neck = Fretboard.of(chart.tuning(), chart.capo());
    String capo = chart.capo() == 0 ? "" : ", capo at fret " + chart.capo() + ", frets from there";
    String head =
        chart.title()
            + "\n"
            + first.meter()
            + ", "
            + first.tempo()
            + " a minute, tuning "
            + chart.tuning()
            + capo
            + "\n"
            + "8b10 is fret 8 bent until it sounds like fret 10. & is half a beat.\n\n";
    String sheet = head + PlanText.of(plan, laps, prompt -> tab(plan, neck, maker.make(prompt)));
    return Printable.text(sheet) + "\n" + STAMP.open() + "\n";
  }

  private static List<String> tab(Plan plan, Fretboard neck, MadePhrase made) {
    List<String> lines = new ArrayList<>(TabText.of(plan.form(), neck, made));
    lines.add(made.why());
    lines.add("");
    return lines;
  }
}
