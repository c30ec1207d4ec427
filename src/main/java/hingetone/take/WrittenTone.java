package hingetone.take;

import hingetone.hearing.Technique;
import hingetone.theory.NoteName;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A note of a MusicXML file while it is read; places in quarter notes. */
final class WrittenTone {
  private static final int VELOCITY = 80;

  /** When a bend has reached its pitch and when it is let down, as parts of the note; our own. */
  private static final double REACHED = 0.3;

  private static final double LET_DOWN = 0.7;
  private static final double BENT = 0.5;

  private double at;
  private double length;
  private int pitch = -1;
  private Technique technique = Technique.PLAIN;
  private boolean vibrato;
  private Optional<Integer> string = Optional.empty();
  private double up;
  private boolean before;
  private boolean released;

  /** Its pitch; one that is none stays silent. */
  void sound(String step, double alter, double octave) {
    Optional<NoteName> name = NoteName.parse(step).filter(n -> n.alteration() == 0);
    double midi = name.map(n -> n.chroma() + alter + 12 * (octave + 1)).orElse(-1.0);
    pitch = midi >= 0 && midi <= 127 ? (int) Math.round(midi) : -1;
  }

  boolean sounds() {
    return pitch >= 0;
  }

  /** MIDI number of the written pitch. */
  int pitch() {
    return pitch;
  }

  double end() {
    return at + length;
  }

  void place(double onset, double duration) {
    at = onset;
    length = duration;
  }

  void lengthen(double duration) {
    length += duration;
  }

  void onString(double number) {
    string = number >= 1 && number <= 12 ? Optional.of((int) number) : Optional.empty();
  }

  /** It is reached from the note before, where the sign ends on it. */
  void reachedBy(String type, boolean slid) {
    if (type.equals("stop")) {
      technique = slid ? Technique.SLIDE : Technique.LEGATO;
    }
  }

  /** A wave above it is a vibrato. */
  void swing(String ornament) {
    vibrato |= ornament.equals("wavy-line");
  }

  /** A bend in semitones, negative for one that is let down. */
  void bend(double semitones, boolean beforeStruck) {
    boolean sensible = Math.abs(semitones) <= 12;
    up = sensible && semitones > 0 ? semitones : up;
    before |= beforeStruck;
    released |= semitones < 0;
  }

  /** The note as it is placed. */
  PlacedNote placed() {
    double top = pitch + up;
    boolean fromTop = before && released;
    List<Handling.Point> curve = new ArrayList<>();
    if (up > 0) {
      curve.add(new Handling.Point(at, before ? top : pitch));
      if (!before) {
        curve.add(new Handling.Point(at + REACHED * length, top));
      }
      if (released) {
        curve.add(new Handling.Point(at + LET_DOWN * length, pitch));
      }
    }
    double struck = fromTop ? top : pitch;
    double reached = up < BENT || fromTop ? pitch : top;
    Technique bent =
        up == 0
            ? technique
            : up <= BENT
                ? Technique.CURL
                : fromTop ? Technique.PREBEND : released ? Technique.RELEASE : Technique.BEND;
    return new PlacedNote(
        at, end(), struck, reached, VELOCITY, new Handling(bent, vibrato, string, curve));
  }
}
