package hingetone.sound;

import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import hingetone.midi.MidiEvents;
import hingetone.score.GeneralMidi;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Sound;
import hingetone.text.Page;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.ShortMessage;

/**
 * Run by hand: compares banks of sounds by what the grooves need of them and writes the table of
 * {@code src/docs/sound.md}.
 *
 * <p>Arguments: the page, then the banks. Each program that a groove plays is struck by itself,
 * without reverb: basses on E2, guitars on E3, all else on C4.
 */
final class BankComparison {
  private static final String HEAD =
      "| bank | MB | ready, ms | lacks | furthest out of tune | from velocity 40 to 120 | rings |"
          + " loudest over softest | after it ends |\n|---|---|---|---|---|---|---|---|---|\n";

  private static final int RATE = 44_100;
  private static final int CHANNEL = 2;
  private static final int LOUD = 120;
  private static final int USUAL = 88;
  private static final int SOFT = 40;
  private static final int FIRST_DRUM = 35;
  private static final int LAST_DRUM = 81;
  private static final int FIRST_ORGAN = 16;
  private static final int FIRST_GUITAR = 24;
  private static final int FIRST_BASS = 32;
  private static final int LAST_BASS = 39;

  private BankComparison() {}

  public static void main(String[] args) throws Exception {
    StringBuilder table = new StringBuilder(HEAD);
    for (int bank = 1; bank < args.length; bank++) {
      table.append(row(Path.of(args[bank])));
    }
    Page.replaceTable(Path.of(args[0]), "| bank |", table.toString());
  }

  private static String row(Path file) throws Exception {
    long start = System.nanoTime();
    SoundBank bank = SoundBank.read(file);
    try (Synthesizer synthesizer = Synthesizer.unlevelled(RATE, bank)) {
      synthesizer.prepare(programs().stream().map(BankComparison::part).toList());
    }
    long ready = (System.nanoTime() - start) / 1_000_000;
    TreeMap<Double, Integer> outOfTune = new TreeMap<>(Comparator.comparing(Math::abs));
    List<Double> touch = new ArrayList<>();
    List<Double> rings = new ArrayList<>();
    List<Double> levels = new ArrayList<>();
    List<Double> after = new ArrayList<>();
    for (int program : programs()) {
      float[] usual = struck(bank, program, USUAL);
      int second = RATE;
      outOfTune.put(cents(usual, key(program)), program);
      touch.add(
          level(struck(bank, program, LOUD), 0, second)
              - level(struck(bank, program, SOFT), 0, second));
      levels.add(level(usual, 0, second));
      after.add(level(usual, 6 * second, 7 * second) - level(usual, 0, second));
      if (program < FIRST_ORGAN || program >= FIRST_GUITAR) {
        rings.add(ring(usual));
      }
    }
    return String.format(
        Locale.ROOT,
        "| %s | %.1f | %d | %s | %+.0f cents (%s) | %.0f dB | %.1f s | %.0f dB | %.0f dB |\n",
        file.getFileName(),
        Files.size(file) / 1e6,
        ready,
        lacks(file, bank),
        outOfTune.lastKey(),
        GeneralMidi.PROGRAMS.get(outOfTune.lastEntry().getValue()),
        median(touch),
        median(rings),
        levels.stream().mapToDouble(d -> d).max().orElseThrow()
            - levels.stream().mapToDouble(d -> d).min().orElseThrow(),
        Math.max(-120, median(after)));
  }

  private static List<Integer> programs() {
    return Grooves.builtIn().all().stream()
        .flatMap(
            groove ->
                IntStream.of(program(groove, Role.BASS), program(groove, Role.CHORDS)).boxed())
        .distinct()
        .sorted()
        .toList();
  }

  private static int program(Groove groove, Role role) {
    return groove.sound(role).program();
  }

  private static Part part(int program) {
    return new Part(Role.CHORDS, Sound.of(program), List.of());
  }

