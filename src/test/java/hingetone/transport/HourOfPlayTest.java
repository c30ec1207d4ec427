package hingetone.transport;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.time.Beats;
import hingetone.time.Tempo;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import javax.sound.midi.ShortMessage;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * An hour of play, on a fake clock, with every live change at random moments. What must sound is
 * worked out here from the beats told and the changes made, without the sequencer.
 */
class HourOfPlayTest {
  private static final int BARS = 8;
  private static final long HOUR = 3_600_000_000_000L;

  /** Which notes must start at a beat, told when it comes; and which bars may follow which. */
  private static final class Witness implements Sink {
    final List<Rig.Sent> sent = new ArrayList<>();
    final TreeMap<Long, List<Integer>> expected = new TreeMap<>();
    final Set<Role> muted = EnumSet.noneOf(Role.class);
    Command.SilentBars silent = Command.SilentBars.NONE;
    Optional<Command.Loop> loop = Optional.empty();
    OptionalInt target = OptionalInt.empty();
    long now;
    int bar = Integer.MIN_VALUE;
    int beat = 4;
    int keyShift;
    int barsPlayed;
    String wrong = "";

    /** The chord due after the latest beat: its key, or -1 in a silent bar; and what came. */
    int chordDue = -1;

    final List<Rig.Sent> chords = new ArrayList<>();
    long beatAt;
    int lap = 1;

    /** Whether a jump was taken in mid-bar, as it is when play goes on after a pause. */
    boolean brokenOff;

    /** Whether since the latest beat nothing moved the time: then the chord's place is known. */
    boolean steady;

    /** What held when the bar began. */
    Command.SilentBars silentHere = Command.SilentBars.NONE;

    @Override
    public void send(long due, ShortMessage message) {
      sent.add(new Rig.Sent(due, message));
      Rig.Sent last = sent.get(sent.size() - 1);
      if (last.isNoteOn() && message.getChannel() == Role.CHORDS.channel()) {
        chords.add(last);
      }
    }

    @Override
    public void tell(Moment moment) {
      if (moment instanceof Moment.BarLine line) {
        barLine(line);
      } else if (moment instanceof Moment.Beat b) {
        beat(b);
      }
    }

    private void barLine(Moment.BarLine line) {
      if (bar != Integer.MIN_VALUE && beat != 4 && !brokenOff) {
        wrong += " bar " + bar + " ended at beat " + beat;
      }
      int due =
          target.orElse(
              loop.isPresent() && bar >= loop.get().lastBar() ? loop.get().firstBar() : bar + 1);
      if (bar != Integer.MIN_VALUE && line.bar() != due) {
        wrong += " after bar " + bar + " came " + line.bar() + ", not " + due;
      }
      target = OptionalInt.empty();
      bar = line.bar();
      beat = 0;
      keyShift = line.keyShift();
      silentHere = silent;
      barsPlayed++;
    }

    private void beat(Moment.Beat b) {
      int number = (int) b.position().beat().numerator();
      if (b.position().bar() != bar || number != beat + 1) {
        wrong += " beat " + b.position() + " after bar " + bar + " beat " + beat;
      }
      checkChord(b.nanos());
      beat = number;
      brokenOff = false;
      lap = lapOf(bar);
      boolean silentNow = silentHere.isSilent(bar);
      chordDue = silentNow ? -1 : chord(lap) + keyShift;
      beatAt = b.nanos();
      steady = true;
      List<Integer> keys = new ArrayList<>();
      if (!silentNow) {
        int inLap = Math.floorMod(bar - 1, BARS);
        if (!muted.contains(Role.DRUMS)) {
          keys.add(9 * 128 + drum(inLap, number));
        }
        if (!muted.contains(Role.BASS)) {
          keys.add(128 + bass(inLap, number) + keyShift);
        }
      }
      expected.put(b.nanos(), keys);
    }

    /** Between two beats came the one chord of the first, a third of a beat after it. */
    private void checkChord(long nextBeat) {
      List<Integer> keys = chords.stream().map(c -> c.message().getData1()).toList();
      if (!brokenOff && !keys.equals(chordDue < 0 ? List.of() : List.of(chordDue))) {
        wrong += " chords " + keys + " in bar " + bar + " beat " + beat + ", not " + chordDue;
      } else if (!brokenOff && steady && chordDue >= 0) {
        long due = beatAt + Math.round((nextBeat - beatAt) / 3.0) + spread(lap) * 1000;
        if (Math.abs(chords.get(0).due() - due) > 2) {
          wrong += " chord of bar " + bar + " beat " + beat + " at " + chords.get(0).due();
        }
      }
      chords.clear();
    }
  }

  private static int lapOf(int bar) {
    return Math.floorDiv(bar - 1, BARS) + 1;
  }

  private static int chord(int lap) {
    return 60 + lap % 12;
  }

  /** How much later than its place a chord is played, in microseconds. */
  private static long spread(int lap) {
    return lap % 2 == 0 ? 9000 : -9000;
  }

  /** In each bar another drum on each beat. */
  private static int drum(int bar, int beat) {
    return 35 + (4 * bar + beat - 1) % 40;
  }

  private static int bass(int bar, int beat) {
    return 30 + (4 * bar + beat - 1) % 32;
  }

