package hingetone.handout;

import hingetone.handout.SheetNote.Bend;
import hingetone.handout.SheetNote.Joint;
import hingetone.handout.SheetNote.Way;
import hingetone.handout.WrittenBars.Event;
import hingetone.neck.Spot;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What stands about a note in MusicXML ({@code notations}): ties, slides, vibrato, strings and
 * frets, bends, hammer-ons and pull-offs. Elements and values as in the MusicXML 4.0 reference;
 * that {@code bend-alter} is negative for what goes back is said there under that name (from
 * memory).
 */
final class Notations {
  private final Xml xml;
  private final List<Runnable> plain = new ArrayList<>();
  private final List<Runnable> technical = new ArrayList<>();

  private Notations(Xml xml) {
    this.xml = xml;
  }

  /**
   * Adds what there is about a note; nothing where there is nothing.
   *
   * @param tab whether with strings and frets
   */
  static void add(Xml xml, Event event, SheetNote note, boolean tab) {
    Notations notations = new Notations(xml);
    notations.ties(event);
    if (tab) {
      note.spot().ifPresent(notations::place);
    }
    if (!event.goneOn()) {
      note.joined().ifPresent(joint -> notations.joint(joint, "stop"));
      note.graced().ifPresent(grace -> notations.joint(Joint.SLIDE, "stop"));
      note.bends().forEach(notations::bend);
    }
    event.leadsTo().ifPresent(joint -> notations.joint(joint, "start"));
    if (note.vibrato()) {
      notations.vibrato(event);
    }
    notations.write();
  }

  /** Adds what there is about the note that another slides from. */
  static void addGrace(Xml xml, Optional<Spot> spot, boolean tab) {
    Notations notations = new Notations(xml);
    notations.joint(Joint.SLIDE, "start");
    if (tab) {
      spot.ifPresent(notations::place);
    }
    notations.write();
  }

  private void ties(Event event) {
    if (event.goneOn()) {
      plain.add(() -> xml.empty("tied", "type", "stop"));
    }
    if (event.goesOn()) {
      plain.add(() -> xml.empty("tied", "type", "start"));
    }
  }

  private void joint(Joint joint, String type) {
    switch (joint) {
      case SLIDE -> plain.add(() -> xml.empty("slide", "type", type));
      case HAMMER_ON -> technical.add(() -> xml.leaf("hammer-on", "H", "type", type));
      case PULL_OFF -> technical.add(() -> xml.leaf("pull-off", "P", "type", type));
    }
  }

  private void place(Spot spot) {
    technical.add(() -> xml.leaf("string", spot.string()).leaf("fret", spot.fret()));
  }

  private void bend(Bend bend) {
    technical.add(
        () -> {
          double way = bend.way() == Way.RELEASE ? -bend.semitones() : bend.semitones();
          xml.open("bend").leaf("bend-alter", way % 1 == 0 ? (Object) (int) way : way);
          if (bend.way() != Way.UP) {
            xml.empty(bend.way() == Way.BEFORE ? "pre-bend" : "release");
          }
          xml.close();
        });
  }

  private void vibrato(Event event) {
    plain.add(
        () -> {
          xml.open("ornaments");
          if (!event.goneOn()) {
            xml.empty("wavy-line", "type", "start");
          }
          xml.empty("wavy-line", "type", event.goesOn() ? "continue" : "stop");
          xml.close();
        });
  }

  private void write() {
    if (plain.isEmpty() && technical.isEmpty()) {
      return;
    }
    xml.open("notations");
    plain.forEach(Runnable::run);
    if (!technical.isEmpty()) {
      xml.open("technical");
      technical.forEach(Runnable::run);
      xml.close();
    }
    xml.close();
  }
}
