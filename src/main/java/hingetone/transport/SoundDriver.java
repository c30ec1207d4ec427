package hingetone.transport;

import hingetone.sound.Limiter;
import hingetone.sound.OutputLine;
import hingetone.sound.Synthesizer;
import hingetone.sound.Volume;
import hingetone.time.Clock;
import hingetone.time.Playhead;
import java.util.Queue;
import java.util.function.Consumer;
import javax.sound.midi.ShortMessage;

/**
 * Drives a timeline by counting frames: block by block it hands the synthesizer what is due, reads
 * the block and writes it. The line, which takes a block only when there is room, keeps the pace.
 */
final class SoundDriver implements Driver {
  /** Where peaks end, in dB to full scale. */
  private static final double CEILING_DB = -1;

  private static final long FADE_MILLIS = 60;
  private static final long CLOSE_MILLIS = 150;

  private final Timeline timeline;
  private final Playhead playhead;
  private final Queue<Command> commands;
  private final Clock clock;
  private final Synthesizer synthesizer;
  private final OutputLine line;
  private final Limiter limiter;
  private final Volume volume;
  private final Consumer<Moment> listener;
  private final Sink sink;
  private final int rate;
  private final int frames;
  private final float[] block;
  private long written;
  private int underruns;
  private volatile boolean ended;

  SoundDriver(
      Timeline timeline,
      Playhead playhead,
      Queue<Command> commands,
      Clock clock,
      Synthesizer synthesizer,
      OutputLine line,
      Consumer<Moment> listener) {
    this.timeline = timeline;
    this.playhead = playhead;
    this.commands = commands;
    this.clock = clock;
    this.synthesizer = synthesizer;
    this.line = line;
    this.listener = listener;
    this.rate = synthesizer.sampleRate();
    this.frames = synthesizer.blockFrames();
    this.block = new float[2 * frames];
    this.limiter = new Limiter(rate, CEILING_DB);
    this.volume = new Volume(rate, timeline.status().volume());
    this.sink =
        new Sink() {
          @Override
          public void send(long due, ShortMessage message) {
            synthesizer.send(message, frame(due));
          }

          @Override
          public void tell(Moment moment) {
            listener.accept(moment);
          }
        };
  }

  /** The frame nearest to a moment of the timeline. */
  private long frame(long nanos) {
    return Math.round(nanos * (rate / 1e9));
  }

  private long nanos(long frame) {
    return Math.round(frame * (1e9 / rate));
  }

  @Override
  public void run() {
    boolean taken = true;
    while (!ended && taken) {
      taken = turn();
    }
    if (ended && taken) {
      fadeOut();
    } else if (!ended) {
      listener.accept(new Moment.Lost("sound output"));
      paceAlone();
    }
  }

  /** Ends without a click: the last blocks fade and are heard out. */
  private void fadeOut() {
    timeline.silence(sink);
    for (long left = rate * FADE_MILLIS / 1000; left > 0; left -= frames) {
      playBlock();
      if (!line.write(block, frames)) {
        return;
      }
      written += frames;
    }
    long heardOut = clock.nanos() + line.latencyMicros() * 1000;
    Deadline.easy(clock).await(heardOut, () -> false);
  }

  /**
   * Plays one block.
   *
   * @return whether the line took it
   */
  boolean turn() {
    playBlock();
    boolean taken = line.write(block, frames);
    written += frames;
    long now = clock.nanos();
    playhead.hearAfter(now - nanos(line.frameHeard(now) - limiter.delayFrames()));
    if (line.underruns() > underruns) {
      underruns = line.underruns();
      listener.accept(new Moment.Underrun(underruns));
    }
    return taken;
  }

  private void playBlock() {
    for (Command command = commands.poll(); command != null; command = commands.poll()) {
      timeline.apply(command, sink);
    }
    volume.set(ended ? 0 : timeline.status().volume());
    timeline.advance(nanos(written + frames), sink);
    synthesizer.read(block, frames);
    float gain = synthesizer.usualGain();
    for (int i = 0; i < block.length; i++) {
      block[i] *= gain;
    }
    volume.apply(block, frames);
    limiter.apply(block, frames);
  }

  /** Without a line the music goes on in silence, by the clock. */
  private void paceAlone() {
    Deadline deadline = Deadline.easy(clock);
    long origin = clock.nanos() - nanos(written);
    playhead.hearAfter(origin);
    while (!ended) {
      playBlock();
      written += frames;
      deadline.await(origin + nanos(written), () -> ended);
    }
  }

  @Override
  public void wake() {
    // The next block is never far.
  }

  @Override
  public void end() {
    ended = true;
  }

  @Override
  public void closeDevice() {
    Limited.run(
        "sound closing",
        CLOSE_MILLIS,
        () -> {
          line.close();
          synthesizer.close();
        });
  }
}
