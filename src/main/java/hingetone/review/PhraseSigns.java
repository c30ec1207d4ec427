package hingetone.review;

import hingetone.take.PlacedNote;
import java.util.ArrayList;
import java.util.List;

/**
 * What speaks for a phrase beginning before a note, each sign a number of about 0 to 1: rests, long
 * notes and leaps, which are the profiles of the local boundary detection model (Cambouropoulos,
 * ICMC 2001), the meter, and an opening that was heard before.
 */
final class PhraseSigns {
  /** How many signs there are. */
  static final int COUNT = 14;

  private static final int OPENING = 6;

  /** An opening is looked for among so many notes before. */
  private static final int REMEMBERED = 400;

  private static final double SAME_GAP = 0.2;

  private final Played played;
  private final List<PlacedNote> notes;
  private final double[] gaps;
  private final double[] beats;

  PhraseSigns(Played played) {
    this.played = played;
    this.notes = played.notes();
    this.gaps = new double[notes.size() + 1];
    this.beats = new double[notes.size()];
    for (int i = 0; i < notes.size(); i++) {
      beats[i] = played.barAt(notes.get(i).at()).beatLength();
      gaps[i] = i == 0 ? 4 : (notes.get(i).at() - notes.get(i - 1).at()) / beats[i];
    }
    gaps[notes.size()] = 4;
  }

  /** Whether a note belongs to the double stop of the one before. */
  boolean isTogether(int i) {
    return gaps[i] < LineWay.TOGETHER;
  }

  /** The signs before a note that is not the first. */
  double[] before(int i) {
    PlacedNote note = notes.get(i);
    PlacedNote last = notes.get(i - 1);
    Played.Bar bar = played.barAt(note.at());
    double seconds = (note.at() - last.at()) * played.msPerQuarter(note.at()) / 1000;
    double restBeats = Math.max(0, note.at() - lastEnd(i)) / beats[i];
    double restSeconds = restBeats * beats[i] * played.msPerQuarter(note.at()) / 1000;
    double usual = usualGap(i);
    return new double[] {
      1,
      Math.min(1, restBeats),
      Math.min(1, restSeconds / 0.3),
      Math.min(1, gaps[i] / 3),
      Math.min(1, seconds / 1.5),
      clamp(log(gaps[i] / usual) / 2),
      clamp(log(gaps[i] / Math.max(0.1, gaps[i - 1])) / 2),
      clamp(log(gaps[i] / Math.max(0.1, gaps[i + 1])) / 2),
      Math.min(1, Math.abs(note.reached() - last.reached()) / 9),
      strength(played, last.at()),
      strength(played, note.at()),
      leadsToLine(i, bar),
      Math.max(0, parallel(i) - 2) / (OPENING - 2.0),
      strength(played, last.at()) * Math.min(1, gaps[i] / 2)
    };
  }

  private static double clamp(double value) {
    return Math.max(-1, Math.min(1, value));
  }

  private static double log(double ratio) {
    return Math.log(ratio) / Math.log(2);
  }

  private double lastEnd(int before) {
    double end = 0;
    for (int i = Math.max(0, before - 3); i < before; i++) {
      end = Math.max(end, Math.min(notes.get(i).end(), notes.get(before).at()));
    }
    return end;
  }

  /** The median distance of strokes around a note, in beats. */
  private double usualGap(int at) {
    List<Double> near = new ArrayList<>();
    for (int i = Math.max(1, at - 6); i <= Math.min(notes.size() - 1, at + 6); i++) {
      if (i != at && !isTogether(i)) {
        near.add(gaps[i]);
      }
    }
    near.sort(Double::compare);
    return near.isEmpty() ? 1 : Math.max(0.2, near.get(near.size() / 2));
  }

  /** How strong a place is in its bar: the line 1, a strong beat 0.6, a beat 0.4, else less. */
  static double strength(Played played, double at) {
    Played.Bar bar = played.barAt(at);
    double beat = bar.beat(at);
    double nearest = Math.rint(beat);
    if (Math.abs(beat - nearest) > 0.17) {
      return Math.abs(beat - Math.floor(beat) - 0.5) < 0.2 ? 0.15 : 0;
    }
    int number = (int) nearest;
    if (number == 1 || number > bar.of().meter().beatsPerBar()) {
      return 1;
    }
    return bar.of().meter().strongBeats().contains(number) ? 0.6 : 0.4;
  }

  /** 1 where this note begins a pickup of at most two beats to a note on the next bar line. */
  private double leadsToLine(int i, Played.Bar bar) {
    double until = (bar.end() - notes.get(i).at()) / beats[i];
    if (until <= 0.2 || until > 2.2) {
      return 0;
    }
    for (int next = i + 1; next < notes.size(); next++) {
      double off = (notes.get(next).at() - bar.end()) / beats[i];
      if (Math.abs(off) <= 0.17) {
        return 1;
      }
      if (off > 0.2) {
        return 0;
      }
    }
    return 0;
  }

  /**
   * How many notes from here go as they went from somewhere earlier on, where those before differ.
   */
  private int parallel(int from) {
    int most = 0;
    for (int other = Math.max(1, from - REMEMBERED); other < from - 1; other++) {
      boolean before = same(other, from);
      int length = 0;
      while (length < OPENING
          && from + length + 1 < notes.size()
          && other + length + 1 < from
          && same(other + length + 1, from + length + 1)) {
        length++;
      }
      most = before ? most : Math.max(most, length);
    }
    return most;
  }

  /** Whether two notes come after the ones before them by the same step and distance. */
  private boolean same(int one, int other) {
    int step = notes.get(one).pitch() - notes.get(one - 1).pitch();
    int otherStep = notes.get(other).pitch() - notes.get(other - 1).pitch();
    return step == otherStep && Math.abs(gaps[one] - gaps[other]) <= SAME_GAP;
  }
}
