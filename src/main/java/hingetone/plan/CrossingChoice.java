package hingetone.plan;

import hingetone.chart.Form;
import hingetone.chart.Form.Bar;
import hingetone.chart.Leave;
import hingetone.chart.Section;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Which way each key change is gone over: as the sections' {@code leave} lists say in turn; where
 * they leave it open, a run and a hold by turns, the other one in the next lap.
 */
final class CrossingChoice {
  /** The sections in the order they are left for another key; the seam's last, where it is one. */
  private final List<Section> left = new ArrayList<>();

  /** For each place of the form which of those departures leads into it; empty for none. */
  private final List<Optional<Integer>> departureInto = new ArrayList<>();

  private final int offset;

  CrossingChoice(Form form, long seed) {
    List<Section> places =
        form.bars().stream().filter(Bar::isFirstOfSection).map(Bar::section).toList();
    for (int place = 1; place < places.size(); place++) {
      departureInto.add(departure(places.get(place - 1), places.get(place)));
    }
    departureInto.add(0, departure(places.get(places.size() - 1), places.get(0)));
    offset = (int) Math.floorMod(seed, 2L);
  }

  private Optional<Integer> departure(Section from, Section to) {
    if (from.key().equals(to.key())) {
      return Optional.empty();
    }
    left.add(from);
    return Optional.of(left.size() - 1);
  }

  /** The way into a place of the form in a lap; empty where the key stays, or music starts. */
  Optional<Leave> wayInto(int place, int lap) {
    int lapOfLeaving = place == 0 ? lap - 1 : lap;
    return lapOfLeaving < 1
        ? Optional.empty()
        : departureInto.get(place).map(departure -> way(departure, lapOfLeaving));
  }

  private Leave way(int departure, int lap) {
    Section section = left.get(departure);
    if (section.leave().isEmpty()) {
      return byTurns(departure, lap);
    }
    long before = times(section, left.subList(0, departure));
    long timesLeft = (lap - 1L) * times(section, left) + before;
    Leave stated = section.leave().get((int) (timesLeft % section.leave().size()));
    return stated == Leave.EITHER ? byTurns(departure, lap) : stated;
  }

  private Leave byTurns(int departure, int lap) {
    return (departure + lap + offset) % 2 == 0 ? Leave.RUN : Leave.HOLD;
  }

  private static long times(Section section, List<Section> sections) {
    return sections.stream().filter(s -> s.name().equals(section.name())).count();
  }
}
