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
      xml.open("note");
      if (i > 0) {
        xml.empty("chord");
      }
      Pitch pitch = note.pitch();
      xml.open("pitch").leaf("step", pitch.name().letter());
      if (pitch.name().alteration() != 0) {
        xml.leaf("alter", pitch.name().alteration());
      }
      xml.leaf("octave", pitch.octave()).close();
      value(xml, event);
      for (int level = 1; i == 0 && level <= beams.size(); level++) {
        xml.leaf("beam", beams.get(level - 1), "number", Integer.toString(level));
      }
      notations(xml, event, note, tab);
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

  private static void notations(Xml xml, Event event, SheetNote note, boolean tab) {
    boolean bends = !note.bends().isEmpty() && !event.goneOn();
    boolean placed = tab && note.spot().isPresent();
    if (!placed && !bends && !event.goneOn() && !event.goesOn()) {
      return;
    }
    xml.open("notations");
    if (event.goneOn()) {
      xml.empty("tied", "type", "stop");
    }
    if (event.goesOn()) {
      xml.empty("tied", "type", "start");
    }
    if (placed || bends) {
      xml.open("technical");
      if (placed) {
        xml.leaf("string", note.spot().get().string()).leaf("fret", note.spot().get().fret());
      }
      if (bends) {
        note.bends().forEach(bend -> bend(xml, bend));
      }
      xml.close();
    }
    xml.close();
  }

  private static void bend(Xml xml, SheetNote.Bend bend) {
    xml.open("bend").leaf("bend-alter", (int) bend.semitones()).close();
  }
}
