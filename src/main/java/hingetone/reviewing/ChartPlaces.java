package hingetone.reviewing;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.hearing.Alignment;
import hingetone.hearing.HeardNote;
import hingetone.hearing.Transcription;
import hingetone.hearing.Transcription.Placed;
import hingetone.output.CommandFailure;
import hingetone.print.HeardBars;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import hingetone.text.reading.TextFile;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.TempoMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds where the notes of a recording lie in a chart. */
public final class ChartPlaces {
  private ChartPlaces() {}

  /** Reads a chart; its problems end the command. */
  public static Chart read(String file) {
    Reading<Source> text = TextFile.read(file);
    Source source = text.value().orElseThrow(() -> CommandFailure.problems(text.problems()));
    Reading<Chart> reading = ChartReader.read(source);
    return reading.value().orElseThrow(() -> CommandFailure.problems(reading.problems()));
  }

  /**
   * Finds the place of a recording, or takes the one that is given.
   *
   * @param offset seconds from the start of the recording to bar 1, where it is given
   * @throws CommandFailure with the reason where it cannot be found
   */
  public static HeardBars of(Chart chart, Transcription written, Optional<Double> offset) {
    List<HeardNote> notes = written.notes().stream().map(Placed::note).toList();
    Alignment alignment =
        alignment(
            chart, notes, written.seconds(), offset, "where bar 1 is, in seconds: --offset 2.35");
    return HeardBars.of(Form.of(chart), alignment, written);
  }

  /**
   * Finds where notes lie in a chart.
   *
   * @param seconds how long they last
   * @param offset seconds from their start to bar 1, where it is given
   * @param help what the player can say where it cannot be found
   * @throws CommandFailure with the reason where it cannot be found
   */
  static Alignment alignment(
      Chart chart, List<HeardNote> notes, double seconds, Optional<Double> offset, String help) {
    Form form = Form.of(chart);
    TempoMap tempos = tempos(form, seconds);
    if (offset.isPresent()) {
      return Alignment.at(offset.get(), tempos, notes);
    }
    Beats countIn = form.startOf(1).minus(form.startOf(1 - chart.countIn()));
    double expected = -tempos.micros(countIn.negated()) / 1e6;
    Alignment found =
        Alignment.find(
                notes,
                tempos,
                form.bar(1).meter().beatLength(),
                expected,
                place -> keyAt(form, place))
            .orElseThrow(
                () ->
                    refused(
                        "it has " + notes.size() + " notes, and I need " + Alignment.FEWEST_NOTES,
                        help));
    if (found.closeness() < Alignment.LEAST_CLOSENESS) {
      throw refused("its notes keep to no beat within 4 % of the chart's tempo", help);
    }
    return found;
  }

  private static CommandFailure refused(String reason, String help) {
    return CommandFailure.wrongInput(
        "I cannot tell where this lies in the chart: " + reason + ". Say " + help);
  }

  /** The tempos of as many laps as a recording may take. */
  static TempoMap tempos(Form form, double seconds) {
    List<TempoMap.Step> steps = new ArrayList<>();
    Beats last = Beats.ZERO;
    double left = seconds * 1.1 + 60;
    for (int bar = 1; left > 0; bar++) {
      Form.Bar here = form.bar(bar);
      Beats quarters = here.section().tempo().quartersPerMinute(here.meter());
      if (!quarters.equals(last)) {
        steps.add(new TempoMap.Step(form.startOf(bar), quarters));
        last = quarters;
      }
      left -= 60 * here.meter().barLength().toDouble() / quarters.toDouble();
    }
    return new TempoMap(steps);
  }

  private static Key keyAt(Form form, Beats place) {
    return form.bar(form.position(place).bar()).key();
  }
}
