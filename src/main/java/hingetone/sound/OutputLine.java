package hingetone.sound;

import hingetone.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.SourceDataLine;

/**
 * A sound output: takes blocks of stereo and knows which frame is heard at which moment.
 *
 * <p>One thread writes; {@link #write} waits while the buffer is full. When the buffer once runs
 * empty (an underrun), the line opens itself anew with a buffer of twice the size; that happens one
 * time only. A line whose device vanished takes nothing until it is {@linkplain #reopen opened
 * again}. Any thread may ask and close.
 */
public final class OutputLine implements AutoCloseable {
  /** Buffer of a line that nobody chose a size for: survives the stalls of a busy machine. */
  public static final int USUAL_BUFFER_MILLIS = 200;

  private static final String NO_OUTPUT =
      "No sound output was found: switch one on (on Linux PulseAudio or PipeWire must run),"
          + " or choose a MIDI port with --out; hingetone ports lists both.";
  private static final long CLOSE_LIMIT_MILLIS = 500;

  /** No busy machine keeps the writer away for so long: the program was stopped, or all slept. */
  private static final long ASLEEP_NANOS = 1_000_000_000;

  private final Settings settings;
  private final Clock clock;
  private final Playhead playhead;
  private volatile SourceDataLine line;
  private volatile boolean closed;
  private volatile boolean lost;
  private volatile int underruns;
  private volatile long written;
  private volatile boolean grown;
  private long writtenBefore;
  private long openedAt;
  private long wroteAt;
  private byte[] bytes = new byte[0];

  /**
   * How to open a line.
   *
   * @param device part of the output's name, in either case; empty for the system's own choice
   * @param sampleRate frames a second
   * @param bufferMillis how much the line holds, in milliseconds
   */
  public record Settings(Optional<String> device, int sampleRate, int bufferMillis) {
    public Settings {
      if (bufferMillis < 10 || bufferMillis > 2000) {
        throw new IllegalArgumentException("a buffer holds 10 to 2000 ms, not " + bufferMillis);
      }
    }

    /** The system's own choice at 44,100 frames a second with the usual buffer. */
    public static Settings usual() {
      return new Settings(Optional.empty(), 44_100, USUAL_BUFFER_MILLIS);
    }

    private AudioFormat format() {
      return new AudioFormat(sampleRate, 16, 2, true, false);
    }
  }

  private OutputLine(Settings settings, Clock clock) throws SoundFailure {
    this.settings = settings;
    this.clock = clock;
    this.playhead = new Playhead(settings.sampleRate());
    this.line = openLine(settings, settings.bufferMillis());
  }

  /**
   * Opens a line and starts it.
   *
   * @throws SoundFailure when there is no such output or it is taken
   */
  public static OutputLine open(Settings settings, Clock clock) throws SoundFailure {
    return new OutputLine(settings, clock);
  }

  /** The names of the outputs found. */
  public static List<String> devices() {
    return mixers(Settings.usual().format()).stream().map(Mixer.Info::getName).toList();
  }

  private static List<Mixer.Info> mixers(AudioFormat format) {
    DataLine.Info wanted = new DataLine.Info(SourceDataLine.class, format);
    List<Mixer.Info> found = new ArrayList<>();
    for (Mixer.Info info : AudioSystem.getMixerInfo()) {
      if (AudioSystem.getMixer(info).isLineSupported(wanted)) {
        found.add(info);
      }
    }
    return found;
  }

  private static SourceDataLine openLine(Settings settings, int bufferMillis) throws SoundFailure {
    AudioFormat format = settings.format();
    int frames = (int) ((long) settings.sampleRate() * bufferMillis / 1000);
    try {
      SourceDataLine line =
          settings.device().isPresent()
              ? AudioSystem.getSourceDataLine(format, mixer(settings.device().get(), format))
              : AudioSystem.getSourceDataLine(format);
      line.open(format, frames * Pcm16.FRAME_BYTES);
      line.start();
      return line;
    } catch (LineUnavailableException e) {
      throw new SoundFailure(
          "The sound output is taken by another program: close that, or choose another output.", e);
    } catch (IllegalArgumentException e) {
      boolean any = !mixers(Settings.usual().format()).isEmpty();
      throw new SoundFailure(any ? refused(settings) : NO_OUTPUT, e);
    }
  }

  private static String refused(Settings settings) {
    return "The sound output refuses "
        + settings.sampleRate()
        + " frames a second with a buffer of "
        + settings.bufferMillis()
        + " ms: leave --sample-rate and --buffer away.";
  }

  private static Mixer.Info mixer(String part, AudioFormat format) throws SoundFailure {
    String wanted = part.toLowerCase(Locale.ROOT);
    return mixers(format).stream()
        .filter(info -> info.getName().toLowerCase(Locale.ROOT).contains(wanted))
        .findFirst()
        .orElseThrow(
            () ->
                new SoundFailure(
                    "No sound output is called '" + part + "'; hingetone ports lists them."));
  }

