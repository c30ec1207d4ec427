package hingetone.play;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.screen.Message;
import hingetone.sequencer.SequencerEvent;
import hingetone.text.reading.Source;
import hingetone.time.Beats;
import hingetone.time.Playhead;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(20)
class HeardBeatsTest {
  private static final Form FORM =
      Form.of(
          ChartReader.read(
                  new Source(
                      "", "title: T\nsections:\n  one: {key: C minor, bars: '| Cm7 | F7 |'}\n"))
              .value()
              .orElseThrow());

  private final BlockingQueue<Message> told = new LinkedBlockingQueue<>();
  private final List<Integer> shifts = new CopyOnWriteArrayList<>();
  private final AtomicLong now = new AtomicLong(1_000_000_000);
  private final HeardBeats hearing = new HeardBeats(FORM, now::get, told::add, shifts::add);

  /** Everything told up to the end of the music. */
  private List<Message> run(Playhead playhead) throws InterruptedException {
    hearing.hear(new SequencerEvent.Finished(0));
    Thread ears = new Thread(() -> hearing.run(playhead));
    ears.start();
    List<Message> messages = new ArrayList<>();
    while (messages.stream().noneMatch(m -> m instanceof Message.Over)) {
      messages.add(told.take());
    }
    ears.interrupt();
    ears.join();
    return messages;
  }

  private static SequencerEvent.Beat beat(long nanos, int bar, int beat) {
    return new SequencerEvent.Beat(nanos, Position.of(bar, beat));
  }

  @Test
  void beats_are_told_in_order_as_quarters_from_bar_1() throws InterruptedException {
    hearing.hear(beat(1, 1, 4));
    hearing.hear(beat(2, 2, 1));
    assertThat(run(new Playhead()))
        .containsExactly(
            new Message.Beat(Beats.of(3)), new Message.Beat(Beats.of(4)), new Message.Over());
  }

  @Test
  void a_new_shift_of_the_keys_is_learned_once_and_when_its_bar_is_heard()
      throws InterruptedException {
    hearing.hear(new SequencerEvent.BarLine(1, 1, 1, 0));
    hearing.hear(new SequencerEvent.BarLine(2, 1, 2, 5));
    hearing.hear(new SequencerEvent.BarLine(3, 2, 3, 5));
    assertThat(shifts).isEmpty();
    run(new Playhead());
    assertThat(shifts).containsExactly(5);
  }

  @Test
  void a_half_beat_is_told_from_the_playhead() throws InterruptedException {
    Playhead playhead = new Playhead();
    playhead.hearAfter(0);
    playhead.enter(new Playhead.Stretch(0, 1, 1, 1, 4, 1_000_000_000));
    now.set(2_600_000_000L);
    Thread ears = new Thread(() -> hearing.run(playhead));
    ears.start();
    assertThat(told.take()).isEqualTo(new Message.Playhead(Beats.of(5, 2)));
    ears.interrupt();
    ears.join();
  }

  @Test
  void losses_returns_troubles_and_dry_sound_are_told_at_once_in_words() {
    hearing.hear(new SequencerEvent.Lost("Loud box"));
    hearing.hear(new SequencerEvent.Found("Loud box"));
    hearing.hear(new SequencerEvent.Trouble("Lap 3 could not be made."));
    hearing.hear(new SequencerEvent.Underrun(1));
    hearing.hear(new SequencerEvent.Underrun(2));
    assertThat(told.stream().map(HeardBeatsTest::words))
        .containsExactly(
            "Loud box is gone; plug it in again and it goes on.",
            "",
            "Lap 3 could not be made.",
            "The sound ran dry; its buffer is twice as long from now on.",
            "The sound ran dry 2 times; a longer --buffer makes it steadier.");
  }

  @Test
  void after_25_minutes_of_playing_a_rest_is_proposed_pauses_not_counted()
      throws InterruptedException {
    long minute = TimeUnit.MINUTES.toNanos(1);
    long second = TimeUnit.SECONDS.toNanos(1);
    long at = second;
    for (int i = 0; i < 24 * 60; i++, at += second) {
      hearing.hear(beat(at, 1, 1 + i % 4));
    }
    at += 30 * minute;
    int before = 24 * 60;
    for (int i = 0; i < 70; i++, at += second) {
      hearing.hear(beat(at, 1, 1 + i % 4));
    }
    now.set(at + minute);
    List<Message> messages = run(new Playhead());
    int rest =
        messages.indexOf(
            new Message.Notice("25 minutes of playing: rest hands and ears for a while."));
    assertThat(rest).isBetween(before + 60, before + 64);
    assertThat(messages.stream().filter(m -> m instanceof Message.Notice)).hasSize(1);
  }

  private static String words(Message message) {
    if (message instanceof Message.Fault fault) {
      return fault.words().orElse("");
    }
    return message instanceof Message.Notice notice ? notice.words() : message.toString();
  }
}
