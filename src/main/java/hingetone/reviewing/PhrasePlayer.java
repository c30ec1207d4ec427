package hingetone.reviewing;

import hingetone.output.CommandFailure;
import hingetone.sound.Limiter;
import hingetone.sound.OutputLine;
import hingetone.sound.SoundFailure;
import hingetone.sound.Volume;
import hingetone.time.Clock;
import java.util.Arrays;
import java.util.Optional;

/**
 * Plays short pieces through the sound output, one after another, and waits until they are heard.
 * They begin softly and pass the limiter.
 */
public final class PhrasePlayer implements AutoCloseable {
  private static final double CEILING = -1.5;
  private static final double HEARD_OUT_SECONDS = 0.5;

  private final OutputLine line;
  private final Volume volume;
  private final Limiter limiter;

  private PhrasePlayer(OutputLine line, int percent) {
    this.line = line;
    this.volume = new Volume(line.sampleRate(), percent);
    this.limiter = new Limiter(line.sampleRate(), CEILING);
  }

  /**
   * Opens the output.
   *
   * @param rate samples a second
   * @param percent the volume, 0 to 100
   * @throws CommandFailure where there is none
   */
  public static PhrasePlayer open(int rate, int percent) {
    try {
      OutputLine.Settings settings =
          new OutputLine.Settings(Optional.empty(), rate, OutputLine.USUAL_BUFFER_MILLIS);
      return new PhrasePlayer(OutputLine.open(settings, Clock.SYSTEM), percent);
    } catch (SoundFailure e) {
      throw CommandFailure.couldNot(e.getMessage());
    }
  }

  /** Plays interleaved stereo; returns when the line has taken all of it. */
  public void play(float[] stereo) {
    int frames = line.sampleRate() / 20;
    for (int at = 0; at < stereo.length; at += 2 * frames) {
      float[] block = Arrays.copyOfRange(stereo, at, at + 2 * frames);
      volume.apply(block, frames);
      limiter.apply(block, frames);
      if (!line.write(block, frames)) {
        throw CommandFailure.couldNot("The sound output is gone.");
      }
    }
  }

  /** Waits until all is heard: the line takes this silence only when it has played the rest. */
  @Override
  public void close() {
    int frames = (int) (HEARD_OUT_SECONDS * line.sampleRate());
    line.write(new float[2 * frames], frames);
    line.close();
  }
}
