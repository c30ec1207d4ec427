package hingetone.sequencer;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.score.Note;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.time.Beats;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The k-th note against k times the length of a beat, worked out without the sequencer. */
class DriftTest {
  private static final double TOLERANCE_NANOS = 1;

  private static Score oneBar(int tempo) {
    Note[] notes = new Note[4];
    for (int beat = 0; beat < 4; beat++) {
      notes[beat] = new Note(Beats.of(beat), Beats.of(1, 2), 40, 90);
    }
    return PlayingBand.of(1, tempo, Role.BASS, notes);
  }

  private static double worstNanos(Rig rig, int tempo) {
    List<Rig.Sent> strikes = rig.sent.stream().filter(Rig.Sent::isNoteOn).toList();
    double worst = 0;
    for (int k = 0; k < strikes.size(); k++) {
      double due = Timeline.LEAD + k * 60e9 / tempo;
      worst = Math.max(worst, Math.abs(strikes.get(k).due() - due));
    }
    return worst;
  }

  @ParameterizedTest
  @ValueSource(ints = {61, 120, 137, 240, 397})
  void ten_minutes_of_one_bar_laps_do_not_drift(int tempo) {
    Rig rig = Rig.playing(oneBar(tempo)).to(600_000);
    assertThat(rig.strikes()).hasSize(10 * tempo);
    assertThat(worstNanos(rig, tempo)).isLessThanOrEqualTo(TOLERANCE_NANOS);
  }

  @ParameterizedTest
  @ValueSource(ints = {137, 240})
  void a_thousand_loop_seams_do_not_drift(int tempo) {
    Rig rig = new Rig(n -> oneBar(tempo)).send(new Command.Loop(2, 2)).send(new Command.Play());
    rig.to(1002 * 4 * 60e3 / tempo);
    assertThat(rig.timeline.status().loop()).isPresent();
    assertThat(rig.moments(SequencerEvent.BarLine.class)).hasSizeGreaterThanOrEqualTo(1002);
    assertThat(worstNanos(rig, tempo)).isLessThanOrEqualTo(TOLERANCE_NANOS);
  }

  @ParameterizedTest
  @ValueSource(longs = {3, 17})
  void a_thousand_pauses_and_tempo_changes_lose_less_than_a_microsecond(long seed) {
    java.util.Random random = new java.util.Random(seed);
    Rig rig = Rig.playing(oneBar(100));
    double beat = 60e9 / 100;
    double due = Timeline.LEAD;
    long now = 0;
    for (int i = 0; i < 1000; i++) {
      now += 1_000_000 + random.nextInt(900_000_000);
      rig.timeline.advance(now, rig);
      while (due < now) {
        due += beat;
      }
      int bpm = 60 + random.nextInt(180);
      rig.send(new Command.SetTempo(hingetone.time.Tempo.of(bpm)));
      due = now + (due - now) * (60e9 / bpm) / beat;
      beat = 60e9 / bpm;
      if (i % 3 == 0) {
        long pause = random.nextInt(2_000_000_000);
        rig.send(new Command.Pause());
        now += pause;
        rig.timeline.advance(now, rig);
        rig.send(new Command.Play());
        due += pause;
      }
    }
    rig.timeline.advance(Math.round(due) + 1000, rig);
    long last = rig.sent.stream().filter(Rig.Sent::isNoteOn).reduce((a, b) -> b).get().due();
    assertThat((double) last).as("seed %d", seed).isCloseTo(due, within());
  }

  private static org.assertj.core.data.Offset<Double> within() {
    return org.assertj.core.data.Offset.offset(1000.0);
  }
}
