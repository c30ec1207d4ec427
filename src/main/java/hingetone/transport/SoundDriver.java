package hingetone.transport;

import hingetone.port.TimeLimit;
import hingetone.sequencer.Command;
import hingetone.sequencer.MessageSink;
import hingetone.sequencer.SequencerEvent;
import hingetone.sequencer.Timeline;
import hingetone.sound.Limiter;
import hingetone.sound.OutputLine;
import hingetone.sound.Synthesizer;
import hingetone.sound.Volume;
import hingetone.time.Clock;
import hingetone.time.Playhead;
import java.util.Queue;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import javax.sound.midi.ShortMessage;

/**
 * Drives a timeline by counting frames: block by block it hands the synthesizer what is due, reads
 * the block and writes it. The line, which takes a block only when there is room, keeps the pace.
 */
final class SoundDriver implements Driver {
  /** Where peaks end, in dB to full scale. */
  private static final double CEILING_DB = -1;

  /** Brings a usual band, which lies at −22 LUFS on any bank, to about −18 at full volume: 4 dB. */
  private static final float GAIN = 1.585f;

  private static final long FADE_MILLIS = 60;
  private static final long CLOSE_MILLIS = 150;
  private static final long SEARCH_NANOS = 500_000_000;

  private final Timeline timeline;
  private final Playhead playhead;
  private final Queue<Command> commands;
  private final Clock clock;
  private final Synthesizer synthesizer;
  private final OutputLine line;
  private final Limiter limiter;
  private final Volume volume;
  private final Consumer<SequencerEvent> listener;
  private final MessageSink sink;
  private final int rate;
  private final int frames;
  private final float[] block;
  private long written;

  /** Frames that no line has taken, less the silence that it took instead. */
  private long unheard;

  /** How much later than it is due something is heard, in nanoseconds. */
  private long hearAfter;

  private int underruns;
  private volatile boolean ended;

  SoundDriver(Playback playback, Synthesizer synthesizer, OutputLine line) {
    this.timeline = playback.timeline();
    this.playhead = playback.playhead();
    this.commands = playback.commands();
    this.clock = playback.clock();
    this.synthesizer = synthesizer;
    this.line = line;
    this.listener = playback.listener();
    this.rate = synthesizer.sampleRate();
    this.frames = synthesizer.blockFrames();
    this.block = new float[2 * frames];
    this.limiter = new Limiter(rate, CEILING_DB);
    this.volume = new Volume(rate, timeline.status().volume());
    this.hearAfter = clock.nanos();
    playhead.hearAfter(hearAfter);
    this.sink =
        new MessageSink() {
          @Override
          public void send(long due, ShortMessage message) {
            synthesizer.send(message, frame(due));
          }

          @Override
          public void tell(SequencerEvent moment) {
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
    while (!ended) {
      taken = turn();
      if (!taken && !ended) {
        listener.accept(new SequencerEvent.Lost("sound output"));
        taken = paceAlone();
      }
    }
    if (taken) {
      fadeOut();
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
    if (taken) {
      long now = clock.nanos();
      hearAfter = now - nanos(line.frameHeard(now) + unheard - limiter.delayFrames());
      playhead.hearAfter(hearAfter);
    }
    if (line.underruns() > underruns) {
      underruns = line.underruns();
      listener.accept(new SequencerEvent.Underrun(underruns));
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
    for (int i = 0; i < block.length; i++) {
      block[i] *= GAIN;
    }
    volume.apply(block, frames);
    limiter.apply(block, frames);
  }

  /**
   * Without a line the music goes on in silence, by the clock, until the line is back.
   *
   * @return whether it is back
   */
  private boolean paceAlone() {
    long lag = lag();
    boolean resumed = false;
    while (!ended && !resumed) {
      awaitLine();
      resumed = !ended && resume(lag);
    }
    return resumed;
  }

  /** How many frames are made and not heard yet. */
  long lag() {
    return Math.max(0, written - frame(clock.nanos() - hearAfter));
  }

  private void awaitLine() {
    long start = clock.nanos() - nanos(written);
    AtomicBoolean back = new AtomicBoolean();
    Thread search = new Thread(() -> search(back), "sound output search");
    search.setDaemon(true);
    search.start();
    Deadline deadline = Deadline.easy(clock);
    while (!ended && !back.get()) {
      playBlock();
      written += frames;
      deadline.await(start + nanos(written), () -> ended);
    }
  }

  /** Tries now and then to open the line again; a system that hangs in it hangs nobody else. */
  private void search(AtomicBoolean back) {
    while (!ended && !back.get()) {
      Deadline.easy(clock).await(clock.nanos() + SEARCH_NANOS, () -> ended);
      back.set(!ended && line.reopen());
    }
  }

  /** Lets the line lag as far behind as before, so that what is seen does not jump. */
  boolean resume(long lag) {
    float[] silence = new float[2 * frames];
    boolean taken = true;
    for (long left = lag; taken && left > 0; left -= frames) {
      taken = line.write(silence, frames);
    }
    unheard = written - line.framesWritten();
    if (taken) {
      listener.accept(new SequencerEvent.Found("sound output"));
    }
    return taken;
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
    TimeLimit.run(
        "sound closing",
        CLOSE_MILLIS,
        () -> {
          line.close();
          synthesizer.close();
        });
  }
}
