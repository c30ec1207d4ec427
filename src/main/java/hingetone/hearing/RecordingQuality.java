package hingetone.hearing;

import hingetone.hearing.signal.Slice;
import hingetone.hearing.signal.Yin;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What a recording is like as a whole, and what of it makes its notes doubtful. Needs the same
 * memory for any length: it counts frames by their level, clear and unclear ones apart.
 */
final class RecordingQuality {
  private static final int SILENT_DB = -60;
  private static final int RANGE = 120;

  /** Slices this far below the loudest ones belong to the playing. */
  private static final int PLAYING_DB = 25;

  private static final double UNCLEAR_DIP = 0.25;
  private static final double MANY_UNCLEAR = 0.45;
  private static final double LITTLE_RANGE_DB = 20;
  private static final double FEWEST_SURE = 0.6;

  /** Flat tops of at least this many samples are cut off. */
  private static final int FLAT = 4;

  /** How near to the highest peak a flat top lies that is cut off: all of them lie there. */
  private static final double AT_PEAK = 0.99;

  /** Where the peaks are softer nobody cuts them off. */
  private static final double LEAST_PEAK = 0.1;

  /** A recording shorter than this holds no note, in seconds. */
  private static final double SHORTEST = 0.1;

  /** The highest pitch and its octave need this many samples a second. */
  private static final double LEAST_RATE = 4 * Yin.HIGHEST_HERTZ;

  private final long[] clear = new long[RANGE + 1];
  private final long[] unclear = new long[RANGE + 1];
  private float last;
  private float peak;
  private int run;
  private long flat;
  private long samples;

  /** Takes samples as they were recorded, before any change of rate. */
  void samples(float[] block) {
    for (float sample : block) {
      float size = Math.abs(sample);
      if (size * AT_PEAK > peak) {
        flat = 0;
      }
      peak = Math.max(peak, size);
      run = sample == last && size >= AT_PEAK * peak ? run + 1 : 0;
      flat += run == FLAT - 1 ? 1 : 0;
      last = sample;
    }
    samples += block.length;
  }

  void frame(Slice frame) {
    int bin = (int) Math.max(0, Math.min(RANGE, RANGE + Math.round(frame.level())));
    if (frame.voiced() && frame.dip() < UNCLEAR_DIP) {
      clear[bin]++;
    } else {
      unclear[bin]++;
    }
  }

  /** What a reader of the notes should know, a sentence each. */
  List<String> doubts(List<HeardNote> notes, double seconds, double rate) {
    List<String> doubts = new ArrayList<>();
    if (seconds < SHORTEST) {
      doubts.add(
          String.format(
              Locale.ROOT, "The recording lasts %.2f s: that is too short for a note.", seconds));
      return doubts;
    }
    int loud = quantile(0.99);
    if (loud < SILENT_DB) {
      doubts.add(
          String.format(
              Locale.ROOT, "Nothing is louder than %d dB below full scale: is it silent?", -loud));
      return doubts;
    }
    if (rate < LEAST_RATE) {
      doubts.add(
          String.format(
              Locale.ROOT,
              "%.0f samples a second are too few: notes above %.0f Hz are lost or wrong.",
              rate,
              rate / 4));
    }
    if (peak > LEAST_PEAK && flat > samples / rate) {
      doubts.add("The recording is clipped: its peaks are cut off. Record it softer.");
    }
    double share = unclearShare(loud);
    boolean steady = loud - quantile(0.05) < LITTLE_RANGE_DB;
    if (notes.isEmpty()) {
      doubts.add(
          steady
              ? "I found no notes, only an even sound such as hum or noise."
              : "I found no notes that begin and have a pitch.");
    } else if (share > MANY_UNCLEAR || sureness(notes) < FEWEST_SURE) {
      doubts.add(
          String.format(
              Locale.ROOT,
              "In %.0f %% of the playing I hear no clear pitch: chords or a band, not one guitar line?"
                  + " Trust little of this.",
              100 * share));
    }
    return doubts;
  }

  private static double sureness(List<HeardNote> notes) {
    return notes.stream().mapToDouble(HeardNote::certainty).average().orElse(1);
  }

  private double unclearShare(int loud) {
    long in = 0;
    long all = 0;
    for (int bin = Math.max(0, RANGE + loud - PLAYING_DB); bin <= RANGE; bin++) {
      in += unclear[bin];
      all += unclear[bin] + clear[bin];
    }
    return all == 0 ? 0 : (double) in / all;
  }

  /** The level, in dB, below which a share of the frames lies. */
  private int quantile(double share) {
    long all = 0;
    for (int bin = 0; bin <= RANGE; bin++) {
      all += clear[bin] + unclear[bin];
    }
    long below = 0;
    for (int bin = 0; bin <= RANGE; bin++) {
      below += clear[bin] + unclear[bin];
      if (below >= share * all && below > 0) {
        return bin - RANGE;
      }
    }
    return -RANGE;
  }
}
