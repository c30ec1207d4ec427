package hingetone.backing;

import hingetone.chart.Chart;
import hingetone.chart.Section;
import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import hingetone.text.Suggestion;
import hingetone.text.reading.Diagnostic;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import hingetone.text.reading.Span;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Finds the groove each section is played in, or says why there is none. */
final class GrooveChoice {
  private GrooveChoice() {}

  private static String nameFor(Section section) {
    return section.groove().orElse(Grooves.PLAIN);
  }

  /** The groove of each section by the section's name, each file read once. */
  static Reading<Map<String, Groove>> read(Chart chart, Grooves grooves, Source source) {
    Map<String, Groove> bySection = new HashMap<>();
    Map<String, Reading<Groove>> readings = new HashMap<>();
    Set<Diagnostic> problems = new LinkedHashSet<>();
    for (Section section : chart.sections()) {
      String name = nameFor(section);
      if (!grooves.has(name)) {
        problems.add(unknown(name, grooves, source));
        continue;
      }
      Reading<Groove> reading = readings.computeIfAbsent(name, grooves::read);
      problems.addAll(reading.problems());
      reading.value().ifPresent(groove -> bySection.put(section.name(), groove));
      if (reading.value().filter(groove -> !groove.fits(section.meter())).isPresent()) {
        problems.add(misfit(section, reading.value().get(), grooves, source));
      }
    }
    return problems.isEmpty() ? Reading.of(bySection) : Reading.failed(List.copyOf(problems));
  }

  private static Diagnostic unknown(String name, Grooves grooves, Source source) {
    return new Diagnostic(
        source,
        place(name, source),
        "there is no groove \"" + name + "\"",
        "The grooves are " + String.join(", ", grooves.names()) + "; a path to a file will do too.",
        Suggestion.nearest(name, grooves.names()));
  }

  private static Diagnostic misfit(Section section, Groove groove, Grooves grooves, Source source) {
    List<String> fitting =
        grooves.all().stream().filter(g -> g.fits(section.meter())).map(Groove::name).toList();
    return Diagnostic.of(
        source,
        place(nameFor(section), source),
        "the groove \"" + groove.name() + "\" is not drawn for " + section.meter(),
        "It is drawn for "
            + groove.meterText()
            + ". For "
            + section.meter()
            + " there are: "
            + String.join(", ", fitting)
            + ".");
  }

  /** The first place where the source names the groove. */
  private static Span place(String name, Source source) {
    Matcher named =
        Pattern.compile("groove:\\s*[\"']?(" + Pattern.quote(name) + ")").matcher(source.text());
    if (named.find()) {
      return new Span(named.start(1), named.end(1));
    }
    int anywhere = Math.max(0, source.text().indexOf(name));
    return new Span(anywhere, Math.min(source.text().length(), anywhere + name.length()));
  }
}
