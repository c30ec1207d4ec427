package hingetone.sequencer;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.score.Role;
import hingetone.time.Tempo;
import java.math.BigDecimal;
import java.util.ArrayDeque;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Queue;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Hours of play, on a fake clock, with every live change at random moments: hundreds of laps,
 * stopped, begun again, left for others, ended. A {@link Witness} knows what must sound.
 */
class HourOfPlayTest {
  private static final long HOUR = 3_600_000_000_000L;
  private static final int LAPS = 300;

  private final Queue<Runnable> waiting = new ArrayDeque<>();
  private Random random = new Random();
  private Rig rig = new Rig(n -> NumberedBand.lap(n, 0));
  private Witness witness = new Witness(OptionalInt.empty(), true);
  private long now;
  private int bands;

  /** Plays for an hour; gives the witness, who has found nothing wrong. */
  private Witness hour(long seed, PlaySetup setup, boolean prompt) {
    random = new Random(seed);
    rig = new Rig(n -> NumberedBand.lap(n, 0), setup, prompt ? Runnable::run : waiting::add);
    Optional<Status.End> end = rig.timeline.status().end();
    witness =
        new Witness(
            end.map(Status.End::lastBar).map(OptionalInt::of).orElse(OptionalInt.empty()), prompt);
    while (now < HOUR) {
      pass(40_000_000);
      if (random.nextInt(20) == 0 && !waiting.isEmpty()) {
        waiting.remove().run();
      }
      if (random.nextInt(60) == 0) {
        witness.steady = false;
        change();
      }
    }
    send(new Command.Stop());
    assertThat(witness.wrong()).as("seed %d", seed).isEmpty();
    assertThat(Wire.left(witness.sent.stream().map(Rig.Sent::message).toList())).isEmpty();
    assertThat(witness.outOfOrder()).isEmpty();
    assertThat(witness.strikes()).as("seed %d", seed).isEqualTo(witness.expected());
    assertThat(witness.barsPlayed()).isGreaterThan(1000);
    assertThat(witness.lapsPlayed()).isGreaterThan(150);
    return witness;
  }

  @Test
  void nothing_is_lost_doubled_out_of_order_or_left_sounding() {
    hour(2026, PlaySetup.USUAL.withoutMidiClock().withVolume(100), true);
    assertThat(bands).isGreaterThan(100);
  }

  @Test
  void it_ends_by_itself_again_and_again() {
    PlaySetup setup = PlaySetup.USUAL.withoutMidiClock().withLaps(LAPS).withEnding(1);
    assertThat(hour(1, setup, true).finished).isGreaterThan(10);
  }

  @Test
  void nothing_goes_wrong_while_laps_are_made_late() {
    PlaySetup setup = PlaySetup.USUAL.withoutMidiClock().withLaps(LAPS).withEnding(1);
    hour(7, setup, false);
  }

  private void send(Command command) {
    rig.timeline.apply(command, witness);
  }

  private void pass(int nanos) {
    now += 1 + random.nextInt(nanos);
    rig.timeline.advance(now, witness);
  }

  private void play() {
    send(new Command.Play());
    witness.playing = true;
  }

  private void change() {
    if (!witness.playing && random.nextBoolean()) {
      play();
      return;
    }
    switch (random.nextInt(15)) {
      case 0 -> send(new Command.SetTempo(Tempo.of(100 + random.nextInt(290))));
      case 1 -> send(Command.StepTempo.of(random.nextInt(9) - 4));
      case 2 -> mute(random.nextBoolean() ? Role.DRUMS : Role.BASS, random.nextInt(3) == 0);
      case 3 -> loop(Math.max(1, witness.bar + random.nextInt(5) - 2));
      case 4, 5 -> unloop();
      case 6 -> jump(1 + random.nextInt(LAPS * NumberedBand.BARS));
      case 7 -> jump(LAPS * NumberedBand.BARS - random.nextInt(2 * NumberedBand.BARS));
      case 8 -> send(new Command.StepKey(random.nextInt(13) - 6));
      case 9 -> {
        witness.silent =
            random.nextBoolean() ? Command.SilentBars.NONE : new Command.SilentBars(3, 1);
        send(witness.silent);
      }
      case 10 -> pauseAndGoOn();
      case 11 -> send(new Command.Ramp(Tempo.of(190), Tempo.of(280), BigDecimal.TEN, 1));
      case 12 -> followAnotherBand();
      case 13 -> stopOrRestart();
      default -> {
        send(new Command.StepLevel(Role.BASS, random.nextInt(101) - 50));
        send(new Command.KeyWalk(random.nextInt(12)));
      }
    }
  }

  private void mute(Role role, boolean mute) {
    send(new Command.Mute(role, mute));
    if (mute) {
      witness.muted.add(role);
    } else {
      witness.muted.remove(role);
    }
  }

  private void loop(int first) {
    Command.Loop loop = new Command.Loop(first, first + random.nextInt(4));
    send(loop);
    witness.loop = Optional.of(loop);
  }

  private void unloop() {
    send(new Command.Unloop());
    witness.loop = Optional.empty();
  }

  private void jump(int bar) {
    send(new Command.Jump(bar));
    witness.target = OptionalInt.of(bar);
  }

  private void pauseAndGoOn() {
    send(new Command.Pause());
    assertThat(witness.sounding()).isEmpty();
    pass(400_000_000);
    witness.brokenOff |= witness.target.isPresent();
    play();
  }

  private void followAnotherBand() {
    int band = ++bands;
    rig.laps.follow(n -> NumberedBand.lap(n, band));
    witness.band = band;
    send(new Command.Follow());
  }

  private void stopOrRestart() {
    boolean stops = random.nextBoolean();
    send(stops ? new Command.Stop() : new Command.Restart());
    witness.stopped();
    witness.playing = !stops;
  }
}