  private static int key(int program) {
    boolean bass = program >= FIRST_BASS && program <= LAST_BASS;
    boolean guitar = program >= FIRST_GUITAR && program < FIRST_BASS;
    return bass ? 40 : guitar ? 52 : 60;
  }

  /** Programs and drums of General MIDI without a sound. */
  private static String lacks(Path file, SoundBank bank) throws Exception {
    SoundFont font = new SoundFont(MidiSystem.getSoundbank(file.toFile()));
    long drums =
        IntStream.rangeClosed(FIRST_DRUM, LAST_DRUM).filter(key -> !bank.hasDrum(key)).count();
    long programs =
        IntStream.range(0, 128)
            .filter(program -> !font.sounds(new SoundFont.Preset(0, program), 60, USUAL))
            .count();
    return drums + programs == 0 ? "nothing" : "sounds: " + programs + ", drums: " + drums;
  }

  /** A note of four seconds and four more, one channel. */
  private static float[] struck(SoundBank bank, int program, int velocity) throws Exception {
    float[] stereo = new float[2 * 8 * RATE];
    try (Synthesizer synthesizer = Synthesizer.unlevelled(RATE, bank)) {
      synthesizer.prepare(List.of(part(program)));
      send(synthesizer, ShortMessage.CONTROL_CHANGE, 91, 0, 0);
      send(synthesizer, ShortMessage.PROGRAM_CHANGE, program, 0, 0);
      send(synthesizer, ShortMessage.NOTE_ON, key(program), velocity, 0);
      send(synthesizer, ShortMessage.NOTE_OFF, key(program), 0, 4 * RATE);
      synthesizer.read(stereo, 8 * RATE);
    }
    float[] mono = new float[8 * RATE];
    for (int i = 0; i < mono.length; i++) {
      mono[i] = (stereo[2 * i] + stereo[2 * i + 1]) / 2;
    }
    return mono;
  }

  private static void send(Synthesizer synthesizer, int command, int first, int second, long at) {
    synthesizer.send(MidiEvents.message(command, CHANNEL, first, second), at);
  }

  /** Root mean square in dB to full scale. */
  private static double level(float[] mono, int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += mono[i] * mono[i];
    }
    return 10 * Math.log10(sum / (to - from) + 1e-14);
  }

  /** Seconds until a held note is 20 dB softer than in its first tenth, four at most. */
  private static double ring(float[] mono) {
    int tenth = RATE / 10;
    double first = level(mono, 0, tenth);
    for (int at = tenth; at < 4 * RATE; at += tenth) {
      if (level(mono, at, at + tenth) < first - 20) {
        return (double) at / RATE;
      }
    }
    return 4;
  }

  /** How far the note lies from its key, by the best match of its sound with itself a while on. */
  private static double cents(float[] mono, int key) {
    double period = RATE / (440 * Math.pow(2, (key - 69) / 12.0));
    int periods = 20;
    int from = RATE / 4;
    int length = RATE / 2;
    int around = (int) Math.round(periods * period);
    int reach = (int) (periods * period * 0.028); // half a semitone
    double[] match = new double[2 * reach + 1];
    int best = 1;
    for (int i = 0; i < match.length; i++) {
      int lag = around - reach + i;
      for (int n = from; n < from + length; n++) {
        match[i] += mono[n] * mono[n + lag];
      }
      best = i > 0 && i < match.length - 1 && match[i] > match[best] ? i : best;
    }
    double left = match[best - 1];
    double right = match[best + 1];
    double peak = best + 0.5 * (left - right) / (left - 2 * match[best] + right);
    return 1200 * Math.log(periods * period / (around - reach + peak)) / Math.log(2);
  }

  private static double median(List<Double> values) {
    double[] sorted = values.stream().mapToDouble(d -> d).sorted().toArray();
    return DoubleStream.of(sorted).skip(sorted.length / 2).findFirst().orElseThrow();
  }
}