  private static Score lap(int number) {
    List<Note> drums = new ArrayList<>();
    List<Note> basses = new ArrayList<>();
    List<Note> chords = new ArrayList<>();
    for (int beat = 0; beat < 4 * BARS; beat++) {
      Beats at = Beats.of(beat);
      drums.add(new Note(at, Beats.of(1, 8), drum(beat / 4, beat % 4 + 1), 90));
      // The bass is held into the next note, every eighth of them into the next bar but one.
      Beats length = beat % 8 == 0 ? Beats.of(5) : Beats.of(1 + beat % 2, 1);
      basses.add(new Note(at, length, bass(beat / 4, beat % 4 + 1), 90));
      chords.add(
          new Note(at.plus(Beats.of(1, 3)), Beats.of(2, 3), chord(number), 70)
              .withOffsetMicros(spread(number)));
    }
    return new Score(
        "Test",
        Beats.ZERO,
        Beats.of(4L * BARS),
        List.of(),
        List.of(
            new Part(Role.DRUMS, Sound.of(0), drums),
            new Part(Role.BASS, Sound.of(33), basses),
            new Part(Role.CHORDS, Sound.of(4), chords)));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2026})
  void nothing_is_lost_doubled_out_of_order_or_left_sounding(long seed) {
    Random random = new Random(seed);
    Witness witness = new Witness();
    Timeline timeline = new Rig(HourOfPlayTest::lap).timeline;
    timeline.apply(new Command.Play(), witness);
    while (witness.now < HOUR) {
      witness.now += 1 + random.nextInt(40_000_000);
      timeline.advance(witness.now, witness);
      if (random.nextInt(60) == 0) {
        witness.steady = false;
        change(timeline, witness, random);
      }
    }
    timeline.apply(new Command.Stop(), witness);
    assertThat(witness.wrong).as("seed %d", seed).isEmpty();
    assertThat(witness.barsPlayed).isGreaterThan(1000);
    assertThat(Wire.left(witness.sent.stream().map(Rig.Sent::message).toList())).isEmpty();
    assertThat(outOfOrder(witness.sent)).isEmpty();
    assertThat(strikes(witness)).isEqualTo(expected(witness));
  }

  private static void change(Timeline timeline, Witness witness, Random random) {
    switch (random.nextInt(12)) {
      case 0 -> timeline.apply(new Command.SetTempo(Tempo.of(60 + random.nextInt(240))), witness);
      case 1 -> timeline.apply(Command.StepTempo.of(random.nextInt(9) - 4), witness);
      case 2 -> {
        Role role = random.nextBoolean() ? Role.DRUMS : Role.BASS;
        boolean mute = random.nextInt(3) == 0;
        timeline.apply(new Command.Mute(role, mute), witness);
        if (mute) {
          witness.muted.add(role);
        } else {
          witness.muted.remove(role);
        }
      }
      case 3 -> {
        int first = Math.max(1, witness.bar + random.nextInt(5) - 2);
        Command.Loop loop = new Command.Loop(first, first + random.nextInt(4));
        timeline.apply(loop, witness);
        witness.loop = Optional.of(loop);
      }
      case 4, 5 -> {
        timeline.apply(new Command.Unloop(), witness);
        witness.loop = Optional.empty();
      }
      case 6 -> {
        int bar = 1 + random.nextInt(40);
        timeline.apply(new Command.Jump(bar), witness);
        witness.target = OptionalInt.of(bar);
      }
      case 7 -> timeline.apply(new Command.KeyShift(random.nextInt(13) - 6), witness);
      case 8 -> {
        witness.silent =
            random.nextBoolean() ? Command.SilentBars.NONE : new Command.SilentBars(3, 1);
        timeline.apply(witness.silent, witness);
      }
      case 9 -> {
        timeline.apply(new Command.Pause(), witness);
        assertThat(Wire.left(witness.sent.stream().map(Rig.Sent::message).toList())).isEmpty();
        witness.now += 1 + random.nextInt(400_000_000);
        timeline.advance(witness.now, witness);
        witness.brokenOff = witness.target.isPresent();
        timeline.apply(new Command.Play(), witness);
      }
      case 10 ->
          timeline.apply(new Command.Ramp(Tempo.of(90), Tempo.of(180), BigDecimal.TEN, 1), witness);
      default -> {
        timeline.apply(new Command.Level(Role.BASS, random.nextInt(101)), witness);
        timeline.apply(new Command.KeyWalk(random.nextInt(12)), witness);
      }
    }
  }

  private static List<String> outOfOrder(List<Rig.Sent> sent) {
    List<String> wrong = new ArrayList<>();
    for (int i = 1; i < sent.size(); i++) {
      if (sent.get(i).due() < sent.get(i - 1).due()) {
        wrong.add(sent.get(i).line());
      }
    }
    return wrong;
  }

  /** When which drums and basses started, the keys of one moment in order. */
  private static TreeMap<Long, List<Integer>> strikes(Witness witness) {
    TreeMap<Long, List<Integer>> strikes = new TreeMap<>();
    for (Rig.Sent s : witness.sent) {
      if (s.isNoteOn() && s.message().getChannel() != Role.CHORDS.channel()) {
        int key = s.message().getChannel() * 128 + s.message().getData1();
        strikes.computeIfAbsent(s.due(), d -> new ArrayList<>()).add(key);
      }
    }
    strikes.values().forEach(keys -> keys.sort(null));
    return strikes;
  }

  private static TreeMap<Long, List<Integer>> expected(Witness witness) {
    TreeMap<Long, List<Integer>> expected = new TreeMap<>(witness.expected);
    expected.values().removeIf(List::isEmpty);
    expected.values().forEach(keys -> keys.sort(null));
    return expected;
  }
}
