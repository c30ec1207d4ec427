package hingetone.sequencer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hingetone.score.Note;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.time.Beats;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import org.junit.jupiter.api.Test;

/** A lap's only note is its number, so that it is known by what it plays. */
class ReadyLapsTest {
  private final List<Integer> made = new ArrayList<>();
  private final List<SequencerEvent> moments = new ArrayList<>();
  private final Queue<Runnable> waiting = new ArrayDeque<>();

  private static Score numbered(int key) {
    return PlayingBand.of(1, 100, Role.BASS, new Note(Beats.ZERO, Beats.ONE, key, 90));
  }

  private Score make(int number) {
    made.add(number);
    return numbered(number);
  }

  private ReadyLaps prompt(LapSource source) {
    return new ReadyLaps(source, parts -> Optional.empty(), moments::add, Runnable::run);
  }

  private ReadyLaps late() {
    return new ReadyLaps(this::make, parts -> Optional.empty(), moments::add, waiting::add);
  }

  private void work() {
    while (!waiting.isEmpty()) {
      waiting.remove().run();
    }
  }

  private static int music(Lap lap) {
    return lap.bars().get(0).notes().get(0).key();
  }

  @Test
  void the_first_lap_is_there_however_many_were_played() {
    ReadyLaps laps = prompt(this::make);
    for (int lap = 1; lap <= 100; lap++) {
      laps.playing(lap);
      assertThat(music(laps.first())).isEqualTo(1);
      assertThat(music(laps.nearest(1))).isEqualTo(1);
    }
    assertThat(made).containsOnlyOnce(1);
  }

  @Test
  void a_lap_that_was_dropped_is_made_again() {
    ReadyLaps laps = prompt(this::make);
    for (int lap = 1; lap <= 20; lap++) {
      laps.playing(lap);
    }
    assertThat(laps.lap(3).map(ReadyLapsTest::music)).contains(3);
    assertThat(made.stream().filter(n -> n == 3)).hasSize(2);
  }

  @Test
  void the_lap_being_played_and_the_next_are_never_dropped() {
    ReadyLaps laps = prompt(this::make);
    laps.playing(10);
    laps.lap(10);
    for (int far = 50; far < 60; far++) {
      laps.lap(far);
      assertThat(made).containsOnlyOnce(10, 11);
      assertThat(laps.lap(10)).isPresent();
      assertThat(laps.lap(11)).isPresent();
    }
  }

  @Test
  void while_a_lap_is_being_made_the_one_before_it_stands_in_or_the_first() {
    ReadyLaps laps = late();
    assertThat(music(laps.nearest(2))).isEqualTo(1);
    work();
    assertThat(music(laps.nearest(2))).isEqualTo(2);
    assertThat(music(laps.nearest(3))).isEqualTo(2);
    assertThat(music(laps.nearest(40))).isEqualTo(1);
    work();
    assertThat(music(laps.nearest(40))).isEqualTo(40);
  }

  @Test
  void asking_again_and_again_makes_a_lap_once_and_no_other() {
    ReadyLaps laps = late();
    for (int i = 0; i < 10; i++) {
      laps.nearest(300);
    }
    work();
    assertThat(made).containsExactly(1, 2, 300);
  }

  @Test
  void a_lap_that_cannot_be_made_is_told_once_and_has_the_music_of_the_one_before() {
    ReadyLaps laps =
        prompt(
            n -> {
              if (n == 3) {
                throw new IllegalStateException("no more ideas");
              }
              return make(n);
            });
    laps.playing(2);
    for (int i = 0; i < 5; i++) {
      assertThat(laps.lap(3).map(ReadyLapsTest::music)).contains(2);
    }
    assertThat(moments)
        .containsExactly(
            new SequencerEvent.Trouble(
                "Lap 3 could not be made: java.lang.IllegalStateException: no more ideas"));
  }

  @Test
  void a_lap_with_other_bars_than_the_first_is_not_played() {
    ReadyLaps laps = prompt(n -> n == 2 ? PlayingBand.plain(2, 100) : make(n));
    assertThat(laps.lap(2).map(ReadyLapsTest::music)).contains(1);
    assertThat(moments).hasSize(1);
  }

  @Test
  void another_band_plays_the_first_lap_too() {
    ReadyLaps laps = prompt(this::make);
    laps.playing(9);
    laps.follow(n -> numbered(100 + n));
    assertThat(music(laps.first())).isEqualTo(101);
    assertThat(music(laps.nearest(9))).isEqualTo(109);
    assertThat(laps.lap(5).map(ReadyLapsTest::music)).contains(105);
  }

  @Test
  void a_lap_asked_for_before_the_change_of_band_is_the_other_bands() {
    ReadyLaps laps = late();
    laps.lap(7);
    laps.follow(n -> numbered(100 + n));
    work();
    assertThat(laps.lap(7).map(ReadyLapsTest::music)).contains(107);
  }

  @Test
  void a_band_that_cannot_play_is_refused_and_the_old_one_goes_on() {
    ReadyLaps laps = prompt(this::make);
    assertThatThrownBy(() -> laps.follow(n -> PlayingBand.countedIn(1, 100, 2)))
        .hasMessage("its bars are not those of the first lap");
    assertThat(laps.lap(8).map(ReadyLapsTest::music)).contains(8);
    assertThat(moments).isEmpty();
  }

  @Test
  void what_of_a_lap_will_not_be_heard_is_told_before_it_is_played() {
    List<String> prepared = new ArrayList<>();
    new ReadyLaps(
        this::make,
        parts -> {
          prepared.add(parts.get(0).role().title());
          return Optional.of("No sound for " + parts.get(0).role().title() + ".");
        },
        moments::add,
        Runnable::run);
    assertThat(prepared).containsExactly("Click", "Bass", "Bass");
    assertThat(moments)
        .startsWith(
            new SequencerEvent.Trouble("No sound for Click."),
            new SequencerEvent.Trouble("No sound for Bass."));
  }
}
