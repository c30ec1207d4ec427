package hingetone.drill;

import hingetone.chart.Chart;
import hingetone.chart.ChartBar;
import hingetone.chart.Leave;
import hingetone.chart.PhraseTurn;
import hingetone.chart.Section;
import hingetone.time.Beats;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

/** A player's chart, made into one for an exercise. */
final class DrillChart {
  /** Bars before and after a crossing. */
  private static final int AROUND = 4;

  private DrillChart() {}

  /** How many keys a chart goes through. */
  static long keys(Chart chart) {
    return chart.form().stream().map(Section::key).distinct().count();
  }

  /** The chart with these phrases in each section. */
  static Chart with(Chart chart, PhraseTurn... phrases) {
    return changed(
        chart, chart.form(), s -> section(s, s.bars(), List.of(phrases), s.pickup(), s.leave()));
  }

  /** The chart with these phrases and pickups of so many beats. */
  static Chart with(Chart chart, List<PhraseTurn> phrases, Beats pickup) {
    return changed(chart, chart.form(), s -> section(s, s.bars(), phrases, pickup, s.leave()));
  }

  /** The chart with its sections left in these ways in turn. */
  static Chart leaving(Chart chart, Leave... ways) {
    return changed(
        chart, chart.form(), s -> section(s, s.bars(), s.phrases(), s.pickup(), List.of(ways)));
  }

  /**
   * The last bars of the first section that leads into another key and the first bars of the one
   * after it, by turns: a loop with two crossings, a statement landing on each line.
   */
  static Chart aroundTheFirstCrossing(Chart chart) {
    List<Section> form = chart.form();
    int at = 0;
    while (form.get(at).key().equals(form.get((at + 1) % form.size()).key())) {
      at++;
    }
    List<PhraseTurn> statements = List.of(new PhraseTurn(PhraseTurn.Role.STATEMENT, 2, false));
    Section from = form.get(at);
    Section to = form.get((at + 1) % form.size());
    return changed(
        chart,
        List.of(from, to),
        s -> {
          int bars = s.bars().size();
          int some = Math.min(AROUND, bars);
          int first = s.equals(from) ? bars - some : 0;
          return section(
              s, s.bars().subList(first, first + some), statements, s.pickup(), s.leave());
        });
  }

  private static Section section(
      Section s, List<ChartBar> bars, List<PhraseTurn> phrases, Beats pickup, List<Leave> leave) {
    return new Section(
        s.name(),
        s.key(),
        s.meter(),
        s.tempo(),
        s.groove(),
        s.band(),
        s.swing(),
        bars,
        phrases,
        pickup,
        leave,
        s.riff());
  }

  /** The chart with another form and each section changed. */
  private static Chart changed(Chart chart, List<Section> form, UnaryOperator<Section> change) {
    Map<String, Section> sections = new LinkedHashMap<>();
    form.forEach(s -> sections.computeIfAbsent(s.name(), name -> change.apply(s)));
    return new Chart(
        chart.title(),
        List.copyOf(sections.values()),
        form.stream().map(s -> sections.get(s.name())).toList(),
        chart.countIn(),
        chart.instrument(),
        chart.tuning(),
        chart.capo(),
        chart.position(),
        chart.fluency(),
        chart.seed());
  }
}
