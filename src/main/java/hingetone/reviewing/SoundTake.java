package hingetone.reviewing;

import hingetone.hearing.Transcriber;
import hingetone.hearing.Transcription;
import hingetone.hearing.signal.EchoFilter;
import hingetone.hearing.signal.EchoFinder;
import hingetone.hearing.signal.Resampler;
import hingetone.neck.Fretboard;
import hingetone.output.CommandFailure;
import hingetone.sound.SoundFailure;
import hingetone.sound.file.SoundReader;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;

/**
 * A recording in a sound file.
 *
 * @param sound WAV, AIFF or FLAC
 * @param channel which channel is listened to, from 1; empty for the mean of all
 */
public record SoundTake(Path sound, Optional<Integer> channel) {
  private static final double ECHOES = 0.1;

  /**
   * Writes it down as notes.
   *
   * @param progress told how much is done, 0 to 1
   * @param warn told what makes it doubtful
   * @throws CommandFailure where it cannot be read
   */
  public Transcription written(Fretboard neck, DoubleConsumer progress, Consumer<String> warn) {
    try {
      Optional<EchoFilter> echoes = echoes(progress);
      try (SoundReader reader = SoundReader.open(sound, channel)) {
        Transcriber transcriber = new Transcriber(reader.rate(), echoes);
        for (float[] block = reader.next(); block.length > 0; block = reader.next()) {
          transcriber.take(block);
          progress.accept(ECHOES + (1 - ECHOES) * reader.done());
        }
        progress.accept(1);
        reader.missing().ifPresent(warn);
        return transcriber.finish(neck);
      }
    } catch (SoundFailure e) {
      throw CommandFailure.wrongInput(e.getMessage());
    }
  }

  /** Samples a second. */
  double rate() {
    try (SoundReader reader = SoundReader.open(sound, channel)) {
      return reader.rate();
    } catch (SoundFailure e) {
      throw CommandFailure.wrongInput(e.getMessage());
    }
  }

  /** Its samples from a moment to another, in seconds. */
  float[] samples(double from, double to) throws SoundFailure {
    try (SoundReader reader = SoundReader.open(sound, channel)) {
      long first = Math.round(from * reader.rate());
      long last = Math.round(to * reader.rate());
      float[] samples = new float[(int) Math.max(0, last - first)];
      long at = 0;
      for (float[] b = reader.next(); b.length > 0 && at < last; b = reader.next()) {
        for (int i = 0; i < b.length; i++) {
          long place = at + i - first;
          if (place >= 0 && place < samples.length) {
            samples[(int) place] = b[i];
          }
        }
        at += b.length;
      }
      return samples;
    }
  }

  private Optional<EchoFilter> echoes(DoubleConsumer progress) throws SoundFailure {
    try (SoundReader reader = SoundReader.open(sound, channel)) {
      Resampler resampler = new Resampler(reader.rate());
      EchoFinder finder = new EchoFinder();
      for (float[] block = reader.next(); block.length > 0; block = reader.next()) {
        finder.take(resampler.next(block));
        progress.accept(ECHOES * reader.done());
      }
      return finder.found();
    }
  }
}