  /**
   * Plays interleaved stereo after what was written before; waits while the buffer is full.
   *
   * @return whether the line took it all; {@code false} while the line is closed or lost
   */
  public boolean write(float[] stereo, int frames) {
    if (closed || lost) {
      return false;
    }
    try {
      lost = !takes(stereo, frames);
    } catch (RuntimeException e) {
      // A driver whose device has gone throws whatever it likes.
      lost = true;
    }
    return !lost;
  }

  private boolean takes(float[] stereo, int frames) {
    if (isStarved() && !recover()) {
      return false;
    }
    if (bytes.length < frames * Pcm16.FRAME_BYTES) {
      bytes = new byte[frames * Pcm16.FRAME_BYTES];
    }
    Pcm16.encode(stereo, frames, bytes);
    if (written == writtenBefore) {
      openedAt = clock.nanos();
    }
    int taken = line.write(bytes, 0, frames * Pcm16.FRAME_BYTES) / Pcm16.FRAME_BYTES;
    written += taken;
    long now = clock.nanos();
    wroteAt = now;
    playhead.observe(now, writtenBefore + Math.min(line.getLongFramePosition(), mostPlayed(now)));
    return taken == frames;
  }

  /**
   * Whether the line has nothing left to play although its buffer had been filled. A sound server
   * takes a first gulp at once, so a line that looks empty has run dry only when it had the time to
   * play all it got.
   */
  private boolean isStarved() {
    SourceDataLine open = line;
    long given = written - writtenBefore;
    return given * Pcm16.FRAME_BYTES >= open.getBufferSize()
        && open.available() >= open.getBufferSize()
        && mostPlayed(clock.nanos()) >= given;
  }

  /** The most frames that can have been heard since the line got its first. */
  private long mostPlayed(long now) {
    return (long) ((now - openedAt) * (settings.sampleRate() / 1e9));
  }

  private boolean recover() {
    if (clock.nanos() - wroteAt > ASLEEP_NANOS) {
      return true;
    }
    underruns++;
    if (grown) {
      return true;
    }
    grown = true;
    return reopen();
  }

  /**
   * Opens the line anew, as after a loss; what was written before is over. Only while nobody
   * writes.
   *
   * @return whether it takes sound again
   */
  public boolean reopen() {
    closeWithinLimit(line);
    try {
      line = openLine(settings, (grown ? 2 : 1) * settings.bufferMillis());
    } catch (SoundFailure | RuntimeException e) {
      lost = true;
      return false;
    }
    writtenBefore = written;
    playhead.forget();
    lost = false;
    if (closed) {
      closeWithinLimit(line);
    }
    return !closed;
  }

  /** Frames taken so far. */
  public long framesWritten() {
    return written;
  }

  /**
   * The frame that is heard at a moment of the clock, smoothed: a device's own answers jump by
   * several milliseconds. Never ahead of what was written.
   */
  public long frameHeard(long nanos) {
    return Math.min(written, playhead.frame(nanos));
  }

  /** How long what is written now takes until it is heard, in microseconds. */
  public long latencyMicros() {
    long waiting = written - frameHeard(clock.nanos());
    return waiting * 1_000_000 / settings.sampleRate();
  }

  /** How often the buffer ran empty. */
  public int underruns() {
    return underruns;
  }

  /** What the buffer holds, in frames. */
  int bufferFrames() {
    return line.getBufferSize() / Pcm16.FRAME_BYTES;
  }

  public int sampleRate() {
    return settings.sampleRate();
  }

  /** Ends the line; what its buffer holds is dropped. Returns within half a second. */
  @Override
  public void close() {
    closed = true;
    closeWithinLimit(line);
  }

  /** Closing a line whose device hangs would hang too, so another thread does it. */
  private static void closeWithinLimit(SourceDataLine line) {
    Thread closing = new Thread(line::close, "sound output closing");
    closing.setDaemon(true);
    // A vanished device may refuse to be closed; there is nothing left to do about it.
    closing.setUncaughtExceptionHandler((thread, refusal) -> {});
    closing.start();
    try {
      closing.join(CLOSE_LIMIT_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** The straight line through what the device says it has played. */
  private static final class Playhead {
    private static final double WEIGHT = 1 / 64.0;
    private static final double LOST_SECONDS = 0.1;

    private final double framesEachNano;
    private final double lost;
    private volatile double offset = Double.NaN;
    private volatile long latest;

    Playhead(int sampleRate) {
      framesEachNano = sampleRate / 1e9;
      lost = LOST_SECONDS * sampleRate;
    }

    void observe(long nanos, long frame) {
      double seen = frame - nanos * framesEachNano;
      double missing = seen - offset;
      // Not a number at first; after a gap the line starts anew instead of creeping.
      offset = Math.abs(missing) < lost ? offset + WEIGHT * missing : seen;
      latest = Math.max(latest, frame);
    }

    void forget() {
      offset = Double.NaN;
    }

    long frame(long nanos) {
      double known = offset;
      return Double.isNaN(known) ? latest : Math.max(0, Math.round(nanos * framesEachNano + known));
    }
  }
}
