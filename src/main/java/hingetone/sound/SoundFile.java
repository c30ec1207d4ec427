package hingetone.sound;

import hingetone.score.Part;
import hingetone.score.Score;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleConsumer;

/**
 * Makes WAV files of a score: 44.1 kHz, stereo, the whole at {@value #LOUDNESS} LUFS and no true
 * peak above −1 dBTP.
 *
 * <p>The parts are played once and measured; then one gain brings the whole to its loudness and the
 * {@link Limiter} holds the peaks. Where limiting costs loudness, the gain is corrected, so the
 * result is measured, not hoped for.
 */
public final class SoundFile {
  public static final int SAMPLE_RATE = 44_100;

  /** Where the whole should lie, in LUFS. */
  public static final double LOUDNESS = -16;

  /**
   * The limiter's ceiling, half a decibel below −1 dBTP: meters with longer filters than the
   * standard's find peaks up to 0.3 dB higher.
   */
  private static final double CEILING = -1.5;

  private static final double CLOSE_ENOUGH = 0.2;
  private static final int MOST_PASSES = 5;
  private static final double LARGEST_GAIN_DB = 40;

  private final Score score;
  private final SoundBank bank;
  private final Path folder;
  private final DoubleConsumer progress;

  /**
   * What became of a file.
   *
   * @param loudness integrated loudness in LUFS
   * @param truePeak true peak in dBTP
   * @param seconds how long it is
   */
  public record Result(double loudness, double truePeak, double seconds) {}

  private SoundFile(Score score, SoundBank bank, Path folder, DoubleConsumer progress) {
    this.score = score;
    this.bank = bank;
    this.folder = folder;
    this.progress = progress;
  }

  /**
   * Writes the whole band into one file.
   *
   * @param file the file, written in place; write it beside and move it to be safe
   * @param progress told how much is done, 0 to 1
   */
  public static Result write(Score score, SoundBank bank, Path file, DoubleConsumer progress)
      throws SoundFailure, IOException {
    Path folder = file.toAbsolutePath().getParent();
    return new SoundFile(score, bank, folder, progress).write(file);
  }

  /**
   * Writes one file a part, in floating point: added up they are the mix before its limiter, at the
   * gain that brings it to its loudness.
   *
   * @param files a file for each of the score's parts, in their order
   */
  public static void writeStems(
      Score score, SoundBank bank, List<Path> files, DoubleConsumer progress)
      throws SoundFailure, IOException {
    Path folder = files.get(0).toAbsolutePath().getParent();
    new SoundFile(score, bank, folder, progress).writeStems(files);
  }

  private Result write(Path file) throws SoundFailure, IOException {
    try (Spool spool = play(score.parts(), 0, 0.7)) {
      return master(spool, file, gain(Spool.loudnessOfSum(List.of(spool))));
    }
  }

  /**
   * Masters with a gain, measures, and does so again with a corrected gain where that is needed.
   */
  private Result master(Spool spool, Path file, double firstGain) throws IOException {
    double gain = firstGain;
    Result result = pass(spool, file, gain);
    for (int pass = 1; pass < MOST_PASSES; pass++) {
      double missing = LOUDNESS - result.loudness();
      if (Math.abs(missing) < CLOSE_ENOUGH || Double.isInfinite(missing)) {
        break;
      }
      gain += missing;
      result = pass(spool, file, gain);
    }
    progress.accept(1);
    return result;
  }

  private Result pass(Spool spool, Path file, double gainDb) throws IOException {
    float gain = factor(gainDb);
    Limiter limiter = new Limiter(SAMPLE_RATE, CEILING);
    LoudnessMeter meter = new LoudnessMeter(SAMPLE_RATE);
    try (WavFile wav = new WavFile(file, SAMPLE_RATE, WavFile.Samples.SHORT)) {
      Delayed written = new Delayed(limiter.delayFrames(), spool.frames(), wav, meter);
      spool.read(
          (stereo, frames, done) -> {
            amplify(stereo, frames, gain);
            limiter.apply(stereo, frames);
            written.take(stereo, frames);
            progress.accept(0.7 + 0.3 * done);
          });
      float[] rest = new float[2 * limiter.delayFrames()];
      limiter.apply(rest, limiter.delayFrames());
      written.take(rest, limiter.delayFrames());
    }
    double seconds = (double) spool.frames() / SAMPLE_RATE;
    return new Result(meter.integrated(), meter.truePeak(), seconds);
  }

  /** Drops the limiter's delay at the start, so that the file begins where the score does. */
  private static final class Delayed {
    private final WavFile wav;
    private final LoudnessMeter meter;
    private int toDrop;
    private long left;

    Delayed(int delay, long frames, WavFile wav, LoudnessMeter meter) {
      this.toDrop = delay;
      this.left = frames;
      this.wav = wav;
      this.meter = meter;
    }

    void take(float[] stereo, int frames) throws IOException {
      int dropped = Math.min(toDrop, frames);
      toDrop -= dropped;
      int kept = (int) Math.min(left, frames - dropped);
      left -= kept;
      float[] rest = Arrays.copyOfRange(stereo, 2 * dropped, 2 * (dropped + kept));
      wav.write(rest, kept);
      meter.add(rest, kept);
    }
  }

  private void writeStems(List<Path> files) throws SoundFailure, IOException {
    List<Spool> spools = new ArrayList<>();
    try {
      int parts = score.parts().size();
      for (Part part : score.parts()) {
        spools.add(play(List.of(part), 0.8 * spools.size() / parts, 0.8 / parts));
      }
      float gain = factor(gain(Spool.loudnessOfSum(spools)));
      long frames = spools.stream().mapToLong(Spool::frames).max().orElse(0);
      for (int i = 0; i < parts; i++) {
        writeStem(spools.get(i), files.get(i), gain, frames);
      }
      progress.accept(1);
    } finally {
      for (Spool spool : spools) {
        spool.close();
      }
    }
  }

  private static void writeStem(Spool spool, Path file, float gain, long frames)
      throws IOException {
    try (WavFile wav = new WavFile(file, SAMPLE_RATE, WavFile.Samples.FLOAT)) {
      spool.read(
          (stereo, count, done) -> {
            amplify(stereo, count, gain);
            wav.write(stereo, count);
          });
      for (long missing = frames - spool.frames(); missing > 0; missing -= SAMPLE_RATE) {
        int count = (int) Math.min(SAMPLE_RATE, missing);
        wav.write(new float[2 * count], count);
      }
    }
  }

  private Spool play(List<Part> parts, double from, double share) throws SoundFailure, IOException {
    Mixdown mixdown = new Mixdown(score, parts, bank, SAMPLE_RATE);
    return Spool.of(mixdown, folder, done -> progress.accept(from + share * done));
  }

  /** What brings a loudness to the wanted one, in dB; silence stays silence. */
  private static double gain(double loudness) {
    return Double.isInfinite(loudness) ? 0 : Math.min(LARGEST_GAIN_DB, LOUDNESS - loudness);
  }

  private static float factor(double decibels) {
    return (float) Math.pow(10, decibels / 20);
  }

  private static void amplify(float[] stereo, int frames, float gain) {
    for (int i = 0; i < 2 * frames; i++) {
      stereo[i] *= gain;
    }
  }
}
