package hingetone.chart;

import hingetone.neck.Tuning;
import java.util.List;

/**
 * A chart as its file says it: sections and the order in which they are played.
 *
 * @param title what it is called
 * @param sections each section once, in the order of the file
 * @param form the sections as they are played in one lap, at least one
 * @param countIn bars counted before bar 1, 0 or more
 * @param instrument what the player plays: {@code guitar} unless stated
 * @param tuning the tuning of that instrument, without the capo
 * @param capo the fret of the capo, 0 for none
 * @param seed the seed of everything that varies
 */
public record Chart(
    String title,
    List<Section> sections,
    List<Section> form,
    int countIn,
    String instrument,
    Tuning tuning,
    int capo,
    long seed) {
  public Chart {
    sections = List.copyOf(sections);
    form = List.copyOf(form);
    if (form.isEmpty()) {
      throw new IllegalArgumentException("a chart plays at least one section");
    }
  }
}
