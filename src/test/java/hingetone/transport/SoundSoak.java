package hingetone.transport;

import hingetone.backing.Backing;
import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.groove.Grooves;
import hingetone.score.Role;
import hingetone.sequencer.Command;
import hingetone.sequencer.Metronome;
import hingetone.sequencer.PlaySetup;
import hingetone.sequencer.SequencerEvent;
import hingetone.sound.MemoryPreferences;
import hingetone.sound.OutputLine;
import hingetone.sound.SoundBank;
import hingetone.sound.Synthesizer;
import hingetone.time.Clock;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;

/**
 * By hand: plays the demo charts on the real sound output, one after another, with a random live
 * change every two seconds, and counts how often the sound ran dry. Prints a line a minute and
 * exits with status 1 when it did at all.
 *
 * <p>Arguments: how many minutes in all (10), and a seed (1).
 */
final class SoundSoak {
  private static final List<String> CHARTS = List.of("lantern-quay", "mill-race", "slow-tide");
  private static final long CHANGE_NANOS = 2_000_000_000L;

  private final Random random;
  private final AtomicInteger underruns = new AtomicInteger();
  private final AtomicInteger beats = new AtomicInteger();
  private final AtomicInteger troubles = new AtomicInteger();
  private int changes;

  private SoundSoak(long seed) {
    random = new Random(seed);
  }

  public static void main(String[] args) throws Exception {
    MemoryPreferences.install();
    long minutes = args.length > 0 ? Long.parseLong(args[0]) : 10;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 1;
    SoundSoak soak = new SoundSoak(seed);
    long nanosEach = TimeUnit.MINUTES.toNanos(minutes) / CHARTS.size();
    for (String chart : CHARTS) {
      soak.play(chart, nanosEach);
    }
    System.out.printf(
        "seed %d: %d minutes, %d beats, %d changes, %d underruns, %d troubles%n",
        seed, minutes, soak.beats.get(), soak.changes, soak.underruns.get(), soak.troubles.get());
    System.exit(soak.underruns.get() + soak.troubles.get() == 0 ? 0 : 1);
  }

  private void play(String name, long nanos) throws Exception {
    Chart chart = ChartReader.readFile("demo-charts/" + name + ".yaml").value().orElseThrow();
    Backing backing = Backing.of(chart, Grooves.builtIn());
    OutputLine line = OutputLine.open(OutputLine.Settings.usual(), Clock.SYSTEM);
    Synthesizer synthesizer = Synthesizer.open(line.sampleRate(), SoundBank.builtIn());
    try (Transport transport =
        Transport.withSound(backing::lap, PlaySetup.USUAL, synthesizer, line, this::hear)) {
      transport.send(new Command.Play());
      long end = System.nanoTime() + nanos;
      for (long next = System.nanoTime(); next < end; next += CHANGE_NANOS) {
        while (System.nanoTime() < next) {
          LockSupport.parkNanos(next - System.nanoTime());
        }
        transport.send(change(backing.form().bars().size()));
        changes++;
      }
    }
    System.out.println(name + ": " + beats + " beats so far, " + underruns + " underruns");
  }

  private void hear(SequencerEvent moment) {
    if (moment instanceof SequencerEvent.Beat) {
      beats.incrementAndGet();
    } else if (moment instanceof SequencerEvent.Underrun) {
      underruns.incrementAndGet();
    } else if (moment instanceof SequencerEvent.Trouble || moment instanceof SequencerEvent.Lost) {
      troubles.incrementAndGet();
    }
  }

  private Command change(int bars) {
    Role role = List.of(Role.DRUMS, Role.BASS, Role.CHORDS).get(random.nextInt(3));
    int bar = 1 + random.nextInt(bars);
    return switch (random.nextInt(11)) {
      case 0, 1 -> Command.StepTempo.of(random.nextBoolean() ? 3 : -3);
      case 2, 3 -> new Command.Mute(role, random.nextBoolean());
      case 4 -> new Command.Loop(bar, bar + random.nextInt(3));
      case 5 -> new Command.Unloop();
      case 6 -> new Command.Jump(bar);
      case 7 -> new Command.StepKey(random.nextInt(5) - 2);
      case 8 -> new Command.StepLevel(role, random.nextInt(51) - 25);
      case 9 -> new Command.Click(random.nextBoolean() ? Metronome.ON : Metronome.OFF);
      default -> new Command.LoopCrossing(2, 2);
    };
  }
}
