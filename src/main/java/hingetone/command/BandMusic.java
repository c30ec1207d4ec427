package hingetone.command;

import hingetone.backing.Backing;
import hingetone.chart.Chart;
import hingetone.groove.Grooves;
import hingetone.phrase.maker.LeadPart;
import hingetone.plan.ExampleChoice;
import hingetone.plan.Prompt;
import hingetone.play.Arrangement.Music;
import hingetone.sequencer.LapSource;
import hingetone.text.reading.Source;
import hingetone.time.Position;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * The music of a chart for playing: its band, with example phrases where they are wanted, and the
 * same in the next groove.
 *
 * @param grooves those found
 * @param laps after how many it ends; empty for no end
 */
record BandMusic(Grooves grooves, Optional<Integer> laps) {

  /** A chart's music, played by its band. */
  Music of(Chart chart, Backing backing) {
    String name = backing.groove(chart.form().get(0)).name();
    LapSource band = laps.<LapSource>map(n -> l -> backing.lapOf(l, n)).orElse(backing::lap);
    return new Music(
        name,
        (shown, from, position) -> {
          Chart there = chart.withPosition(position);
          return shown.map(w -> withExamples(there, backing, band, w, from)).orElse(band);
        },
        () -> next(chart, name));
  }

  /** The band with example phrases on a channel of their own, up to the ending. */
  private LapSource withExamples(
      Chart chart, Backing backing, LapSource band, ExampleChoice which, Position from) {
    LeadPart lead = ExamplePhrases.of(chart, grooves).lead(backing::played);
    Predicate<Prompt> shown = which.of(lead.plan(), from);
    return number ->
        laps.filter(n -> number > n).isPresent()
            ? band.lap(number)
            : band.lap(number).with(lead.ofLap(number, shown));
  }

  /** The chart in the next groove, by name, that fits all its meters. */
  private Optional<Music> next(Chart chart, String name) {
    List<String> names = grooves.names();
    int at = names.indexOf(name);
    for (int i = 1; i < names.size(); i++) {
      Chart other = chart.withGroove(names.get((at + i + names.size()) % names.size()));
      Optional<Backing> band = Backing.read(other, grooves, new Source("", "")).value();
      if (band.isPresent()) {
        return Optional.of(of(other, band.get()));
      }
    }
    return Optional.empty();
  }
}
