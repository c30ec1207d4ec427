package hingetone.screen.view;

import hingetone.screen.State;
import hingetone.screen.ViewSettings.Panel;
import hingetone.screen.picture.BigLetters;
import hingetone.screen.picture.Size;

/**
 * How many rows each part of the picture gets.
 *
 * <p>There is one rule for every size: the parts stand in the order in which a player would miss
 * them, and each is taken while rows are left. So a single row still tells chord, next chord and
 * count, and a tall window gets larger letters, more bars ahead and air.
 */
final class Layout {
  private static final int GAPS = 4;

  /** Below this there is no use in drawing a neck. */
  private static final int LEAST_NECK_COLUMNS = 30;

  int place;
  int now;
  int scale;
  int road;
  int roadLines;
  int turn;
  int crossing;
  int fit;
  int neck;
  int legend;
  int status;
  int gaps;
  int widerGaps;
  private int left;

  /** The rows of each part for a state at a size. */
  static Layout of(State state, Size size) {
    Layout layout = new Layout();
    layout.left = size.rows();
    layout.share(state, size.columns());
    return layout;
  }

  private void share(State state, int columns) {
    boolean ahead = state.settings().shows(Panel.AHEAD);
    boolean phrases = state.settings().shows(Panel.PHRASES);
    boolean necks = state.settings().shows(Panel.NECK) && columns >= LEAST_NECK_COLUMNS;
    now = take(1);
    turn = phrases ? take(1) : 0;
    place = take(1);
    crossing = take(1);
    road = ahead ? take(2) : 0;
    fit = take(1);
    road += road > 0 ? take(1) : 0;
    road += road > 2 && phrases ? take(1) : 0;
    roadLines = road > 0 ? 1 : 0;
    int letters = BigLetters.height(1, state.terminal().ascii());
    scale = now > 0 && left >= letters ? 1 : 0;
    now += scale > 0 ? take(letters) : 0;
    neck = necks ? take(state.facts().neck().strings().size() + 1) : 0;
    status = take(1);
    crossing += take(1);
    for (int i = 0; i < GAPS; i++) {
      gaps += take(1);
    }
    turn += turn > 0 ? take(1) : 0;
    legend = neck > 0 ? take(1) : 0;
    crossing += take(1);
    if (road > 2 && left >= road + 1) {
      roadLines += take(road + 1) / (road + 1);
    }
    if (scale > 0 && left >= letters + 2) {
      scale += take(letters) / letters;
      now += letters;
    }
    for (int i = 0; i < GAPS; i++) {
      widerGaps += take(1);
    }
    if (road > 2 && left >= road + 1) {
      roadLines += take(road + 1) / (road + 1);
    }
  }

  /** Takes rows if that many are left, else none. */
  private int take(int rows) {
    if (rows > left) {
      return 0;
    }
    left -= rows;
    return rows;
  }

  /** Rows of air after a group of parts, groups counted from 0. */
  int gap(int group) {
    return (group < gaps ? 1 : 0) + (group < widerGaps ? 1 : 0);
  }
}
