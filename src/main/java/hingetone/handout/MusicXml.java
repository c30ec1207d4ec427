package hingetone.handout;

import hingetone.chart.Chart;
import hingetone.chart.ChartBar;
import hingetone.chart.Form;
import hingetone.chart.Form.Bar;
import hingetone.handout.WrittenBars.Event;
import hingetone.neck.Fretboard;
import hingetone.phrase.maker.PhraseMaker;
import hingetone.plan.Plan;
import hingetone.print.HeardBars;
import hingetone.text.Stamp;
import hingetone.theory.Pitch;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Position;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A sheet as MusicXML 4.0: a part in notation with chord symbols, keys, meters and tempos, and the
 * same notes as a part in tab with strings, frets and bends.
 *
 * <p>The count-in comes first, its last bar numbered 0; pickups stand in it. Guitar is written an
 * octave above where it sounds, which the clef says.
 */
public final class MusicXml {
  /** What the file bears at its end. */
  public static final Stamp STAMP = new Stamp("musicxml");

  private static final String TYPE =
      "<!DOCTYPE score-partwise PUBLIC \"-//Recordare//DTD MusicXML 4.0 Partwise//EN\""
          + " \"http://www.musicxml.org/dtds/partwise.dtd\">";

  private static final List<String> MODES =
      List.of("major", "minor", "dorian", "phrygian", "lydian", "mixolydian", "locrian");

  private final Sheet sheet;
  private final Form form;
  private final WrittenBars written;
  private final Xml xml = new Xml(TYPE);

  private MusicXml(Sheet sheet) {
    this.sheet = sheet;
    this.form = sheet.form();
    this.written = new WrittenBars(form, sheet.notes());
  }

  /**
   * The text of a file with a plan's example phrases.
   *
   * @param laps how many laps, 1 and up
   */
  public static String of(Chart chart, Plan plan, PhraseMaker maker, int laps) {
    return new MusicXml(Sheet.of(chart, plan, maker, laps)).text();
  }

  /** The text of a file with a recording. */
  public static String of(String title, Fretboard neck, HeardBars bars) {
    return of(title, neck, bars, Map.of());
  }

  /**
   * The text of a file with notes in bars.
   *
   * @param words what is written above places
   */
  public static String of(
      String title, Fretboard neck, HeardBars bars, Map<Position, String> words) {
    return new MusicXml(HeardSheet.of(title, neck, bars, words)).text();
  }

  private String text() {
    xml.open("score-partwise", "version", "4.0");
    xml.open("work").leaf("work-title", sheet.title()).close();
    xml.open("identification").open("encoding").leaf("software", "hingetone").close().close();
    xml.open("part-list");
    xml.open("score-part", "id", "P1").leaf("part-name", "Guitar").close();
    xml.open("score-part", "id", "P2").leaf("part-name", "Tab").close();
    xml.close();
    part("P1", false);
    part("P2", true);
    return xml.close().comment(STAMP.open()).toString();
  }

  private void part(String id, boolean tab) {
    xml.open("part", "id", id);
    int first = sheet.firstBar();
    for (int number = first; number <= sheet.lastBar(); number++) {
      if (number < 1) {
        xml.open("measure", "number", Integer.toString(number), "implicit", "yes");
      } else {
        xml.open("measure", "number", Integer.toString(number));
      }
      attributes(number, first, tab);
      if (!tab) {
        directions(number, first);
      }
      events(number, tab);
      xml.close();
    }
    xml.close();
  }

  private void attributes(int number, int first, boolean tab) {
    Bar bar = form.bar(number);
    Bar before = form.bar(number - 1);
    boolean starts = number == first;
    boolean key = starts || number > 1 && !bar.key().equals(before.key());
    boolean time = starts || number > 1 && !bar.meter().equals(before.meter());
    if (!key && !time) {
      return;
    }
    xml.open("attributes");
    if (starts) {
      xml.leaf("divisions", NoteSign.DIVISIONS);
    }
    if (key) {
      String mode = bar.key().mode().name();
      xml.open("key").leaf("fifths", bar.key().signature());
      xml.leaf("mode", MODES.contains(mode) ? mode : "minor").close();
    }
    if (time) {
      xml.open("time").leaf("beats", bar.meter().numerator());
      xml.leaf("beat-type", bar.meter().denominator()).close();
    }
    if (starts) {
      clef(tab);
    }
    xml.close();
  }

