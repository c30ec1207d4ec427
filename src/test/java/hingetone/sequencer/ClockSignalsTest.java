package hingetone.sequencer;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import javax.sound.midi.ShortMessage;
import org.junit.jupiter.api.Test;

/**
 * MIDI clock as the MIDI 1.0 detailed specification has it: 24 clocks a quarter, song position in
 * sixteenths of 6 clocks with the least significant byte first, the follower's first clock after
 * start falling on the bar line. At 120 a bar of 4/4 lasts 2000 ms.
 */
class ClockSignalsTest {
  private static final PlaySetup WITH_CLOCK = PlaySetup.USUAL.withVolume(100);

  /** A piece of gear that follows. */
  private static final class Follower {
    boolean runs;
    int clock;

    /** Where it stands at each moment a clock came while it ran, in clocks from its top. */
    final List<String> log = new ArrayList<>();

    Follower listen(List<Rig.Sent> sent) {
      for (Rig.Sent s : sent) {
        ShortMessage m = s.message();
        switch (m.getStatus()) {
          case 0xFA -> {
            clock = 0;
            runs = true;
          }
          case 0xFB -> runs = true;
          case 0xFC -> runs = false;
          case 0xF2 -> clock = 6 * (m.getData1() + 128 * m.getData2());
          case 0xF8 -> tick(s);
          default -> {}
        }
      }
      return this;
    }

    private void tick(Rig.Sent s) {
      if (runs) {
        if (clock % 96 == 0) {
          log.add(Math.round((s.due() - Timeline.LEAD) / 1e6) + " ms: bar " + (clock / 96 + 1));
        }
        clock++;
      }
    }
  }

  private static Rig playing(int countIn) {
    Rig rig = new Rig(n -> PlayingBand.countedIn(8, 120, countIn), WITH_CLOCK);
    rig.send(new Command.Play());
    return rig;
  }

  @Test
  void there_are_24_clocks_a_quarter() {
    Rig rig = playing(0).to(1999.9);
    assertThat(rig.sent.stream().filter(s -> s.message().getStatus() == 0xF8)).hasSize(96);
  }

  @Test
  void a_follower_starts_with_bar_1_after_the_count_in_and_goes_on_through_the_laps() {
    Rig rig = playing(1).to(20_001);
    assertThat(new Follower().listen(rig.sent).log)
        .startsWith("2000 ms: bar 1", "4000 ms: bar 2")
        .endsWith("18000 ms: bar 9", "20000 ms: bar 10");
  }

  @Test
  void a_follower_goes_with_jumps_and_loops() {
    Rig rig = playing(0).to(100).send(new Command.Jump(5)).to(2100);
    rig.send(new Command.Loop(5, 6)).to(8001);
    assertThat(new Follower().listen(rig.sent).log)
        .containsExactly(
            "0 ms: bar 1", "2000 ms: bar 5", "4000 ms: bar 6", "6000 ms: bar 5", "8000 ms: bar 6");
  }

  @Test
  void a_follower_stands_still_in_a_pause_and_goes_on_after_it() {
    Rig rig = playing(0).to(1000).send(new Command.Pause()).to(4000);
    rig.send(new Command.Play()).to(5001);
    assertThat(new Follower().listen(rig.sent).log)
        .containsExactly("0 ms: bar 1", "5000 ms: bar 2");
  }

  @Test
  void after_stop_a_follower_starts_from_its_top() {
    Rig rig = playing(0).to(5000).send(new Command.Stop()).to(6000);
    rig.send(new Command.Play()).to(6061);
    assertThat(new Follower().listen(rig.sent).log).endsWith("4000 ms: bar 3", "6060 ms: bar 1");
  }

  @Test
  void start_comes_at_least_a_millisecond_before_its_first_clock() {
    Rig rig = playing(0).to(1);
    List<Integer> statuses = rig.sent.stream().map(s -> s.message().getStatus()).toList();
    Rig.Sent start = rig.sent.get(statuses.indexOf(0xFA));
    Rig.Sent clock = rig.sent.get(statuses.indexOf(0xF8));
    assertThat(clock.due() - start.due()).isGreaterThanOrEqualTo(1_000_000);
  }

  @Test
  void a_follower_that_was_gone_is_stopped_and_told_its_place_at_the_next_bar() {
    Rig rig = playing(0).to(2500);
    int gone = rig.sent.size();
    rig.to(4500);
    List<Rig.Sent> heard = new ArrayList<>(rig.sent.subList(0, gone));
    int back = rig.sent.size();
    rig.timeline.repeatSetup(rig);
    rig.to(8001);
    heard.addAll(rig.sent.subList(back, rig.sent.size()));
    assertThat(new Follower().listen(heard).log)
        .containsExactly("0 ms: bar 1", "2000 ms: bar 2", "6000 ms: bar 4", "8000 ms: bar 5");
  }
}
