package hingetone.take;

import hingetone.hearing.Technique;
import java.util.List;

/**
 * A note in musical time.
 *
 * @param at where it is struck, in quarter notes from bar 1
 * @param end where it ends, in quarter notes from bar 1
 * @param struck MIDI number, with fractions, of the pitch it begins with
 * @param reached that of the pitch it counts as: the one it is bent to
 * @param velocity MIDI velocity, 1 to 127
 * @param handling how it was played
 */
public record PlacedNote(
    double at, double end, double struck, double reached, int velocity, Handling handling) {
  /** A note of which no more is known. */
  public PlacedNote(double at, double end, double struck, double reached, int velocity) {
    this(at, end, struck, reached, velocity, Handling.PLAIN);
  }

  /** MIDI number of the pitch it counts as. */
  public int pitch() {
    return (int) Math.round(reached);
  }

  /** The pitch class of that, 0 to 11. */
  public int chroma() {
    return Math.floorMod(pitch(), 12);
  }

  /** MIDI number of the fret it is played on: of one struck bent and let down, where it ends. */
  public int fretted() {
    boolean letDown = handling.technique() == Technique.PREBEND;
    return (int) Math.round(letDown ? reached : struck);
  }

  public double length() {
    return end - at;
  }

  /** The same note elsewhere, its curve with it. */
  public PlacedNote movedTo(double newAt, double newEnd) {
    double each = length() > 0 ? (newEnd - newAt) / length() : 0;
    List<Handling.Point> curve =
        handling.curve().stream()
            .map(p -> new Handling.Point(newAt + (p.at() - at) * each, p.midi()))
            .toList();
    Handling there =
        new Handling(handling.technique(), handling.vibrato(), handling.string(), curve);
    return new PlacedNote(newAt, newEnd, struck, reached, velocity, there);
  }

  /** The same on a string that is known. */
  PlacedNote onString(int string) {
    return new PlacedNote(at, end, struck, reached, velocity, handling.onString(string));
  }
}
