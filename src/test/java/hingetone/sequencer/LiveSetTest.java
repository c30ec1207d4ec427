package hingetone.sequencer;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import javax.sound.midi.ShortMessage;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What the sequencer keeps alive, measured after collections; an hour on a fake clock. */
@Tag("long")
class LiveSetTest {
  private static final long MOST_GROWTH = 1_000_000;

  private static final MessageSink NOWHERE =
      new MessageSink() {
        @Override
        public void send(long due, ShortMessage message) {}

        @Override
        public void tell(SequencerEvent moment) {}
      };

  @Test
  void an_hour_of_play_keeps_no_more_than_a_minute() {
    Rig rig = new Rig(n -> PlayingBand.plain(12, 137));
    rig.timeline.apply(new Command.Play(), NOWHERE);
    rig.timeline.apply(new Command.Loop(3, 30), NOWHERE);
    play(rig, 0, 60);
    long minute = liveBytes();
    play(rig, 60, 3600);
    long hour = liveBytes();
    System.out.printf("live set: %,d bytes after a minute, %,d after an hour%n", minute, hour);
    assertThat(hour - minute).isLessThan(MOST_GROWTH);
    assertThat(rig.playhead.at(3_600_000_000_000L).moving()).isTrue();
  }

  private static void play(Rig rig, long fromSeconds, long toSeconds) {
    for (long millis = fromSeconds * 1000; millis < toSeconds * 1000; millis += 7) {
      rig.timeline.advance(millis * 1_000_000, NOWHERE);
    }
  }

  private static long liveBytes() {
    for (int i = 0; i < 5; i++) {
      System.gc();
    }
    return ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed();
  }
}
