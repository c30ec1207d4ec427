package hingetone.handout;

import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import java.util.function.Predicate;

/**
 * How long a note or a rest may be written in a meter so that its beats stay in sight (common
 * practice of engraving). Places and lengths are in {@link Sign#DIVISIONS}, places from the bar
 * line.
 *
 * <p>A group is what a bar is counted in: half a bar of 4/4, a dotted quarter in 6/8, the twos and
 * threes of 7/8.
 */
final class Cutting {
  private final Meter meter;
  private final int unit;
  private final NavigableSet<Integer> groups = new TreeSet<>();

  Cutting(Meter meter) {
    this.meter = meter;
    this.unit = units(meter.isCompound() ? meter.beatLength().dividedBy(3) : meter.beatLength());
    List<Integer> beats =
        meter.isCompound()
            ? meter.beats().stream().map(beat -> (int) beat.floor()).toList()
            : meter.strongBeats();
    beats.forEach(beat -> groups.add(units(meter.toQuarters(Beats.of(beat - 1)))));
    groups.add(units(meter.barLength()));
  }

  private static int units(Beats quarters) {
    return (int) quarters.toUnits(Sign.DIVISIONS);
  }

  /** The longest sign for a note: what crosses a line between two groups goes on tied. */
  Sign note(int place, int room) {
    return longest(place, room, sign -> keepsInSight(place, sign));
  }

  private boolean keepsInSight(int place, Sign sign) {
    int end = place + sign.length();
    if (place % unit != 0) {
      return end <= place - place % unit + unit;
    }
    if (end <= groups.higher(place)) {
      return true;
    }
    boolean quarters = unit == Sign.DIVISIONS && end % unit == 0;
    return groups.contains(place) && (groups.contains(end) || quarters)
        || quarters && sign.length() == 2 * unit;
  }

  /** The longest sign for a rest: within a group, without a dot where the beat divides in two. */
  Sign rest(int place, int room) {
    int group = groups.floor(place);
    int into = place - group;
    int left = groups.higher(place) - place;
    boolean dots = into == 0 && unit < Sign.DIVISIONS && left == 3 * unit;
    return longest(
        place,
        Math.min(room, left),
        sign -> sign.dotted() ? dots && sign.length() == left : into % sign.length() == 0);
  }

  /** Where the notes begin that a note at a place may share a beam with. */
  int beamed(int place) {
    return unit < Sign.DIVISIONS ? groups.floor(place) : place - place % Sign.DIVISIONS;
  }

  /** The longest that fits; a triplet's sign only where nothing else can fill the room. */
  private static Sign longest(int place, int room, Predicate<Sign> fits) {
    boolean triplets = place % 3 != 0 || room % 3 != 0;
    Predicate<Sign> possible = sign -> sign.length() <= room && (triplets || !sign.triplet());
    return Sign.longest(possible.and(fits)).or(() -> Sign.longest(possible)).orElseThrow();
  }
}
