package hingetone.sound;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.ShortBuffer;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.Control;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.Line;
import javax.sound.sampled.LineListener;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.SourceDataLine;
import javax.sound.sampled.spi.MixerProvider;

/**
 * A sound output that Java Sound finds on the tests' class path and that keeps what is written to
 * it. It is there only while a test has it plugged in, one at a time:
 *
 * <pre>{@code
 * try (FakeSoundOutput output = FakeSoundOutput.plugIn(Pace.FREE)) {
 *   ... open a line, write ...
 *   float[] heard = output.captured();
 * }
 * }</pre>
 */
public final class FakeSoundOutput implements AutoCloseable {
  /** Its name among the sound outputs. */
  public static final String NAME = "Test output";

  /** How the output plays what it is given. */
  public enum Pace {
    /** At once: a write never waits. */
    FREE,
    /** Only when the test calls {@link #play}; a write never waits. */
    STEPPED,
    /** In real time: a write waits while the buffer is full. */
    REAL_TIME,
    /** Never: a write waits until the line is closed. */
    STUCK
  }

  private static volatile Optional<FakeSoundOutput> plugged = Optional.empty();

  private final Pace pace;
  private final ByteArrayOutputStream captured = new ByteArrayOutputStream();
  private volatile FakeLine latest;
  private volatile int opened;
  private volatile boolean hangs;
  private volatile boolean gone;
  private volatile boolean throwing;
  private volatile boolean holdsWriter;

  private FakeSoundOutput(Pace pace) {
    this.pace = pace;
  }

  /** Makes the output appear. */
  public static FakeSoundOutput plugIn(Pace pace) {
    if (plugged.isPresent()) {
      throw new IllegalStateException("another test has an output plugged in");
    }
    FakeSoundOutput output = new FakeSoundOutput(pace);
    plugged = Optional.of(output);
    return output;
  }

  /** Makes the output disappear. */
  @Override
  public void close() {
    plugged = Optional.empty();
  }

