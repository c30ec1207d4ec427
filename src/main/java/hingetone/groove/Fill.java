package hingetone.groove;

import hingetone.notation.DrumLane;
import hingetone.score.Note;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.List;
import java.util.Map;

/**
 * What the drummer plays at the end of a bar instead of the pattern.
 *
 * @param use when it is played
 * @param size how much of a fill it is
 * @param beats how long it lasts, in beats of the meter, up to the bar line
 * @param lanes for each percussion key its strokes
 */
public record Fill(PatternUse use, Size size, int beats, Map<Integer, FillLine> lanes) {
  /** How much of a fill it is. */
  public enum Size {
    /** Within a section. */
    SMALL,
    /** Into the next section. */
    MEDIUM,
    /** Into a section in another key. */
    BIG
  }

  public Fill {
    lanes = Map.copyOf(lanes);
  }

  /** Where it starts, in quarter notes from the bar line. */
  public Beats start(Meter meter) {
    return meter.barLength().minus(length(meter));
  }

  private Beats length(Meter meter) {
    return meter.toQuarters(Beats.of(Math.min(beats, meter.beatsPerBar())));
  }

  /** Its strokes, onsets in quarter notes from the bar line. */
  public List<Note> strokes(Meter meter) {
    return lanes.entrySet().stream()
        .flatMap(lane -> strokes(lane.getKey(), lane.getValue().signs(meter), meter).stream())
        .sorted()
        .toList();
  }

  private List<Note> strokes(int key, String signs, Meter meter) {
    Beats step = length(meter).dividedBy(signs.length());
    Beats start = start(meter);
    return DrumLane.strokes(signs, key, step, StrokeSign.VELOCITIES).stream()
        .map(note -> note.withOnset(note.onset().plus(start)))
        .toList();
  }
}
