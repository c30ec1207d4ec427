package hingetone.handout;

import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import java.util.function.Predicate;

/**
 * How long a note or a rest may be written in a meter so that its beats stay in sight (common
 * practice of engraving). Places and lengths are in {@link NoteSign#DIVISIONS}, places from the bar
 * line.
 *
 * <p>A group is what a bar is counted in: half a bar of 4/4, a dotted quarter in 6/8, the twos and
 * threes of 7/8.
 */
final class Cutting {
  private final int unit;
  private final NavigableSet<Integer> groups = new TreeSet<>();

  Cutting(Meter meter) {
    this.unit = units(meter.isCompound() ? meter.beatLength().dividedBy(3) : meter.beatLength());
    List<Integer> beats =
        meter.isCompound()
            ? meter.beats().stream().map(beat -> (int) beat.floor()).toList()
            : meter.strongBeats();
    beats.forEach(beat -> groups.add(units(meter.toQuarters(Beats.of(beat - 1)))));
    groups.add(units(meter.barLength()));
  }

  private static int units(Beats quarters) {
    return (int) quarters.toUnits(NoteSign.DIVISIONS);
  }

  /** The longest sign for a note: what crosses a line between two groups goes on tied. */
  NoteSign note(int place, int room) {
    return longest(place, room, sign -> keepsInSight(place, sign));
  }

  private boolean keepsInSight(int place, NoteSign sign) {
    int end = place + sign.length();
    if (place % unit != 0) {
      return end <= place - place % unit + unit;
    }
    if (end <= groups.higher(place)) {
      return true;
    }
    boolean quarters = unit == NoteSign.DIVISIONS && end % unit == 0;
    return groups.contains(place) && (groups.contains(end) || quarters)
        || quarters && sign.length() == 2 * unit;
  }

  /** The longest sign for a rest: within a group, without a dot where the beat divides in two. */
  NoteSign rest(int place, int room) {
    int group = groups.floor(place);
    int into = place - group;
    int left = groups.higher(place) - place;
    boolean dots = into == 0 && unit < NoteSign.DIVISIONS && left == 3 * unit;
    return longest(
        place,
        Math.min(room, left),
        sign -> sign.dotted() ? dots && sign.length() == left : into % sign.length() == 0);
  }

  /** Where the notes begin that a note at a place may share a beam with. */
  int beamed(int place) {
    return unit < NoteSign.DIVISIONS ? groups.floor(place) : place - place % NoteSign.DIVISIONS;
  }

  /** The longest that fits; a triplet's sign only where nothing else can fill the room. */
  private static NoteSign longest(int place, int room, Predicate<NoteSign> fits) {
    boolean triplets = place % 3 != 0 || room % 3 != 0;
    Predicate<NoteSign> possible = sign -> sign.length() <= room && (triplets || !sign.triplet());
    return NoteSign.longest(possible.and(fits)).or(() -> NoteSign.longest(possible)).orElseThrow();
  }
}
