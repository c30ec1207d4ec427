package hingetone.screen;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.screen.State.Layer;
import hingetone.screen.picture.Frame;
import hingetone.screen.picture.Size;
import hingetone.screen.view.View;
import hingetone.screen.view.ViewTest;
import hingetone.sequencer.Command;
import hingetone.sequencer.Status.Motion;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

class UpdateTest {
  private static final State PLAYING = Examples.playing(2, "3");

  private static Step press(State state, String key) {
    return Update.apply(state, new Message.Stroke(key, 0));
  }

  private static List<Layer> layers() {
    List<Layer> layers = new ArrayList<>();
    layers.add(new Layer.None());
    layers.add(new Layer.Help(0));
    layers.add(new Layer.Menu(0));
    layers.add(new Layer.Menu(Menu.lines().size() - 1));
    layers.add(new Layer.Bind(Action.PAUSE));
    return layers;
  }

  private static List<String> keys() {
    List<String> keys = new ArrayList<>();
    for (char c = '!'; c <= '~'; c++) {
      keys.add(Character.toString(c));
    }
    keys.addAll(
        List.of(
            "space",
            "enter",
            "tab",
            "esc",
            "ctrl c",
            "ctrl l",
            "ctrl z",
            "backspace",
            "up",
            "down",
            "left",
            "right",
            "home",
            "end",
            "page up",
            "page down",
            "ß",
            "漢"));
    return keys;
  }

  @Test
  void every_key_in_every_state_gives_a_state_that_can_be_drawn() {
    Set<State> seen = new HashSet<>();
    for (State state : ViewTest.states().values()) {
      for (Layer layer : layers()) {
        for (String key : keys()) {
          Step step = press(state.withLayer(layer), key);
          if (seen.add(step.state())) {
            Frame frame = View.render(step.state(), new Size(12, 50));
            assertThat(frame.lines()).as(key).hasSize(12);
          }
        }
      }
    }
  }

  @Test
  void every_key_of_the_table_does_something() {
    for (Action action : Action.values()) {
      for (String key : action.keys()) {
        Step step = press(PLAYING, key);
        boolean changes = !step.effects().isEmpty() || !step.state().equals(PLAYING);
        assertThat(changes).as(key).isTrue();
      }
    }
  }

  @Test
  void no_key_stands_twice_in_the_table() {
    List<String> keys = Arrays.stream(Action.values()).flatMap(a -> a.keys().stream()).toList();
    assertThat(keys).doesNotHaveDuplicates();
  }

  @Test
  void every_kind_of_effect_has_a_key_or_follows_from_one() {
    Set<Class<?>> seen = new HashSet<>();
    for (State state :
        List.of(PLAYING, looping(), asked(), PLAYING.withStatus(Statuses.moving(Motion.PAUSED)))) {
      for (String key : keys()) {
        press(state, key).effects().forEach(effect -> seen.add(effect.getClass()));
      }
    }
    assertThat(seen).containsExactlyInAnyOrder(Effect.class.getPermittedSubclasses());
  }

  private static State asked() {
    return Update.apply(PLAYING, new Message.Question("How was it?")).state();
  }

  @Test
  void a_question_stays_until_a_key_from_1_to_5_answers_it() {
    State later = asked();
    for (int beat = 0; beat < 40; beat++) {
      later = Update.apply(later, new Message.Beat(Beats.of(beat))).state();
    }
    assertThat(later.words().notice()).isEqualTo("How was it?");
    Step answered = press(later, "4");
    assertThat(answered.effects()).containsExactly(new Effect.Grade(4));
    assertThat(answered.state().words().notice()).isEmpty();
    assertThat(press(answered.state(), "4").effects())
        .isNotEmpty()
        .noneMatch(Effect.Grade.class::isInstance);
  }

  @Test
  void every_kind_of_message_is_taken() {
    List<Message> messages =
        List.of(
            new Message.Stroke("d", 0),
            new Message.Pedal("cc 64", 0),
            new Message.Resized(new Size(3, 4)),
            new Message.Beat(Beats.of(5)),
            new Message.Playhead(Beats.of(5)),
            new Message.Changed(Statuses.moving(Motion.PAUSED)),
            new Message.Learned(PLAYING.facts()),
            new Message.Fault(Optional.empty()),
            new Message.Over(),
            new Message.Sounding(Set.of(62)),
            new Message.Recording(Optional.of("evening")),
            new Message.Verdict("held A, the 5, over the line", Optional.empty()),
            new Message.Question("How was it?"),
            new Message.Notice("Hello."));
    assertThat(messages.stream().<Class<?>>map(Object::getClass).toList())
        .containsExactlyInAnyOrder(Message.class.getPermittedSubclasses());
    messages.forEach(message -> assertThat(Update.apply(PLAYING, message)).isNotNull());
  }

