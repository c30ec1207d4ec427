package hingetone.hearing;

import java.util.List;

/**
 * A note as it was heard.
 *
 * @param at when it begins, in seconds from the start of the sound
 * @param end when it has died away or the next note takes its place, in seconds
 * @param level its loudest, in dB below full scale
 * @param struck MIDI number, with fractions, of the pitch it begins with
 * @param reached that of the pitch it counts as: where it was bent or slid to
 * @param technique how it is played
 * @param vibrato whether its pitch swings
 * @param curve its pitch, a point wherever it has changed by two hundredths of a semitone
 * @param certainty how sure it is, 0 to 1
 */
public record HeardNote(
    double at,
    double end,
    double level,
    double struck,
    double reached,
    Technique technique,
    boolean vibrato,
    List<Point> curve,
    double certainty) {

  /**
   * The pitch at a moment.
   *
   * @param at in seconds from the start of the sound
   * @param midi MIDI number with fractions
   */
  public record Point(double at, double midi) {}

  public HeardNote {
    curve = List.copyOf(curve);
  }

  /** MIDI number of the fret it is played on: of a note struck while bent, where it falls to. */
  public int fretted() {
    boolean rests = technique == Technique.BEND || technique == Technique.RELEASE;
    return (int) Math.round(rests || technique == Technique.CURL ? struck : reached);
  }

  /** How far its string is bent from the fret's pitch, in whole semitones, 1 and more. */
  public int bent() {
    double top = technique == Technique.RELEASE ? top() : Math.max(struck, reached);
    double fret = technique == Technique.RELEASE ? struck : Math.min(struck, reached);
    return (int) Math.max(1, Math.round(top - fret));
  }

  private double top() {
    return curve.stream().mapToDouble(Point::midi).max().orElse(struck);
  }

  /** The same note lower by some semitones. */
  HeardNote lowered(double semitones) {
    List<Point> lower =
        curve.stream().map(point -> new Point(point.at, point.midi - semitones)).toList();
    return new HeardNote(
        at,
        end,
        level,
        struck - semitones,
        reached - semitones,
        technique,
        vibrato,
        lower,
        certainty);
  }
}
