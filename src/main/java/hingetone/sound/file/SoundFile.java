package hingetone.sound.file;

import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.sound.Limiter;
import hingetone.sound.SoundBank;
import hingetone.sound.SoundFailure;
import hingetone.sound.level.LoudnessMeter;
import hingetone.sound.level.PeakMeter;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
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

  private static final double MIXED = 0.7;

  private final Mixdown mixdown;
  private final DoubleConsumer progress;

  /**
   * What became of a file.
   *
   * @param loudness integrated loudness in LUFS
   * @param truePeak true peak in dBTP
   * @param seconds how long it is
   */
  public record Result(double loudness, double truePeak, double seconds) {
    /** Whether nothing at all is heard. */
    public boolean isSilent() {
      return Double.isInfinite(truePeak);
    }
  }

  private SoundFile(Mixdown mixdown, DoubleConsumer progress) {
    this.mixdown = mixdown;
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
    return write(score, bank, file, Map.of(), progress);
  }

  /**
   * Writes the whole band into one file and parts alone into others, in floating point: all of them
   * added up are the whole before its limiter, as long and as loud as it is.
   *
   * @param stems the files of the parts to be written alone, in place as the whole
   * @throws SoundFailure when the bank makes no sound of notes that are there
   */
  public static Result write(
      Score score, SoundBank bank, Path file, Map<Role, Path> stems, DoubleConsumer progress)
      throws SoundFailure, IOException {
    Mixdown mixdown = Mixdown.of(score, bank, SAMPLE_RATE);
    double share = 1.0 / (1 + stems.size());
    SoundFile whole = new SoundFile(mixdown, done -> progress.accept(share * done));
    try (Spool spool = whole.play(file.toAbsolutePath().getParent())) {
      Mastered mastered = whole.master(spool, file);
      if (mastered.result().isSilent() && score.parts().stream().anyMatch(Part::hasNotes)) {
        throw new SoundFailure("Nothing is heard with the sounds of " + bank.name() + ".");
      }
      int written = 0;
      for (Map.Entry<Role, Path> stem : stems.entrySet()) {
        double from = share * ++written;
        SoundFile part =
            new SoundFile(
                mixdown.only(stem.getKey()), done -> progress.accept(from + share * done));
        part.writeStem(stem.getValue(), factor(mastered.gainDb()), spool.frames());
      }
      progress.accept(1);
      return mastered.result();
    }
  }

  private Spool play(Path folder) throws SoundFailure, IOException {
    return Spool.of(mixdown, folder, done -> progress.accept(MIXED * done));
  }

  /** A file and the gain before its limiter. */
  private record Mastered(Result result, double gainDb) {}

  /**
   * Masters with a gain, measures, and does so again with a corrected gain where that is needed.
   */
  private Mastered master(Spool spool, Path file) throws IOException {
    double gain = gain(spool.loudness());
    Result result = pass(spool, file, gain);
    for (int pass = 1; pass < MOST_PASSES; pass++) {
      double missing = LOUDNESS - result.loudness();
      if (Math.abs(missing) < CLOSE_ENOUGH || Double.isInfinite(missing)) {
        break;
      }
      gain += missing;
      result = pass(spool, file, gain);
    }
    return new Mastered(result, gain);
  }

  private Result pass(Spool spool, Path file, double gainDb) throws IOException {
    float gain = factor(gainDb);
    Limiter limiter = new Limiter(SAMPLE_RATE, CEILING);
    LoudnessMeter loudness = new LoudnessMeter(SAMPLE_RATE);
    PeakMeter peak = new PeakMeter();
    try (WavFile wav = new WavFile(file, SAMPLE_RATE, WavFile.Samples.SHORT);
        Relay written =
            new Relay(
                new Delayed(limiter.delayFrames(), spool.frames(), wav, loudness, peak)::take)) {
      spool.read(
          (stereo, frames, done) -> {
            amplify(stereo, frames, gain);
            limiter.apply(stereo, frames);
            written.give(stereo, frames);
            progress.accept(MIXED + (1 - MIXED) * done);
          });
      float[] rest = new float[2 * limiter.delayFrames()];
      limiter.apply(rest, limiter.delayFrames());
      written.give(rest, limiter.delayFrames());
      written.finish();
    }
    double seconds = (double) spool.frames() / SAMPLE_RATE;
    return new Result(loudness.integrated(), peak.truePeak(), seconds);
  }

  /** Drops the limiter's delay at the start: the file begins where the score does. */
  private static final class Delayed {
    private final WavFile wav;
    private final LoudnessMeter loudness;
    private final PeakMeter peak;
    private int toDrop;
    private long left;

    Delayed(int delay, long frames, WavFile wav, LoudnessMeter loudness, PeakMeter peak) {
      this.toDrop = delay;
      this.left = frames;
      this.wav = wav;
      this.loudness = loudness;
      this.peak = peak;
    }

    void take(float[] stereo, int frames) throws IOException {
      int dropped = Math.min(toDrop, frames);
      toDrop -= dropped;
      int kept = (int) Math.min(left, frames - dropped);
      left -= kept;
      System.arraycopy(stereo, 2 * dropped, stereo, 0, 2 * kept);
      wav.write(stereo, kept);
      loudness.add(stereo, kept);
      peak.add(stereo, kept);
    }
  }

  private void writeStem(Path file, float gain, long frames) throws SoundFailure, IOException {
    try (WavFile wav = new WavFile(file, SAMPLE_RATE, WavFile.Samples.FLOAT)) {
      mixdown.play(
          frames,
          (stereo, count, done) -> {
            amplify(stereo, count, gain);
            wav.write(stereo, count);
            progress.accept(done);
          });
    }
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