  /** What was written to all its lines so far: interleaved stereo, full scale being 1. */
  public float[] captured() {
    byte[] bytes;
    synchronized (captured) {
      bytes = captured.toByteArray();
    }
    ShortBuffer samples = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).asShortBuffer();
    float[] stereo = new float[samples.remaining()];
    for (int i = 0; i < stereo.length; i++) {
      stereo[i] = samples.get(i) / 32768f;
    }
    return stereo;
  }

  /** Lets a {@link Pace#STEPPED} output play this many frames more. */
  public void play(int frames) {
    latest.stepped += frames;
  }

  /** From now on a write waits until the line is closed. */
  public void hang() {
    hangs = true;
  }

  /** From now on nothing is taken and no line can be opened. */
  public void vanish() {
    gone = true;
  }

  /** Lines can be opened again. */
  public void comeBack() {
    gone = false;
    throwing = false;
  }

  /** From now on whatever is asked of a line throws, as with a driver that is broken. */
  public void startThrowing() {
    throwing = true;
  }

  private void serve() {
    if (throwing) {
      throw new IllegalStateException("the driver is broken");
    }
  }

  /**
   * When a {@link Pace#REAL_TIME} output plays a frame of its latest line, on the machine's clock;
   * exact as long as the buffer has not run empty.
   */
  public long playedAt(long frame) {
    return latest.startNanos + (long) (frame * 1e9 / latest.format.getFrameRate());
  }

  /** Whether a writer waits in an output that hangs. */
  public boolean holdsWriter() {
    return holdsWriter;
  }

  /** How often a line was opened. */
  public int opened() {
    return opened;
  }

  /** The provider that Java Sound finds. */
  public static final class Provider extends MixerProvider {
    private static final Mixer.Info INFO = new Mixer.Info(NAME, "tests", "keeps sound", "1") {};

    @Override
    public Mixer.Info[] getMixerInfo() {
      return plugged.isPresent() ? new Mixer.Info[] {INFO} : new Mixer.Info[0];
    }

    @Override
    public Mixer getMixer(Mixer.Info info) {
      return plugged
          .filter(output -> info == null || info == INFO)
          .map(FakeMixer::new)
          .orElseThrow(() -> new IllegalArgumentException("not one of mine: " + info));
    }
  }

  private static class NoControls {
    public void addLineListener(LineListener listener) {}

    public void removeLineListener(LineListener listener) {}

    public Control[] getControls() {
      return new Control[0];
    }

    public boolean isControlSupported(Control.Type type) {
      return false;
    }

    public Control getControl(Control.Type type) {
      throw new IllegalArgumentException("no controls");
    }
  }

  private static final class FakeMixer extends NoControls implements Mixer {
    private static final DataLine.Info LINE =
        new DataLine.Info(
            SourceDataLine.class,
            new AudioFormat[] {
              new AudioFormat(44_100, 16, 2, true, false),
              new AudioFormat(48_000, 16, 2, true, false)
            },
            AudioSystem.NOT_SPECIFIED,
            AudioSystem.NOT_SPECIFIED);

    private final FakeSoundOutput output;

    FakeMixer(FakeSoundOutput output) {
      this.output = output;
    }

    @Override
    public Info getMixerInfo() {
      return Provider.INFO;
    }

    @Override
    public Line.Info[] getSourceLineInfo() {
      return new Line.Info[] {LINE};
    }

    @Override
    public Line.Info[] getTargetLineInfo() {
      return new Line.Info[0];
    }

    @Override
    public Line.Info[] getSourceLineInfo(Line.Info info) {
      return isLineSupported(info) ? getSourceLineInfo() : new Line.Info[0];
    }

    @Override
    public Line.Info[] getTargetLineInfo(Line.Info info) {
      return new Line.Info[0];
    }

    @Override
    public boolean isLineSupported(Line.Info info) {
      return info.matches(LINE);
    }

    @Override
    public Line getLine(Line.Info info) {
      return new FakeLine(output);
    }

    @Override
    public int getMaxLines(Line.Info info) {
      return 1;
    }

    @Override
    public Line[] getSourceLines() {
      return new Line[0];
    }

    @Override
    public Line[] getTargetLines() {
      return new Line[0];
    }

    @Override
    public void synchronize(Line[] lines, boolean maintain) {
      throw new IllegalArgumentException("cannot synchronize");
    }

    @Override
    public void unsynchronize(Line[] lines) {}

    @Override
    public boolean isSynchronizationSupported(Line[] lines, boolean maintain) {
      return false;
    }

    @Override
    public Line.Info getLineInfo() {
      return new Line.Info(Mixer.class);
    }

    @Override
    public void open() {}

    @Override
    public void close() {}

    @Override
    public boolean isOpen() {
      return true;
    }
  }

  private static final class FakeLine extends NoControls implements SourceDataLine {
    private final FakeSoundOutput output;
    private AudioFormat format = new AudioFormat(44_100, 16, 2, true, false);
    private int bufferBytes = 20_000;
    private volatile boolean open;
    private volatile boolean running;
    private volatile long written;
    private volatile long stepped;

    /** When frame 0 would have been played, had the buffer never run empty. */
    private long startNanos;

    FakeLine(FakeSoundOutput output) {
      this.output = output;
    }

    @Override
    public void open(AudioFormat wanted, int bytes) throws LineUnavailableException {
      output.serve();
      if (output.gone) {
        throw new LineUnavailableException("the device is gone");
      }
      format = wanted;
      bufferBytes = bytes;
      open = true;
      output.latest = this;
      output.opened++;
    }

    @Override
    public void open(AudioFormat wanted) throws LineUnavailableException {
      open(wanted, bufferBytes);
    }

    @Override
    public void open() throws LineUnavailableException {
      open(format, bufferBytes);
    }

    @Override
    public int write(byte[] bytes, int offset, int length) {
      output.serve();
      int frames = length / format.getFrameSize();
      if (output.pace == Pace.REAL_TIME) {
        startWhenEmpty();
      }
      while (open && waiting() + frames > bufferFrames() && hasToWait()) {
        LockSupport.parkNanos(200_000);
      }
      while (open && output.hangs) {
        output.holdsWriter = true;
        LockSupport.parkNanos(200_000);
      }
      if (!open || output.gone) {
        return 0;
      }
      synchronized (output.captured) {
        output.captured.write(bytes, offset, length);
      }
      written += frames;
      return length;
    }

    private boolean hasToWait() {
      return output.pace == Pace.REAL_TIME || output.pace == Pace.STUCK;
    }

    /** After an underrun time goes on from here. */
    private void startWhenEmpty() {
      if (waiting() == 0) {
        startNanos = System.nanoTime() - (long) (written * 1e9 / format.getFrameRate());
      }
    }

    private long waiting() {
      return written - getLongFramePosition();
    }

    private int bufferFrames() {
      return bufferBytes / format.getFrameSize();
    }

    @Override
    public long getLongFramePosition() {
      return switch (output.pace) {
        case FREE -> written;
        case STEPPED -> Math.min(written, stepped);
        case REAL_TIME ->
            Math.min(
                written, (long) ((System.nanoTime() - startNanos) * format.getFrameRate() / 1e9));
        case STUCK -> 0;
      };
    }

    @Override
    public int available() {
      output.serve();
      // A free output takes all at once and yet never starves.
      return output.pace == Pace.FREE
          ? bufferBytes / 2
          : bufferBytes - (int) waiting() * format.getFrameSize();
    }

    @Override
    public int getBufferSize() {
      return bufferBytes;
    }

    @Override
    public int getFramePosition() {
      return (int) getLongFramePosition();
    }

    @Override
    public long getMicrosecondPosition() {
      return (long) (getLongFramePosition() * 1e6 / format.getFrameRate());
    }

    @Override
    public float getLevel() {
      return AudioSystem.NOT_SPECIFIED;
    }

    @Override
    public AudioFormat getFormat() {
      return format;
    }

    @Override
    public void start() {
      running = true;
    }

    @Override
    public void stop() {
      running = false;
    }

    @Override
    public boolean isRunning() {
      return running;
    }

    @Override
    public boolean isActive() {
      return running;
    }

    @Override
    public void drain() {}

    @Override
    public void flush() {}

    @Override
    public Line.Info getLineInfo() {
      return FakeMixer.LINE;
    }

    @Override
    public void close() {
      output.serve();
      open = false;
    }

    @Override
    public boolean isOpen() {
      return open;
    }
  }
}
