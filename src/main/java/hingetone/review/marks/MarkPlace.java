package hingetone.review.marks;

import hingetone.review.Played;
import hingetone.take.PlacedNote;
import hingetone.time.Beats;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A place as marks say it, and the note that begins there.
 *
 * @param position bar and beat
 * @param time which time that bar was played, from 1; empty for the first after the phrase before
 */
record MarkPlace(Position position, Optional<Integer> time) {
  private static final Pattern WRITTEN = Pattern.compile("bar (-?\\d{1,6}) beat (\\S{1,12})");

  /** Parts of a beat in which a place is told, the coarsest first. */
  private static final int[] PARTS = {1, 2, 4, 3, 8, 6, 12, 24, 48, 96};

  /** Reads {@code bar 3 beat 2+1/2}. */
  static Optional<Position> parse(String text) {
    Matcher found = WRITTEN.matcher(text);
    if (!found.matches()) {
      return Optional.empty();
    }
    return Beats.parse(found.group(2))
        .filter(beat -> !beat.isBefore(Beats.ONE))
        .map(beat -> new Position(Integer.parseInt(found.group(1)), beat));
  }

  /** The simplest place that leads to a note. */
  static MarkPlace of(Played played, int note, int before) {
    double at = played.notes().get(note).at();
    MarkPlace place = new MarkPlace(played.position(at, 1), Optional.empty());
    for (int parts : PARTS) {
      place = new MarkPlace(played.position(at, parts), Optional.empty());
      if (place.note(played, before).equals(Optional.of(note))) {
        return place;
      }
      int times = place.bars(played).size();
      for (int time = 1; times > 1 && time <= times; time++) {
        MarkPlace counted = new MarkPlace(place.position, Optional.of(time));
        if (counted.note(played, before).equals(Optional.of(note))) {
          return counted;
        }
      }
    }
    return place;
  }

  /**
   * The note that begins nearest to it, within half a beat; of a double stop the first.
   *
   * @param before the index of the first note of the phrase before, −1 where there is none
   */
  Optional<Integer> note(Played played, int before) {
    double from = before < 0 ? Double.NEGATIVE_INFINITY : played.notes().get(before).at();
    for (Played.Bar bar : bars(played)) {
      double at = bar.start() + (position.beat().toDouble() - 1) * bar.beatLength();
      Optional<Integer> found = nearest(played, at, bar.beatLength() / 2);
      if (time.isPresent() || found.filter(i -> played.notes().get(i).at() > from).isPresent()) {
        return found;
      }
    }
    return Optional.empty();
  }

  private List<Played.Bar> bars(Played played) {
    List<Played.Bar> all = new ArrayList<>();
    for (Played.Bar bar : played.bars()) {
      if (bar.number() == position.bar()) {
        all.add(bar);
      }
    }
    return time.isEmpty() || all.isEmpty()
        ? all
        : time.get() <= all.size() ? List.of(all.get(time.get() - 1)) : List.of();
  }

  private static Optional<Integer> nearest(Played played, double at, double reach) {
    List<PlacedNote> notes = played.notes();
    int best = -1;
    double least = reach + 1e-6;
    for (int i = played.firstFrom(at - reach - 1e-6); i < notes.size(); i++) {
      double away = Math.abs(notes.get(i).at() - at);
      if (away < least - 1e-9) {
        best = i;
        least = away;
      }
      if (notes.get(i).at() > at + reach) {
        break;
      }
    }
    return best < 0 ? Optional.empty() : Optional.of(best);
  }
}
