package hingetone.handout;

import hingetone.handout.WrittenBars.Event;
import hingetone.handout.WrittenBars.Struck;
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
      Struck struck = event.notes().get(i);
      xml.open("note");
      if (i > 0) {
        xml.empty("chord");
      }
      Pitch pitch = struck.tone().pitch();
      xml.open("pitch").leaf("step", pitch.name().letter());
      if (pitch.name().alteration() != 0) {
        xml.leaf("alter", pitch.name().alteration());
      }
      xml.leaf("octave", pitch.octave()).close();
      value(xml, event);
      for (int level = 1; i == 0 && level <= beams.size(); level++) {
        xml.leaf("beam", beams.get(level - 1), "number", Integer.toString(level));
      }
      notations(xml, event, struck, tab);
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

  private static void notations(Xml xml, Event event, Struck struck, boolean tab) {
    boolean bends = struck.tone().bend().isPresent() && !event.goneOn();
    if (!tab && !bends && !event.goneOn() && !event.goesOn()) {
      return;
    }
    xml.open("notations");
    if (event.goneOn()) {
      xml.empty("tied", "type", "stop");
    }
    if (event.goesOn()) {
      xml.empty("tied", "type", "start");
    }
    if (tab || bends) {
      xml.open("technical");
      if (tab) {
        xml.leaf("string", struck.spot().string()).leaf("fret", struck.spot().fret());
      }
      if (bends) {
        int semitones = struck.tone().reached().midi() - struck.tone().pitch().midi();
        xml.open("bend").leaf("bend-alter", semitones).close();
      }
      xml.close();
    }
    xml.close();
  }
}
