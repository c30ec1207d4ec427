package hingetone.review;

import hingetone.ground.Ground;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * How thick the playing was into a turnaround: the bars in which a dominant leads home.
 *
 * @param atBar the bar on whose line the tonic is reached
 * @param densityBefore notes struck a beat in the four bars before the last
 * @param densityInto notes struck a beat in the last bar before the line
 */
public record DominantHome(int atBar, double densityBefore, double densityInto) {

  /** The turnarounds that were played over, in order. */
  public static List<DominantHome> of(Played played, Map<Integer, Ground> grounds) {
    List<DominantHome> homes = new ArrayList<>();
    for (int i = 1; i < played.bars().size(); i++) {
      Played.Bar bar = played.bars().get(i);
      Played.Bar last = played.bars().get(i - 1);
      Ground ground = grounds.get(bar.keyShift());
      int length = ground.form().bars().size();
      boolean home =
          last.number() >= 1
              && bar.number() == last.number() + 1
              && ground.turnarounds().stream()
                  .anyMatch(t -> (t.atBar() - 1) % length + 1 == bar.of().number());
      if (home) {
        LineWay way = played.wayInto(i);
        homes.add(new DominantHome(bar.number(), way.densityBefore(), way.densityInto()));
      }
    }
    return homes;
  }
}
