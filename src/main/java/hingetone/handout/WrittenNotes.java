package hingetone.handout;

import hingetone.handout.WrittenBars.Event;
import hingetone.theory.Pitch;
import java.util.List;

/** Notes and rests in MusicXML: {@code note}. */
final class WrittenNotes {
  private WrittenNotes() {}

  /**
   * Adds notes struck together, or a rest.
   *
   * @param beams their beams from the outermost
   * @param tab whether with strings and frets
   */
  static void add(Xml xml, Event event, List<String> beams, boolean tab) {
    if (event.notes().isEmpty()) {
      rest(xml, event);
    }
    for (int i = 0; i < event.notes().size(); i++) {
      SheetNote note = event.notes().get(i);
      if (!event.goneOn()) {
        note.graced().ifPresent(grace -> grace(xml, grace, tab));
      }
      xml.open("note");
      if (i > 0) {
        xml.empty("chord");
      }
      pitch(xml, note.pitch());
      value(xml, event);
      for (int level = 1; i == 0 && level <= beams.size(); level++) {
        xml.leaf("beam", beams.get(level - 1), "number", Integer.toString(level));
      }
      Notations.add(xml, event, note, tab);
      xml.close();
    }
  }

  private static void rest(Xml xml, Event event) {
    xml.open("note");
    if (event.sign().isBar()) {
      xml.empty("rest", "measure", "yes");
      xml.leaf("duration", event.sign().length()).leaf("voice", 1);
    } else {
      xml.empty("rest");
      value(xml, event);
    }
    xml.close();
  }

  private static void value(Xml xml, Event event) {
    xml.leaf("duration", event.sign().length());
    if (event.goneOn()) {
      xml.empty("tie", "type", "stop");
    }
    if (event.goesOn()) {
      xml.empty("tie", "type", "start");
    }
    xml.leaf("voice", 1).leaf("type", event.sign().type());
    if (event.sign().dotted()) {
      xml.empty("dot");
    }
    if (event.sign().triplet()) {
      xml.open("time-modification").leaf("actual-notes", 3).leaf("normal-notes", 2).close();
    }
  }

  /** The note that another slides from. */
  private static void grace(Xml xml, SheetNote.Grace grace, boolean tab) {
    xml.open("note").empty("grace", "slash", "yes");
    pitch(xml, grace.pitch());
    xml.leaf("voice", 1).leaf("type", "16th");
    Notations.addGrace(xml, grace.spot(), tab);
    xml.close();
  }

  private static void pitch(Xml xml, Pitch pitch) {
    xml.open("pitch").leaf("step", pitch.name().letter());
    if (pitch.name().alteration() != 0) {
      xml.leaf("alter", pitch.name().alteration());
    }
    xml.leaf("octave", pitch.octave()).close();
  }
}
