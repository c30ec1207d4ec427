package hingetone.transport;

import hingetone.port.FakePorts;
import hingetone.port.FakePorts.FakePort;
import hingetone.port.Port;
import hingetone.port.Ports;
import hingetone.score.Mark;
import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.sequencer.Command;
import hingetone.sequencer.PlaySetup;
import hingetone.sequencer.SequencerEvent;
import hingetone.time.Beats;
import hingetone.time.Tempo;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.locks.LockSupport;
import java.util.function.LongUnaryOperator;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.Sequencer;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;

/**
 * Our sequencer on a MIDI port and the JDK's {@link Sequencer}, in turn, on the same events: what
 * {@code src/docs/timing.md} says about each figure holds here. Run by hand:
 *
 * <pre>
 * java -cp src/target/classes:src/target/test-classes hingetone.transport.SequencerBenchmark
 *     [blocks] [seconds]      compares; 10 blocks of 10 seconds unless stated
 *     drift [minutes] [seams] ours alone for long: 10 minutes and 1000 seams unless stated
 * </pre>
 */
public final class SequencerBenchmark {
  private static final com.sun.management.ThreadMXBean THREADS =
      (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
  private static final int RESOLUTION = 960;
  private static final int KEY = 42;

  private static volatile boolean burning;
  private static volatile double sink;

  /** What is played: a lap of sixteenths, its tempo bar by bar. */
  private record Music(int bars, int[] tempos) {
    static Music steady(int tempo) {
      return new Music(1, new int[] {tempo});
    }

    static Music changing() {
      return new Music(2, new int[] {120, 150});
    }

    int tempo(int bar) {
      return tempos[bar % tempos.length];
    }

    /** When a note is due, in nanoseconds after the first. */
    long due(long note) {
      int bar = (int) (note / 16);
      double nanos = bar / bars * nanosBefore(bars) + nanosBefore(bar % bars);
      return Math.round(nanos + note % 16 * 15e9 / tempo(bar));
    }

    private double nanosBefore(int bar) {
      return IntStream.range(0, bar).mapToDouble(b -> 240e9 / tempo(b)).sum();
    }

    int notesIn(double seconds) {
      int notes = 0;
      while (due(notes) < seconds * 1e9) {
        notes++;
      }
      return notes;
    }
  }

  /** One block's outcome. */
  private record Block(Stamps.Errors errors, double cpuPercent, double bytesEachSecond) {}

  private SequencerBenchmark() {}

  public static void main(String[] args) throws Exception {
    try (StallWatch watch = new StallWatch()) {
      if (args.length > 0 && args[0].equals("drift")) {
        int minutes = args.length > 1 ? Integer.parseInt(args[1]) : 10;
        int seams = args.length > 2 ? Integer.parseInt(args[2]) : 1000;
        drift(minutes, seams, watch);
      } else {
        int blocks = args.length > 0 ? Integer.parseInt(args[0]) : 10;
        int seconds = args.length > 1 ? Integer.parseInt(args[1]) : 10;
        compare(blocks, seconds, watch);
      }
      System.out.printf(
          "The machine stalled %d times for more than 1 ms, %.1f ms at worst.%n",
          watch.count(), watch.worstMillis());
    }
    System.exit(0);
  }

  private static void compare(int blocks, int seconds, StallWatch watch) throws Exception {
    System.out.printf(
        "%s, Java %s, %d cores. %d blocks of %d s each, by turns. Milliseconds: median over blocks"
            + " [range].%n",
        System.getProperty("os.name"),
        System.getProperty("java.version"),
        Runtime.getRuntime().availableProcessors(),
        blocks,
        seconds);
    System.out.println(
        "| what | sequencer | median error | 99th percentile | worst | drift in a block"
            + " | late > 1 ms: own / stalled | CPU % | bytes/s |");
    System.out.println("|---|---|---|---|---|---|---|---|---|");
    for (boolean busy : new boolean[] {false, true}) {
      burn(busy);
      String load = busy ? "both cores busy" : "idle";
      for (int tempo : new int[] {120, 240}) {
        compare(
            "16ths at " + tempo + ", " + load, Music.steady(tempo), false, blocks, seconds, watch);
      }
    }
    burn(false);
    compare("one-bar loops at 137", Music.steady(137), true, blocks, seconds, watch);
    compare("a new tempo each bar, 120 and 150", Music.changing(), false, blocks, seconds, watch);
  }

  private static void compare(
      String what, Music music, boolean loops, int blocks, int seconds, StallWatch watch)
      throws Exception {
    List<Block> ours = new ArrayList<>();
    List<Block> theirs = new ArrayList<>();
    int notes = music.notesIn(seconds);
    for (int block = 0; block < blocks; block++) {
      ours.add(ours(music, loops, notes, watch));
      theirs.add(theirs(music, loops, notes, watch));
    }
    print(what, "ours", ours);
    print(what, "JDK's", theirs);
    double ratio = median(theirs, b -> p(b, 0.5)) / median(ours, b -> p(b, 0.5));
    double absolute = median(ours, b -> Stamps.Errors.quantile(b.errors().absolute(), 0.5));
    System.out.printf(
        "| | | JDK's / ours: %.0f; ours absolute: %.4f | | | | | | |%n", ratio, absolute);
  }

  private static Score score(Music music) {
    List<Note> notes = new ArrayList<>();
    List<Mark> marks = new ArrayList<>();
    for (int bar = 0; bar < music.bars(); bar++) {
      marks.add(new Mark.OfTempo(Beats.of(4L * bar), Tempo.of(music.tempo(bar))));
      for (int i = 0; i < 16; i++) {
        Beats at = Beats.of(4L * bar).plus(Beats.of(i, 4));
        notes.add(new Note(at, Beats.of(1, 8), KEY, 100));
      }
    }
    Part part = new Part(Role.DRUMS, Sound.of(0), notes);
    return new Score("Benchmark", Beats.ZERO, Beats.of(4L * music.bars()), marks, List.of(part));
  }

  private static Block ours(Music music, boolean loops, int notes, StallWatch watch)
      throws Exception {
    Score score = score(music);
    Stamps stamps = new Stamps(notes);
    long[] start = new long[1];
    CountDownLatch begun = new CountDownLatch(1);
    try (FakePort port = FakePorts.output("Benchmark")) {
      port.listen(stamps);
      Port found = Ports.find("Benchmark", Port.Direction.OUTPUT).port().orElseThrow();
      PlaySetup setup = PlaySetup.USUAL.withoutMidiClock();
      try (Transport transport =
          Transport.onPort(
              n -> score,
              setup,
              found,
              0,
              moment -> {
                if (begun.getCount() > 0 && moment instanceof SequencerEvent.BarLine line) {
                  start[0] = line.nanos();
                  begun.countDown();
                }
              })) {
        if (loops) {
          transport.send(new Command.Loop(1, 1));
        }
        transport.send(new Command.Play());
        begun.await();
        return measured("sequencer", stamps, start[0], music::due, watch);
      }
    }
  }

  private static Block theirs(Music music, boolean loops, int notes, StallWatch watch)
      throws Exception {
    Sequence sequence = new Sequence(Sequence.PPQ, RESOLUTION);
    Track track = sequence.createTrack();
    int laps = loops ? 1 : notes / (16 * music.bars()) + 1;
    for (int bar = 0; bar < laps * music.bars(); bar++) {
      addTempo(track, bar, music.tempo(bar));
      for (int i = 0; i < 16; i++) {
        long tick = (16L * bar + i) * RESOLUTION / 4;
        track.add(new MidiEvent(new ShortMessage(0x99, KEY, 100), tick));
        track.add(new MidiEvent(new ShortMessage(0x89, KEY, 0), tick + RESOLUTION / 8));
      }
    }
    // The end of the last bar: without it the sequence would end with its last note.
    long end = 4L * RESOLUTION * laps * music.bars();
    track.add(new MidiEvent(new MetaMessage(0x06, new byte[0], 0), end));
    Stamps stamps = new Stamps(notes);
    try (Sequencer sequencer = MidiSystem.getSequencer(false)) {
      sequencer.open();
      sequencer.getTransmitter().setReceiver(stamps);
      sequencer.setSequence(sequence);
      if (loops) {
        sequencer.setLoopStartPoint(0);
        sequencer.setLoopEndPoint(4L * RESOLUTION);
        sequencer.setLoopCount(Sequencer.LOOP_CONTINUOUSLY);
      }
      sequencer.start();
      return measured("Java Sound Sequencer", stamps, Long.MIN_VALUE, music::due, watch);
    }
  }

  private static void addTempo(Track track, int bar, int bpm) throws Exception {
    int micros = Math.round(60_000_000f / bpm);
    byte[] bytes = {(byte) (micros >> 16), (byte) (micros >> 8), (byte) micros};
    track.add(new MidiEvent(new MetaMessage(0x51, bytes, 3), 4L * RESOLUTION * bar));
  }

  /** Waits until all notes came in; leaves the first second out. */
  private static Block measured(
      String thread, Stamps stamps, long start, LongUnaryOperator due, StallWatch watch) {
    long id = threadNamed(thread);
    long began = System.nanoTime();
    long cpu = THREADS.getThreadCpuTime(id);
    long bytes = THREADS.getThreadAllocatedBytes(id);
    long cpuNow = cpu;
    long bytesNow = bytes;
    long now = began;
    while (!stamps.isFull()) {
      LockSupport.parkNanos(20_000_000);
      long c = THREADS.getThreadCpuTime(id);
      if (c >= 0) {
        cpuNow = c;
        bytesNow = THREADS.getThreadAllocatedBytes(id);
        now = System.nanoTime();
      }
    }
    int skip = 0;
    while (due.applyAsLong(skip) < 1_000_000_000L) {
      skip++;
    }
    double seconds = (now - began) / 1e9;
    return new Block(
        stamps.errors(start, due, skip, watch),
        (cpuNow - cpu) / 1e7 / seconds,
        (bytesNow - bytes) / seconds);
  }

  private static long threadNamed(String name) {
    long latest = -1;
    for (long id : THREADS.getAllThreadIds()) {
      var info = THREADS.getThreadInfo(id);
      if (info != null && info.getThreadName().equals(name)) {
        latest = Math.max(latest, id);
      }
    }
    return latest;
  }

  private static void burn(boolean on) {
    burning = on;
    for (int i = 0; on && i < Runtime.getRuntime().availableProcessors(); i++) {
      Thread burner =
          new Thread(
              () -> {
                double x = 1;
                while (burning) {
                  x = Math.sin(x) + 1;
                  sink = x;
                }
              },
              "burner");
      burner.setDaemon(true);
      burner.start();
    }
  }

  private static double p(Block block, double quantile) {
    return Stamps.Errors.quantile(block.errors().aroundMedian(), quantile);
  }

  private static double median(List<Block> blocks, ToDoubleFunction<Block> of) {
    double[] values = blocks.stream().mapToDouble(of).sorted().toArray();
    return values[values.length / 2];
  }

  private static String range(List<Block> blocks, ToDoubleFunction<Block> of) {
    double[] values = blocks.stream().mapToDouble(of).sorted().toArray();
    return String.format(
        "%.4f [%.4f–%.4f]", values[values.length / 2], values[0], values[values.length - 1]);
  }

  private static void print(String what, String who, List<Block> blocks) {
    System.out.printf(
        "| %s | %s | %s | %s | %s | %s | %d / %d | %.2f | %.0f |%n",
        what,
        who,
        range(blocks, b -> p(b, 0.5)),
        range(blocks, b -> p(b, 0.99)),
        range(blocks, b -> p(b, 1)),
        range(blocks, b -> b.errors().drift()),
        blocks.stream().mapToInt(b -> b.errors().lateOwn()).sum(),
        blocks.stream().mapToInt(b -> b.errors().lateStalled()).sum(),
        median(blocks, Block::cpuPercent),
        median(blocks, Block::bytesEachSecond));
  }

  /** Ours alone: laps for minutes, then one bar looped so many times. */
  private static void drift(int minutes, int seams, StallWatch watch) throws Exception {
    Music music = Music.steady(137);
    Block laps = ours(music, false, music.notesIn(60.0 * minutes), watch);
    System.out.printf(
        "%d minutes of one-bar laps at 137: drift %.4f ms, median error %.4f ms%n",
        minutes, laps.errors().drift(), Stamps.Errors.quantile(laps.errors().absolute(), 0.5));
    Music fast = Music.steady(240);
    Block loop = ours(fast, true, 16 * (seams + 1), watch);
    System.out.printf(
        "%d loop seams at 240: drift %.4f ms, median error %.4f ms%n",
        seams, loop.errors().drift(), Stamps.Errors.quantile(loop.errors().absolute(), 0.5));
  }
}
