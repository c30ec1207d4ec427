package hingetone.play;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.journal.PracticeLog;
import hingetone.midi.Received;
import hingetone.plan.Plan;
import hingetone.screen.Message;
import hingetone.sequencer.SequencerEvent;
import hingetone.take.TakeFiles;
import hingetone.text.reading.Source;
import hingetone.time.Position;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A scripted player over two bars in one key and two in another, a beat lasting half a second. */
class ListeningTest {
  private static final long BEAT = 500_000_000;
  private static final String CHART =
      """
      title: Two doors
      sections:
        one: {key: E minor, bars: '| Em7 | D7 |', phrases: 'statement 2'}
        two: {key: G minor, bars: '| Gm7 | C7 |', phrases: 'reply 2'}
      """;

  private final Chart chart = ChartReader.read(new Source("", CHART)).value().orElseThrow();
  private final Form form = Form.of(chart);
  private final List<Message> told = new ArrayList<>();
  private final List<Received> script = new ArrayList<>();
  private long now;
  @TempDir static Path folder;

  private TakeKeeper keeper() {
    TakeFiles files = new TakeFiles(folder);
    return new TakeKeeper(
        new Performance.Takes(
            files, CHART, 0, Optional.empty(), new PracticeLog(Path.of("nowhere"))),
        Runnable::run,
        told::add);
  }

  private final Listening listening =
      new Listening(
          form, () -> Plan.of(chart, form), keeper(), () -> now, Runnable::run, told::add);

  /** A note, in beats from the start of bar 1. */
  private void note(double at, double length, int key) {
    script.add(new Received(Math.round(at * BEAT), 0x90, 0, key, 90));
    script.add(new Received(Math.round((at + length) * BEAT), 0x80, 0, key, 0));
  }

  private void play(int fromBar, int toBar, long nanos) {
    script.sort((a, b) -> Long.compare(a.nanos(), b.nanos()));
    long at = nanos;
    for (int bar = fromBar; bar <= toBar; bar++) {
      listening.hear(new SequencerEvent.BarLine(at, form.lapOf(bar), bar, 0));
      for (int beat = 1; beat <= 4; beat++, at += BEAT) {
        long until = at;
        script.stream().filter(m -> m.nanos() < until).forEach(listening::play);
        script.removeIf(m -> m.nanos() < until);
        now = at;
        listening.hear(new SequencerEvent.Beat(at, Position.of(bar, beat)));
        listening.beat(form.quarters(Position.of(bar, beat)));
      }
    }
  }

  private List<String> verdicts() {
    return told.stream()
        .filter(Message.Verdict.class::isInstance)
        .map(m -> ((Message.Verdict) m).words())
        .toList();
  }

  @Test
  void a_landing_is_spoken_of_a_beat_later_and_a_line_in_place_of_its_landing() {
    note(0.02, 2, 71);
    for (int i = 0; i < 8; i++) {
      note(6 + i / 4.0, 0.2, 71 + i % 3);
    }
    note(8.3, 1, 70);
    play(1, 3, 0);
    assertThat(verdicts())
        .containsExactly("B, the 5: on it", "run, landed on Bb, the b3", "nothing landed");
  }

  @Test
  void a_note_held_over_the_line_is_told_as_held() {
    note(0, 1, 71);
    note(7, 3, 74);
    play(1, 3, 0);
    assertThat(verdicts()).contains("held D, the 5, over the line");
  }

  @Test
  void nobody_who_does_not_play_is_spoken_to() {
    play(1, 4, 0);
    assertThat(told).isEmpty();
  }

  @Test
  void after_a_jump_only_what_was_played_since_is_judged() {
    note(0, 1, 71);
    play(1, 1, 0);
    told.clear();
    play(3, 4, 4 * BEAT);
    assertThat(verdicts()).noneMatch(words -> words.contains("line"));
  }

  @Test
  void what_sounds_is_told_once_for_each_change_bends_of_less_than_a_half_tone_left_out() {
    listening.play(new Received(0, 0x90, 0, 64, 90));
    listening.play(new Received(1, 0xE0, 0, 0, 65));
    listening.play(new Received(2, 0xE0, 0, 127, 127));
    listening.hear(new SequencerEvent.Lost("the guitar"));
    assertThat(told)
        .containsExactly(
            new Message.Sounding(Set.of(64)),
            new Message.Sounding(Set.of(66)),
            new Message.Sounding(Set.of()));
  }

  @Test
  void beats_in_the_count_in_are_not_judged() {
    note(0.5, 1, 71);
    play(0, 0, 0);
    assertThat(verdicts()).isEmpty();
  }
}