  @Test
  void a_verdict_is_told_unless_the_player_hides_what_was_heard() {
    Message verdict = new Message.Verdict("G, the b3: on it", Optional.of(true));
    assertThat(Update.apply(PLAYING, verdict).state().words().notice())
        .isEqualTo("G, the b3: on it");
    State hidden = press(PLAYING, "v").state();
    assertThat(Update.apply(hidden, verdict).state()).isEqualTo(hidden);
  }

  private static State looping() {
    return PLAYING.withStatus(Statuses.looping(1, 4));
  }

  @Test
  void looping_takes_the_section_and_pressed_again_ends_it() {
    assertThat(press(PLAYING, "l").effects())
        .containsExactly(new Effect.Send(new Command.Loop(1, 8)));
    assertThat(press(looping(), "l").effects())
        .containsExactly(new Effect.Send(new Command.Unloop()));
  }

  @Test
  void a_loop_may_begin_and_end_with_any_bar() {
    State sixth = Examples.playing(6, "2");
    assertThat(press(sixth, "[").effects())
        .containsExactly(new Effect.Send(new Command.Loop(6, 16)));
    assertThat(press(sixth, "]").effects())
        .containsExactly(new Effect.Send(new Command.Loop(1, 6)));
    State third = Examples.playing(3, "1").withStatus(looping().status());
    assertThat(press(third, "[").effects())
        .containsExactly(new Effect.Send(new Command.Loop(3, 4)));
    assertThat(press(third, "]").effects())
        .containsExactly(new Effect.Send(new Command.Loop(1, 3)));
    State behind = Examples.playing(9, "1").withStatus(looping().status());
    assertThat(press(behind, "]").effects())
        .containsExactly(new Effect.Send(new Command.Loop(1, 9)));
    assertThat(press(behind, "[").effects())
        .containsExactly(new Effect.Send(new Command.Loop(9, 16)));
  }

  @Test
  void looping_the_crossing_takes_two_bars_on_either_side() {
    assertThat(press(PLAYING, "x").effects())
        .containsExactly(new Effect.Send(new Command.LoopCrossing(2, 2)));
  }

  @Test
  void sections_are_jumped_to_in_both_directions() {
    assertThat(press(PLAYING, "right").effects())
        .containsExactly(new Effect.Send(new Command.Jump(9)));
    assertThat(press(PLAYING, "left").effects())
        .containsExactly(new Effect.Send(new Command.Jump(1)));
    State second = Examples.playing(17, "1");
    assertThat(press(second, "left").effects())
        .containsExactly(new Effect.Send(new Command.Jump(9)));
    State later = Examples.playing(26, "1");
    assertThat(press(later, "right").effects())
        .containsExactly(new Effect.Send(new Command.Jump(33)));
  }

  @Test
  void a_tap_carries_when_it_was_struck() {
    Step step = Update.apply(PLAYING, new Message.Stroke("enter", 5));
    assertThat(step.effects()).containsExactly(new Effect.Send(new Command.Tap(5)));
  }

  @Test
  void the_hand_stays_where_the_shape_lies_and_pressed_again_is_free() {
    Step step = press(PLAYING, "t");
    int lowest =
        PLAYING.facts().fitAt(PLAYING.position()).shape().stream()
            .mapToInt(note -> note.dot().fret())
            .min()
            .orElseThrow();
    assertThat(step.effects()).containsExactly(new Effect.StayAround(Optional.of(lowest)));
    State staying = PLAYING.withFacts(Examples.stayingAround(lowest));
    assertThat(press(staying, "t").effects())
        .containsExactly(new Effect.StayAround(Optional.empty()));
    assertThat(Examples.picture(staying, 24, 100)).contains("position " + lowest);
  }

  @Test
  void a_level_that_is_moved_is_told() {
    State softer = Update.apply(PLAYING, new Message.Changed(Statuses.withEverything())).state();
    assertThat(softer.words().notice()).isEqualTo("Drums at 96.");
    State same = Update.apply(softer, new Message.Changed(softer.status())).state();
    assertThat(same.words()).isEqualTo(softer.words());
  }

