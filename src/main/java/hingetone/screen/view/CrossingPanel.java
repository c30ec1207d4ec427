package hingetone.screen.view;

import hingetone.chart.Leave;
import hingetone.screen.BarsAhead;
import hingetone.screen.ChartFacts.Crossing;
import hingetone.screen.State;
import hingetone.screen.picture.Canvas;
import hingetone.screen.picture.Ink;
import hingetone.screen.picture.Style;
import hingetone.screen.view.Outlook.Nearing;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The next change of key or way home: the two keys or the dominant and the key, how long until,
 * which notes stay, and the ways over. It comes forward as the change nears and steps back after
 * it; its place never moves.
 */
final class CrossingPanel {
  /** From so many bars before the line on it is no longer faint. */
  static final int NEAR_BARS = 4;

  private CrossingPanel() {}

  static void draw(Canvas canvas, State state, Outlook moment) {
    if (canvas.rows() == 0) {
      return;
    }
    Optional<Crossing> crossed = moment.crossed();
    Optional<Nearing> nearing = moment.nextLine();
    boolean closer = nearing.filter(n -> moment.bars(n.until()) <= NEAR_BARS).isPresent();
    if (crossed.isPresent() && !closer) {
      Style style = Style.of(Ink.COMES).asBold();
      int column = canvas.put(0, 1, crossed.get().to() + " from here", style);
      stays(canvas, column, crossed.get(), state, Style.of(Ink.STAYS));
    } else if (nearing.isPresent()) {
      ahead(canvas, nearing.get(), state, moment);
    }
  }

  private static void ahead(Canvas canvas, Nearing nearing, State state, Outlook moment) {
    Crossing crossing = nearing.crossing();
    long bars = moment.bars(nearing.until());
    Style style = bars > NEAR_BARS ? Style.QUIET : Style.of(Ink.COMES).asBold();
    String keys = crossing.from() + " " + Signs.of(state).to() + " " + crossing.to();
    int column = canvas.put(0, 1, keys + "  " + moment.in(nearing.until()), style);
    stays(canvas, column, crossing, state, bars > NEAR_BARS ? Style.QUIET : Style.of(Ink.STAYS));
    Style way = bars > NEAR_BARS ? Style.QUIET : Style.PLAIN;
    List<String> ways = ways(crossing, chosen(state, nearing.atBar()));
    for (int i = 0; i < ways.size(); i++) {
      canvas.put(1 + i, 1, ways.get(i), i == 0 ? way : Style.QUIET);
    }
  }

  private static void stays(
      Canvas canvas, int column, Crossing crossing, State state, Style style) {
    String notes =
        crossing.common().isEmpty()
            ? "nothing stays"
            : Signs.of(state).stays() + " stays " + String.join(" ", crossing.common());
    canvas.put(0, column + 3, notes, style);
  }

  /** The way the plan chose; none into the bar on which the music ends. */
  private static Optional<Leave> chosen(State state, int atBar) {
    return BarsAhead.isEnding(state, atBar)
        ? Optional.empty()
        : state.facts().plan().wayInto(atBar);
  }

  /** The ways in words, the chosen one first. */
  private static List<String> ways(Crossing crossing, Optional<Leave> chosen) {
    boolean runs = chosen.equals(Optional.of(Leave.RUN));
    List<String> ways = new ArrayList<>();
    String hold = crossing.hold().isEmpty() ? "" : "hold: " + crossing.hold().get(0);
    String run = crossing.run().isEmpty() ? "" : "run: " + crossing.run().get(0);
    ways.add(runs ? run : hold);
    ways.add(runs ? hold : run);
    ways.removeIf(String::isEmpty);
    return IntStream.range(0, ways.size())
        .mapToObj(i -> i == 0 ? ways.get(i) : "or " + ways.get(i))
        .toList();
  }

  /** A way in a word. */
  static String word(Leave way) {
    return switch (way) {
      case RUN -> "run";
      case HOLD -> "hold";
      case EITHER -> "run or hold";
    };
  }
}
