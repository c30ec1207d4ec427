package hingetone.sound;

import hingetone.midi.MidiEvents;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Sound;
import hingetone.sound.level.BankLevels;
import hingetone.sound.level.LoudnessMeter;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import javax.sound.midi.ShortMessage;

/**
 * Measures how loud the sounds of a bank are: each plays a phrase of its kind by itself, as fast as
 * the machine can, and a meter after ITU-R BS.1770-4 listens.
 *
 * <p>At 120 beats a minute a bass plays quarters from E1 on, a guitar chords in eighths, all else
 * chords in half notes, a drum quarters; with accents and soft strokes, as the band plays them,
 * without reverb. So what dies away sooner than elsewhere, or answers a soft stroke otherwise, is
 * measured in the way that it is played.
 */
final class LevelMeasure {
  private static final int SAMPLE_RATE = 44_100;
  private static final int EIGHTH = SAMPLE_RATE / 4;
  private static final int FRAMES = 16 * EIGHTH;

  /** How much of its time a stroke of a guitar is held, and one of all else. */
  private static final double SHORT = 0.625;

  private static final double LONG = 0.875;

  private static final int LEVEL = 7;
  private static final int REVERB = 91;

  /** Percussion of General MIDI and its extensions. */
  private static final int FIRST_DRUM = 27;

  private static final int LAST_DRUM = 87;

  private static final int FIRST_GUITAR = 24;
  private static final int FIRST_BASS = 32;
  private static final int LAST_BASS = 39;
  private static final int[][] LOW = {{28}, {33}, {31}, {35}, {40}, {38}, {36}, {33}};
  private static final int[][] MIDDLE = {{55, 60, 64}, {58, 62, 67}, {60, 63, 68}, {57, 62, 65}};
  private static final int[] VELOCITIES = {102, 70, 84, 54};

  private LevelMeasure() {}

  /** The figures of what parts play and is not known yet: their programs, or the whole drum kit. */
  static BankLevels of(SoundBank bank, List<Part> parts, BankLevels known) throws SoundFailure {
    Map<Integer, Double> programs = new TreeMap<>();
    Map<Integer, Double> drums = new TreeMap<>();
    for (int program : missing(parts, known)) {
      programs.put(program, program(bank, program));
    }
    if (lacksKit(parts, known)) {
      for (int key = FIRST_DRUM; key <= LAST_DRUM; key++) {
        drums.put(key, drum(bank, key));
      }
    }
    return new BankLevels(programs, drums);
  }

  /** Whether parts play what is not known yet. */
  static boolean isMissing(List<Part> parts, BankLevels known) {
    return lacksKit(parts, known) || !missing(parts, known).isEmpty();
  }

  private static boolean lacksKit(List<Part> parts, BankLevels known) {
    return known.drums().isEmpty() && parts.stream().anyMatch(part -> part.role().isPercussion());
  }

  private static TreeSet<Integer> missing(List<Part> parts, BankLevels known) {
    TreeSet<Integer> missing = new TreeSet<>();
    for (Part part : parts) {
      if (!part.role().isPercussion()) {
        missing.add(part.sound().program());
      }
    }
    missing.removeAll(known.programs().keySet());
    return missing;
  }

  private static double program(SoundBank bank, int program) throws SoundFailure {
    if (program >= FIRST_BASS && program <= LAST_BASS) {
      return loudness(bank, Role.BASS, program, new Phrase(LOW, EIGHTH * 2, LONG));
    }
    boolean guitar = program >= FIRST_GUITAR && program < FIRST_BASS;
    Phrase chords =
        guitar ? new Phrase(MIDDLE, EIGHTH, SHORT) : new Phrase(MIDDLE, EIGHTH * 4, LONG);
    return loudness(bank, Role.CHORDS, program, chords);
  }

  private static double drum(SoundBank bank, int key) throws SoundFailure {
    return bank.hasDrum(key)
        ? loudness(bank, Role.DRUMS, 0, new Phrase(new int[][] {{key}}, EIGHTH * 2, LONG))
        : Double.NEGATIVE_INFINITY;
  }

  /**
   * Strokes of keys in turn.
   *
   * @param keys the keys of each stroke
   * @param each frames from stroke to stroke
   * @param held how much of that a stroke is held
   */
  private record Phrase(int[][] keys, int each, double held) {
    void play(Synthesizer synthesizer, int channel) {
      for (int stroke = 0; stroke * each < FRAMES; stroke++) {
        long on = (long) stroke * each;
        long off = on + Math.round(each * held);
        int velocity = VELOCITIES[stroke % VELOCITIES.length];
        for (int key : keys[stroke % keys.length]) {
          synthesizer.send(message(ShortMessage.NOTE_ON, channel, key, velocity), on);
          synthesizer.send(message(ShortMessage.NOTE_OFF, channel, key, 0), off);
        }
      }
    }
  }

  private static double loudness(SoundBank bank, Role role, int program, Phrase phrase)
      throws SoundFailure {
    try (Synthesizer synthesizer = Synthesizer.unlevelled(SAMPLE_RATE, bank)) {
      synthesizer.prepare(List.of(new Part(role, Sound.of(program), List.of())));
      int channel = role.channel();
      synthesizer.send(message(ShortMessage.CONTROL_CHANGE, channel, LEVEL, 100), 0);
      synthesizer.send(message(ShortMessage.CONTROL_CHANGE, channel, REVERB, 0), 0);
      synthesizer.send(message(ShortMessage.PROGRAM_CHANGE, channel, program, 0), 0);
      phrase.play(synthesizer, channel);
      return listen(synthesizer);
    }
  }

  private static double listen(Synthesizer synthesizer) {
    LoudnessMeter meter = new LoudnessMeter(SAMPLE_RATE);
    float[] block = new float[2 * synthesizer.blockFrames()];
    while (synthesizer.position() < FRAMES) {
      synthesizer.read(block, synthesizer.blockFrames());
      meter.add(block, synthesizer.blockFrames());
    }
    return toTenths(meter.integrated());
  }

  /** As they are kept, so that the first sound file has the samples of all later ones. */
  private static double toTenths(double decibels) {
    return Double.isFinite(decibels) ? Math.round(10 * decibels) / 10.0 : decibels;
  }

  private static ShortMessage message(int command, int channel, int first, int second) {
    return MidiEvents.message(command, channel, first, second);
  }
}