  @Test
  void what_is_hidden_is_named_and_comes_back_with_one_key() {
    State hidden = press(press(PLAYING, "n").state(), "p").state();
    assertThat(Examples.picture(hidden, 24, 80)).contains("u shows phrases, neck");
    Step shown = press(hidden, "u");
    assertThat(shown.state().settings().hidden()).isEmpty();
    assertThat(shown.effects()).containsExactly(new Effect.Remember(shown.state().settings()));
    assertThat(Examples.picture(shown.state(), 24, 80)).doesNotContain("u shows");
  }

  @Test
  void a_pedal_is_bound_in_the_menu_and_does_its_action_from_then_on() {
    State menu = press(PLAYING, "tab").state();
    State waiting = press(menu, "=").state();
    Step bound = Update.apply(waiting, new Message.Pedal("cc 64", 0));
    assertThat(bound.effects()).hasOnlyElementsOfType(Effect.Remember.class);
    Step pressed = Update.apply(bound.state(), new Message.Pedal("cc 64", 0));
    assertThat(pressed.effects()).containsExactly(new Effect.Send(new Command.Pause()));
  }

  @Test
  void a_page_turners_key_can_be_bound_to_any_action() {
    ViewSettings settings = ViewSettings.USUAL.withBound("key page down", Action.PAUSE);
    Step step = press(PLAYING.withSettings(settings), "page down");
    assertThat(step.effects()).containsExactly(new Effect.Send(new Command.Pause()));
  }

  @Test
  void what_is_shown_is_remembered() {
    Step step = press(PLAYING, "n");
    assertThat(step.state().settings().shows(ViewSettings.Panel.NECK)).isFalse();
    assertThat(step.effects()).containsExactly(new Effect.Remember(step.state().settings()));
  }

  @Test
  void settings_survive_being_written_and_read() {
    ViewSettings settings =
        ViewSettings.USUAL
            .withFar(true)
            .withNoteNames(true)
            .withSwitched(ViewSettings.Panel.NECK)
            .withBound("pedal cc 64", Action.LOOP_CROSSING)
            .withBound("key :", Action.STOP);
    assertThat(ViewSettings.parse(settings.text())).isEqualTo(settings);
    assertThat(ViewSettings.parse("rubbish\nfar: yes\nkey b: nothing\n\0: \n").far()).isTrue();
  }

  @Test
  void a_notice_goes_after_some_beats() {
    State state = Update.apply(PLAYING, new Message.Notice("Hello.")).state();
    for (int i = 0; i < 12; i++) {
      assertThat(state.words().notice()).isEqualTo("Hello.");
      state = Update.apply(state, new Message.Beat(Beats.of(i))).state();
    }
    assertThat(state.words().notice()).isEmpty();
  }

  @Test
  void the_band_stands_still_before_the_player_goes_to_the_shell() {
    Step asked = press(PLAYING, "ctrl z");
    assertThat(asked.effects()).containsExactly(new Effect.Send(new Command.Pause()));
    Step louder = Update.apply(asked.state(), new Message.Changed(Statuses.moving(Motion.PLAYING)));
    assertThat(louder.effects()).isEmpty();
    Step still = Update.apply(louder.state(), new Message.Changed(Statuses.moving(Motion.PAUSED)));
    assertThat(still.effects()).containsExactly(new Effect.StepAside());
    assertThat(press(still.state(), "ctrl z").effects()).containsExactly(new Effect.StepAside());
    assertThat(
            Update.apply(still.state(), new Message.Changed(Statuses.moving(Motion.PAUSED)))
                .effects())
        .isEmpty();
  }

  @Test
  void whoever_plays_on_instead_stays() {
    State asked = press(PLAYING, "ctrl z").state();
    State stays = press(asked, "d").state();
    assertThat(Update.apply(stays, new Message.Changed(Statuses.moving(Motion.PAUSED))).effects())
        .isEmpty();
  }

  @Test
  void control_keys_keep_their_work_while_a_key_is_being_bound() {
    State binding = PLAYING.withLayer(new Layer.Bind(Action.DRUMS));
    assertThat(press(binding, "ctrl c").effects()).containsExactly(new Effect.Quit());
    assertThat(press(binding, "ctrl z").effects())
        .containsExactly(new Effect.Send(new Command.Pause()));
    assertThat(press(binding, "d").effects()).hasOnlyElementsOfType(Effect.Remember.class);
  }
}
