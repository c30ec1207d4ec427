package hingetone.sound;

import hingetone.midi.MidiEvents;
import hingetone.midi.TimedMessage;
import hingetone.score.Part;
import hingetone.score.Score;
import hingetone.time.TempoMap;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import javax.sound.midi.ShortMessage;

/**
 * Plays parts of a score into blocks of stereo, as fast as the machine can, without a sound output.
 *
 * <p>The sound begins with the count-in and ends when the last note has died away. The same score
 * and bank give the same samples.
 */
public final class Mixdown {
  private static final double SILENCE = 1e-4; // −80 dB
  private static final int LONGEST_TAIL_SECONDS = 8;

  private final Score score;
  private final List<Part> parts;
  private final SoundBank bank;
  private final int sampleRate;
  private final long end;

  /** What takes the blocks. */
  @FunctionalInterface
  public interface Taker {
    /** Takes interleaved stereo, which it must not keep, and how much of the whole is done, 0–1. */
    void take(float[] stereo, int frames, double done) throws IOException;
  }

  /** A mixdown of some of a score's parts. */
  public Mixdown(Score score, List<Part> parts, SoundBank bank, int sampleRate) {
    this.score = score;
    this.parts = List.copyOf(parts);
    this.bank = bank;
    this.sampleRate = sampleRate;
    this.end = frame(score.tempoMap(), score.length(), 0);
  }

  /** Plays it all to the taker. */
  public void play(Taker taker) throws SoundFailure, IOException {
    try (Synthesizer synthesizer = Synthesizer.open(sampleRate, bank)) {
      parts.forEach(part -> synthesizer.prepare(score.inEachSound(part)));
      send(synthesizer);
      float[] block = new float[2 * synthesizer.blockFrames()];
      boolean sounding = true;
      while (synthesizer.position() < end || sounding) {
        synthesizer.read(block, synthesizer.blockFrames());
        sounding = isSounding(block) && synthesizer.position() < end + tail();
        double done = Math.min(1, (double) synthesizer.position() / end);
        taker.take(block, synthesizer.blockFrames(), done);
      }
    }
  }

  /** Everything may be sent at once: the synthesizer keeps it until its frame. */
  private void send(Synthesizer synthesizer) {
    for (Part part : parts) {
      for (ShortMessage message : MidiEvents.setup(part)) {
        synthesizer.send(message, 0);
      }
    }
    TempoMap tempos = score.tempoMap();
    List<TimedMessage> messages = new ArrayList<>(MidiEvents.of(parts));
    parts.forEach(part -> messages.addAll(MidiEvents.soundChanges(score, part)));
    for (TimedMessage timed : messages) {
      synthesizer.send(timed.message(), frame(tempos, timed.at(), timed.offsetMicros()));
    }
  }

  private long frame(TempoMap tempos, hingetone.time.Beats at, long offsetMicros) {
    double micros = tempos.micros(at) - tempos.micros(score.countIn().negated()) + offsetMicros;
    return Math.max(0, Math.round(micros * sampleRate / 1e6));
  }

  private long tail() {
    return (long) LONGEST_TAIL_SECONDS * sampleRate;
  }

  private static boolean isSounding(float[] block) {
    for (float sample : block) {
      if (Math.abs(sample) > SILENCE) {
        return true;
      }
    }
    return false;
  }
}
