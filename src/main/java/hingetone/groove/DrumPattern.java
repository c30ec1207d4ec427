package hingetone.groove;

import hingetone.notation.DrumLane;
import hingetone.score.Note;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.List;
import java.util.Map;

/**
 * What the drummer plays in a bar or several.
 *
 * @param use when it is played
 * @param lanes for each percussion key its strokes
 */
public record DrumPattern(PatternUse use, Map<Integer, StepLine> lanes) implements Pattern {
  public DrumPattern {
    lanes = Map.copyOf(lanes);
  }

  @Override
  public int length() {
    return lanes.values().stream().mapToInt(StepLine::length).max().orElse(1);
  }

  /** The strokes of one of its bars, counted from 0, onsets in quarter notes from the bar line. */
  public List<Note> strokes(int bar, Meter meter) {
    return lanes.entrySet().stream()
        .flatMap(lane -> strokes(lane.getKey(), lane.getValue().signs(bar, meter), meter).stream())
        .sorted()
        .toList();
  }

  @Override
  public int strokes(Meter meter) {
    return strokes(0, meter).size();
  }

  private static List<Note> strokes(int key, String signs, Meter meter) {
    Beats step = meter.barLength().dividedBy(signs.length());
    return DrumLane.strokes(signs, key, step, StrokeSign.VELOCITIES);
  }
}
