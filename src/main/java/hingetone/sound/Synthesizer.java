package hingetone.sound;

import hingetone.midi.MidiEvents;
import hingetone.score.Part;
import hingetone.sound.SoundFont.Preset;
import hingetone.sound.level.BankLevels;
import hingetone.sound.level.Leveller;
import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.FloatBuffer;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.MidiUnavailableException;
import javax.sound.midi.Receiver;
import javax.sound.midi.ShortMessage;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;

/**
 * The JDK's software synthesizer, pulled: whoever reads a block first sends the messages that fall
 * into it, and each note-on sounds on its exact frame.
 *
 * <p>The synthesizer computes blocks of {@link #blockFrames()} frames. A note-on is placed on its
 * frame, provided that it was sent before the block that holds it was read; other messages act at
 * the start of their block. Not for several threads at once, except where a method says so. A
 * bank's loudness differences and gaps are evened out on the way in (see {@link SoundBank}), so the
 * same messages give about the same mix whatever the bank.
 */
public final class Synthesizer implements AutoCloseable {
  private static final int CHANNELS = 2;
  private static final int MIDI_CHANNELS = 16;
  private static final int ALL_SOUND_OFF = 120;
  private static final long AT_ONCE = -1;

  /** How often a second the synthesizer updates envelopes; its own default. */
  private static final float CONTROL_RATE = 147;

  private final javax.sound.midi.Synthesizer device;
  private final AudioInputStream stream;
  private final Receiver receiver;
  private final Leveller leveller;
  private final int sampleRate;
  private final Set<Preset> loaded = new HashSet<>();
  private final Set<String> named = new HashSet<>();
  private final byte[] bytes;
  private final FloatBuffer block;
  private long position;
  private volatile SoundBank bank;
  private volatile boolean closed;