  private void clef(boolean tab) {
    if (!tab) {
      xml.open("clef").leaf("sign", "G").leaf("line", 2).leaf("clef-octave-change", -1).close();
      return;
    }
    List<Pitch> strings = sheet.tuning().strings();
    xml.open("clef").leaf("sign", "TAB").leaf("line", strings.size() - 1).close();
    xml.open("staff-details").leaf("staff-lines", strings.size());
    for (int i = 0; i < strings.size(); i++) {
      Pitch open = strings.get(i);
      xml.open("staff-tuning", "line", Integer.toString(i + 1));
      xml.leaf("tuning-step", open.name().letter());
      if (open.name().alteration() != 0) {
        xml.leaf("tuning-alter", open.name().alteration());
      }
      xml.leaf("tuning-octave", open.octave()).close();
    }
    if (sheet.capo() > 0) {
      xml.leaf("capo", sheet.capo());
    }
    xml.close();
  }

  private void directions(int number, int first) {
    Bar bar = form.bar(number);
    Bar before = form.bar(number - 1);
    boolean newSection = number >= 1 && bar.isFirstOfSection();
    if (newSection && sheet.charted()) {
      String name = bar.section().name();
      xml.open("direction", "placement", "above").open("direction-type");
      xml.leaf("rehearsal", name).close().close();
    }
    if (number == first || newSection && !sameTempo(bar, before)) {
      tempo(bar);
    }
  }

  private static boolean sameTempo(Bar bar, Bar before) {
    return bar.section().tempo().equals(before.section().tempo())
        && bar.meter().tempoNote().equals(before.meter().tempoNote());
  }

  private void tempo(Bar bar) {
    Meter meter = bar.meter();
    double quarters = bar.section().tempo().quartersPerMinute(meter).toDouble();
    xml.open("direction", "placement", "above").open("direction-type").open("metronome");
    xml.leaf("beat-unit", meter.isCompound() ? beatUnit(meter) : "quarter");
    if (meter.isCompound()) {
      xml.empty("beat-unit-dot");
    }
    xml.leaf("per-minute", bar.section().tempo()).close().close();
    xml.empty("sound", "tempo", String.format(Locale.ROOT, "%.3f", quarters)).close();
  }

  /** The dotted note that a compound meter counts: a quarter in x/8, an eighth in x/16. */
  private static String beatUnit(Meter meter) {
    return meter.denominator() == 8 ? "quarter" : "eighth";
  }

  /** The bar's notes; chord symbols and words stand before the note or rest they begin with. */
  private void events(int number, boolean tab) {
    Bar bar = form.bar(number);
    List<Event> events = written.bar(number);
    List<List<String>> beams = Beaming.of(bar.meter(), events);
    long at = 0;
    for (int i = 0; i < events.size(); i++) {
      long end = at + events.get(i).sign().length();
      if (!tab) {
        words(number, at, end);
        if (number >= 1 && sheet.charted()) {
          chord(bar, at);
        }
      }
      WrittenNotes.add(xml, events.get(i), beams.get(i), tab);
      at = end;
    }
  }

  /** What stands above the places from one to another of a bar. */
  private void words(int number, long from, long to) {
    for (Sheet.Words words : sheet.words()) {
      Beats beat = words.at().beat().minus(Beats.ONE);
      long place = form.bar(number).meter().toQuarters(beat).toUnits(NoteSign.DIVISIONS);
      if (words.at().bar() == number && from <= place && place < to) {
        xml.open("direction", "placement", "above").open("direction-type");
        xml.leaf("words", words.text()).close().close();
      }
    }
  }

  private void chord(Bar bar, long at) {
    for (ChartBar.Slot slot : bar.chords().chords()) {
      if (WrittenBars.place(bar.meter(), slot) == at) {
        ChordSymbol.add(xml, slot.chord());
      }
    }
  }
}
