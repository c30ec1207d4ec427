package hingetone.sound.file;

import hingetone.midi.ChannelSetup;
import hingetone.midi.MidiEvents;
import hingetone.midi.TimedMessage;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.sound.SoundBank;
import hingetone.sound.SoundFailure;
import hingetone.sound.Synthesizer;
import hingetone.time.Beats;
import hingetone.time.TempoMap;
import java.io.IOException;
import java.util.EnumSet;
import java.util.Set;
import java.util.stream.Stream;

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
  private final Set<Role> heard;
  private final SoundBank bank;
  private final int sampleRate;
  private final long end;

  /** What takes the blocks. */
  @FunctionalInterface
  public interface Taker {
    /** Takes interleaved stereo, which it must not keep, and how much of the whole is done, 0–1. */
    void take(float[] stereo, int frames, double done) throws IOException;
  }

  private Mixdown(Score score, Set<Role> heard, SoundBank bank, int sampleRate) {
    this.score = score;
    this.heard = heard;
    this.bank = bank;
    this.sampleRate = sampleRate;
    this.end = frame(score.tempoMap(), score.length(), 0);
  }

  /** A mixdown of a whole score. */
  public static Mixdown of(Score score, SoundBank bank, int sampleRate) {
    return new Mixdown(score, EnumSet.allOf(Role.class), bank, sampleRate);
  }

  /** The same with one part heard, as it sounds in the whole, and the others silent. */
  public Mixdown only(Role role) {
    return new Mixdown(score, EnumSet.of(role), bank, sampleRate);
  }

  /** Plays until the last note has died away. */
  public void play(Taker taker) throws SoundFailure, IOException {
    try (Synthesizer synthesizer = ready()) {
      float[] block = new float[2 * synthesizer.blockFrames()];
      boolean sounding = true;
      while (synthesizer.position() < end || sounding) {
        give(synthesizer, block, end, taker);
        sounding = isSounding(block) && synthesizer.position() < end + tail();
      }
    }
  }

  /**
   * Plays for so many frames, whatever sounds then.
   *
   * @param frames what {@link #play(Taker)} gave of the whole score
   */
  public void play(long frames, Taker taker) throws SoundFailure, IOException {
    try (Synthesizer synthesizer = ready()) {
      float[] block = new float[2 * synthesizer.blockFrames()];
      while (synthesizer.position() < frames) {
        give(synthesizer, block, frames, taker);
      }
    }
  }

  private static void give(Synthesizer synthesizer, float[] block, long end, Taker taker)
      throws IOException {
    int frames = synthesizer.blockFrames();
    synthesizer.read(block, frames);
    taker.take(block, frames, Math.min(1, (double) synthesizer.position() / end));
  }

  /**
   * A synthesizer that has got everything; it keeps each message until its frame. The channels are
   * set up as for the whole score, and who is silent there is silent here too: parts that share a
   * channel sound alone as they do together.
   */
  private Synthesizer ready() throws SoundFailure {
    bank.measure(score.bySound());
    Synthesizer synthesizer = Synthesizer.open(sampleRate, bank);
    TempoMap tempos = score.tempoMap();
    synthesizer.prepare(
        score.bySound().stream().filter(part -> heard.contains(part.role())).toList());
    Stream<TimedMessage> notes =
        MidiEvents.of(score).stream().filter(timed -> heard.contains(timed.role()));
    Stream.concat(ChannelSetup.of(score).stream(), notes)
        .forEach(
            timed ->
                synthesizer.send(timed.message(), frame(tempos, timed.at(), timed.offsetMicros())));
    return synthesizer;
  }

  private long frame(TempoMap tempos, Beats at, long offsetMicros) {
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
