package hingetone.groove;

import hingetone.time.Meter;
import java.util.List;

/**
 * What one drum plays in a fill, one sign a step.
 *
 * @param parts the signs in one piece, or, drawn by the beat, a cell of two signs for each beat
 * @param byBeat whether it is drawn by the beat, for any meter
 */
public record FillLine(List<String> parts, boolean byBeat) {
  public FillLine {
    parts = List.copyOf(parts);
  }

  /** The signs in a meter; by the beat the last as many cells as the bar has beats. */
  String signs(Meter meter) {
    if (!byBeat) {
      return parts.get(0);
    }
    StringBuilder signs = new StringBuilder();
    int skipped = Math.max(0, parts.size() - meter.beatsPerBar());
    parts.stream().skip(skipped).forEach(cell -> signs.append(StepLine.fitted(cell, meter)));
    return signs.toString();
  }
}
