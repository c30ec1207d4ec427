package hingetone.play;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.journal.Activity;
import hingetone.journal.LogEntry;
import hingetone.journal.PracticeLog;
import hingetone.screen.Message;
import hingetone.sequencer.PlaySetup;
import hingetone.sequencer.SequencerEvent;
import hingetone.sequencer.Status;
import hingetone.time.Position;
import hingetone.time.Tempo;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SittingTest {
  private static final Instant NOON = Instant.parse("2026-05-04T12:00:00Z");
  private static final long SECOND = 1_000_000_000;

  private final List<LogEntry> kept = new ArrayList<>();
  private long nanos = SECOND;

  private final Sitting sitting =
      new Sitting(
          new Sitting.Subject("Wet slate", "C minor, Eb minor"),
          () -> NOON.plus(Duration.ofNanos(nanos - SECOND)),
          kept::add);

  private void tempo(int bpm) {
    sitting.hear(
        new SequencerEvent.Changed(Status.atRest(Tempo.of(bpm), PlaySetup.USUAL.volume())));
  }

  /** Bars of four beats, a second each. */
  private void bars(int count) {
    for (int bar = 1; bar <= count; bar++) {
      sitting.hear(new SequencerEvent.BarLine(nanos, 1, bar, 0));
      for (int beat = 1; beat <= 4; beat++) {
        sitting.hear(new SequencerEvent.Beat(nanos, Position.of(bar, beat)));
        nanos += SECOND;
      }
    }
  }

  private void verdict(Optional<Boolean> onPlace) {
    sitting.hear(new Message.Verdict("", onPlace));
  }

  @Test
  void a_minute_is_kept_while_it_goes_on_and_the_rest_at_its_end() {
    tempo(60);
    bars(16);
    assertThat(kept).hasSize(1);
    bars(4);
    sitting.end();
    assertThat(kept).hasSize(2).allMatch(entry -> entry.start().equals(NOON));
    LogEntry last = kept.get(1);
    assertThat(last.activity()).isEqualTo(Activity.PLAY);
    assertThat(last.chart()).isEqualTo("Wet slate");
    assertThat(last.seconds()).isEqualTo(79);
    assertThat(last.bpm()).contains(60.0);
    assertThat(last.score()).isEmpty();
  }

  @Test
  void a_pause_does_not_count_and_less_than_a_minute_is_not_kept() {
    bars(7);
    nanos += 600 * SECOND;
    bars(7);
    sitting.end();
    assertThat(kept).isEmpty();
  }

  @Test
  void the_fastest_tempo_is_one_that_was_kept_for_eight_bars() {
    tempo(90);
    bars(9);
    tempo(200);
    bars(3);
    tempo(100);
    bars(9);
    tempo(95);
    bars(9);
    sitting.end();
    assertThat(kept.get(kept.size() - 1).bpm()).contains(100.0);
  }

  @Test
  void landings_on_their_place_are_the_score_and_lines_are_not() {
    for (int i = 0; i < 8; i++) {
      verdict(Optional.of(i < 6));
      verdict(Optional.empty());
    }
    bars(16);
    assertThat(kept.get(0).score()).contains(0.75);
  }

  @Test
  void a_take_is_kept_when_it_ends() {
    bars(1);
    sitting.hear(new Message.Recording(Optional.of("evening")));
    bars(3);
    sitting.hear(new Message.Recording(Optional.empty()));
    assertThat(kept).hasSize(1);
    assertThat(kept.get(0).activity()).isEqualTo(Activity.TAKE);
    assertThat(kept.get(0).seconds()).isEqualTo(12);
  }

  @Test
  void a_log_that_cannot_be_written_is_told_once(@TempDir Path folder) throws Exception {
    Files.write(folder.resolve("file"), new byte[0]);
    PracticeLog log = new PracticeLog(folder.resolve("file").resolve("log"));
    List<Message> told = new ArrayList<>();
    var keep = Sitting.into(log, told::add);
    bars(16);
    keep.accept(kept.get(0));
    keep.accept(kept.get(0));
    assertThat(told).hasSize(1);
  }
}