  private Synthesizer(
      javax.sound.midi.Synthesizer device,
      AudioInputStream stream,
      SoundBank bank,
      boolean levelled,
      int sampleRate)
      throws MidiUnavailableException, IOException {
    this.device = device;
    this.stream = stream;
    this.bank = bank;
    this.leveller = new Leveller(() -> levelled ? this.bank.levels() : BankLevels.NONE);
    this.sampleRate = sampleRate;
    this.receiver = device.getReceiver();
    this.bytes = new byte[(int) (sampleRate / CONTROL_RATE) * CHANNELS * Float.BYTES];
    this.block = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).asFloatBuffer();
    block.position(block.limit());
    // The stream begins with one block of silence that no message can reach.
    stream.readNBytes(bytes, 0, bytes.length);
  }

  /**
   * Opens the synthesizer with a bank.
   *
   * @param sampleRate frames a second, 8,000 to 96,000
   * @throws SoundFailure when this Java has no such synthesizer
   */
  public static Synthesizer open(int sampleRate, SoundBank bank) throws SoundFailure {
    return open(sampleRate, bank, true);
  }

  /** The same with the sounds as loud as they are in the bank. */
  static Synthesizer unlevelled(int sampleRate, SoundBank bank) throws SoundFailure {
    return open(sampleRate, bank, false);
  }

  private static Synthesizer open(int sampleRate, SoundBank bank, boolean levelled)
      throws SoundFailure {
    try {
      javax.sound.midi.Synthesizer device = MidiSystem.getSynthesizer();
      return new Synthesizer(device, openStream(device, sampleRate), bank, levelled, sampleRate);
    } catch (MidiUnavailableException | IOException | IllegalArgumentException e) {
      throw new SoundFailure("The synthesizer of this Java does not start: " + e.getMessage(), e);
    }
  }

  /**
   * Calls {@code AudioSynthesizer.openStream} by reflection: its package is not exported, the jar's
   * manifest (and the tests' command line) export it, and a compiler held to Java 17's public
   * classes knows neither.
   */
  private static AudioInputStream openStream(javax.sound.midi.Synthesizer device, int sampleRate)
      throws SoundFailure {
    AudioFormat format =
        new AudioFormat(
            AudioFormat.Encoding.PCM_FLOAT, sampleRate, 32, CHANNELS, 8, sampleRate, false);
    Map<String, Object> settings =
        Map.of(
            "control rate", CONTROL_RATE,
            "max polyphony", 128,
            "reverb", true,
            "chorus", false,
            "auto gain control", false,
            "jitter correction", false,
            "load default soundbank", false);
    try {
      return (AudioInputStream)
          Class.forName("com.sun.media.sound.AudioSynthesizer")
              .getMethod("openStream", AudioFormat.class, Map.class)
              .invoke(device, format, settings);
    } catch (InvocationTargetException e) {
      throw new SoundFailure(
          "The synthesizer of this Java does not start: " + e.getCause().getMessage(), e);
    } catch (ReflectiveOperationException | IllegalArgumentException e) {
      throw new SoundFailure(
          "This Java's synthesizer cannot be reached; start the program with java -jar on an"
              + " OpenJDK of 17 or later, or choose a MIDI port with --out.",
          e);
    }
  }

  /** Frames of a control block: 300 at 44,100 a second. Reading whole blocks wastes nothing. */
  public int blockFrames() {
    return block.capacity() / CHANNELS;
  }

  public int sampleRate() {
    return sampleRate;
  }

  /** Frames read so far: the next one read has this number. */
  public long position() {
    return position;
  }

  /**
   * Loads the sounds of these parts, each in its one sound; sounds not loaded are silent.
   *
   * @return a sentence that names what the bank has no sound for; each is named once
   */
  public synchronized Optional<String> prepare(List<Part> parts) {
    for (Part part : parts) {
      Preset preset = SoundBank.preset(part);
      if (loaded.add(preset)) {
        bank.load(preset, device);
      }
    }
    return bank.silent(bank.lacks(parts).stream().filter(named::add).toList());
  }

  /** The bank whose sounds are heard. */
  public SoundBank bank() {
    return bank;
  }

  /**
   * Plays on with another bank: from now on its sounds are struck, as far as it has them, and
   * levelled over some notes; what sounds already rings on. From any thread.
   */
  public synchronized void change(SoundBank other) {
    loaded.forEach(preset -> other.load(preset, device));
    named.clear();
    bank = other;
  }

  /** Sends a message that sounds on a frame, or as soon as it can where that frame is past. */
  public void send(ShortMessage message, long frame) {
    long micros = Math.round(frame * 1e6 / sampleRate);
    for (ShortMessage adapted : leveller.adapt(message)) {
      deliver(bank.substitute(adapted), isSetUp(adapted, frame) ? AT_ONCE : micros);
    }
  }

  /** Closed from another thread, in the middle of a block too, the device takes nothing more. */
  private void deliver(ShortMessage message, long micros) {
    try {
      receiver.send(message, micros);
    } catch (IllegalStateException e) {
      if (!closed) {
        throw e;
      }
    }
  }

  /**
   * Whether a message sets a channel up before the first note. Such ones act at once: of messages
   * with one time each comes a microsecond after the one before, and a dozen would make a note a
   * frame late.
   */
  private static boolean isSetUp(ShortMessage message, long frame) {
    return frame <= 0 && !MidiEvents.isNoteOn(message) && !MidiEvents.isNoteOff(message);
  }

  /** Reads the next frames into interleaved stereo. */
  public void read(float[] stereo, int frames) {
    int wanted = frames * CHANNELS;
    int done = 0;
    while (done < wanted) {
      if (!block.hasRemaining()) {
        nextBlock();
      }
      int some = Math.min(wanted - done, block.remaining());
      block.get(stereo, done, some);
      for (int i = done; i < done + some; i++) {
        stereo[i] *= Leveller.GAIN;
      }
      done += some;
    }
    position += frames;
  }

  private void nextBlock() {
    try {
      stream.readNBytes(bytes, 0, bytes.length);
    } catch (IOException | RuntimeException e) {
      dropEverything();
    }
    block.rewind();
  }

  /** A note of a damaged bank broke the synthesizer: without what sounds now it goes on. */
  private void dropEverything() {
    Arrays.fill(bytes, (byte) 0);
    for (int channel = 0; channel < MIDI_CHANNELS; channel++) {
      deliver(MidiEvents.message(ShortMessage.CONTROL_CHANGE, channel, ALL_SOUND_OFF, 0), AT_ONCE);
    }
  }

  /**
   * Stops every sound at once and ends the stream. From any thread; whoever still sends or reads is
   * left in peace and gets silence.
   */
  @Override
  public void close() {
    closed = true;
    device.close();
  }
}
