package hingetone.screen.view;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.neck.Fretboard;
import hingetone.plan.Plan;
import hingetone.screen.Action;
import hingetone.screen.ChartFacts;
import hingetone.screen.Examples;
import hingetone.screen.FactFinder;
import hingetone.screen.Message;
import hingetone.screen.State;
import hingetone.screen.State.Layer;
import hingetone.screen.State.Terminal;
import hingetone.screen.State.Words;
import hingetone.screen.Statuses;
import hingetone.screen.Update;
import hingetone.screen.ViewSettings;
import hingetone.screen.picture.Frame;
import hingetone.screen.picture.Size;
import hingetone.sequencer.Status;
import hingetone.sequencer.Status.Motion;
import hingetone.text.DisplayWidth;
import hingetone.text.Printable;
import hingetone.time.Beats;
import hingetone.time.Tempo;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

public class ViewTest {
  private static final Path PICTURES = Path.of("src/test/resources/screen");

  /** Every layout and state that has a picture in the resources, which {@link Gallery} writes. */
  public static Map<String, State> states() {
    Map<String, State> states = new LinkedHashMap<>();
    State start = Examples.playing(1, "1");
    State before = Examples.playing(7, "3");
    states.put("counting-in-80x24", Examples.playing(0, "2").withSize(new Size(24, 80)));
    states.put("playing-80x24", Examples.playing(2, "3").withSize(new Size(24, 80)));
    states.put("playing-100x30", Examples.playing(2, "3").withSize(new Size(30, 100)));
    states.put("playing-120x40", Examples.playing(2, "3").withSize(new Size(40, 120)));
    states.put("before-the-crossing-80x24", before.withSize(new Size(24, 80)));
    states.put("before-the-crossing-120x40", before.withSize(new Size(40, 120)));
    states.put("at-the-crossing-80x24", Examples.playing(9, "1").withSize(new Size(24, 80)));
    states.put("after-the-crossing-80x24", Examples.playing(10, "1").withSize(new Size(24, 80)));
    states.put("before-the-seam-80x24", Examples.playing(16, "4").withSize(new Size(24, 80)));
    states.put("very-wide-240x20", before.withSize(new Size(20, 240)));
    states.put("narrow-36x20", before.withSize(new Size(20, 36)));
    states.put("small-40x6", before.withSize(new Size(6, 40)));
    states.put("two-rows-40x2", before.withSize(new Size(2, 40)));
    states.put("one-row-24x1", before.withSize(new Size(1, 24)));
    states.put("too-small-3x1", before.withSize(new Size(1, 3)));
    State paused = before.withStatus(Statuses.moving(Motion.PAUSED));
    states.put("paused-80x24", paused.withSize(new Size(24, 80)));
    states.put("stopped-80x24", Examples.stopped());
    State far = before.withSettings(ViewSettings.USUAL.withFar(true));
    states.put("far-80x24", far.withSize(new Size(24, 80)));
    states.put("far-120x40", far.withSize(new Size(40, 120)));
    states.put("help-80x24", start.withLayer(new Layer.Help(0)).withSize(new Size(24, 80)));
    states.put("help-120x40", start.withLayer(new Layer.Help(0)).withSize(new Size(40, 120)));
    states.put("menu-80x24", start.withLayer(new Layer.Menu(4)).withSize(new Size(24, 80)));
    State lost = broken(start, "MIDI port 2 is gone: plug it in again.");
    states.put("device-lost-80x24", lost.withSize(new Size(24, 80)));
    State loop = start.withStatus(Statuses.looping(1, 4));
    states.put("looping-80x24", loop.withSize(new Size(24, 80)));
    State lastLap = Examples.playing(15, "2");
    states.put(
        "last-lap-80x24", lastLap.withStatus(Statuses.ending(1, 16, 1)).withSize(new Size(24, 80)));
    State ending = Examples.playing(17, "1");
    states.put(
        "ending-80x24", ending.withStatus(Statuses.ending(1, 16, 1)).withSize(new Size(24, 80)));
    State ascii = ascii(before);
    states.put("ascii-80x24", ascii.withSize(new Size(24, 80)));
    State bare = start;
    for (ViewSettings.Panel panel : ViewSettings.Panel.values()) {
      bare = bare.withSettings(bare.settings().withSwitched(panel));
    }
    states.put("all-panels-off-80x24", bare.withSize(new Size(24, 80)));
    return states;
  }

  static State ascii(State s) {
    return s.withTerminal(new Terminal(s.size(), true));
  }

  private static State broken(State s, String fault) {
    return s.withWords(new Words("", 0, Optional.of(fault), false));
  }

  static List<String> names() {
    return new ArrayList<>(states().keySet());
  }

  @ParameterizedTest
  @MethodSource("names")
  void each_state_looks_as_its_picture_says(String name) throws IOException {
    State state = states().get(name);
    String expected = Files.readString(PICTURES.resolve(name + ".txt"));
    assertThat(View.render(state, state.size()).text()).isEqualTo(expected);
  }

  @Test
  void every_picture_belongs_to_a_state() throws IOException {
    try (var files = Files.list(PICTURES)) {
      assertThat(files.map(f -> f.getFileName().toString().replace(".txt", "")))
          .containsExactlyInAnyOrderElementsOf(names());
    }
  }

  @Test
  void one_row_tells_chord_next_chord_and_count() {
    String row = Examples.picture(Examples.playing(1, "1"), 1, 20);
    assertThat(row).startsWith("Em7").contains("A7").contains("6");
  }

  @Test
  void a_frame_has_exactly_the_rows_and_columns_of_the_screen() {
    for (State state : states().values()) {
      for (Size size : List.of(new Size(7, 61), new Size(24, 80), new Size(50, 200))) {
        Frame frame = View.render(state, size);
        assertThat(frame.lines()).hasSize(size.rows());
        assertThat(frame.lines()).allMatch(line -> line.text().length() == size.columns());
      }
    }
  }

  @Test
  void no_size_up_to_130_by_45_fails() {
    for (State state : states().values()) {
      for (int rows = 0; rows <= 45; rows += 1 + rows / 3) {
        for (int columns = 0; columns <= 130; columns += 1 + columns / 4) {
          assertThat(View.render(state, new Size(rows, columns)).lines()).hasSize(rows);
        }
      }
    }
    for (State state : List.of(Examples.playing(7, "3"), ascii(Examples.playing(0, "1")))) {
      for (int rows = 0; rows <= 45; rows++) {
        for (int columns = rows % 4; columns <= 130; columns += 4) {
          assertThat(View.render(state, new Size(rows, columns)).lines()).hasSize(rows);
        }
      }
    }
  }

  @Test
  void no_width_up_to_400_fails_at_five_heights() {
    State state = Examples.playing(8, "4+1/2");
    for (int rows : List.of(1, 6, 24, 40, 80)) {
      for (int columns = rows % 3; columns <= 400; columns += 3) {
        assertThat(View.render(state, new Size(rows, columns)).lines()).hasSize(rows);
      }
    }
  }

  @Test
  void ascii_pictures_hold_nothing_else() {
    for (State state : states().values()) {
      String text = View.render(ascii(state), state.size()).text();
      assertThat(text.chars().allMatch(c -> c == '\n' || c >= ' ' && c <= '~')).isTrue();
    }
  }

  @Test
  void what_is_told_can_be_read_to_its_end_at_every_usual_size_and_in_the_far_view() {
    String words =
        "No sound output was found: switch one on (on Linux PulseAudio or PipeWire must run), or"
            + " choose a MIDI port with --out; hingetone ports lists both.";
    State near = Update.apply(Examples.playing(7, "3"), new Message.Notice(words)).state();
    State far = near.withSettings(near.settings().withFar(true));
    State broken = broken(Examples.playing(7, "3"), words);
    for (State state : List.of(near, far, broken)) {
      for (int columns : List.of(40, 79, 80, 99, 100, 119, 120, 160)) {
        for (int rows : List.of(10, 12, 24, 30, 50)) {
          String picture = Examples.picture(state, rows, columns);
          assertThat(picture.replaceAll("\\s+", " ")).contains(words);
        }
      }
    }
  }

  @Test
  void words_that_do_not_fit_in_half_the_rows_end_with_dots_and_leave_the_chord() {
    State state =
        Update.apply(Examples.playing(1, "1"), new Message.Notice("word ".repeat(99))).state();
    String picture = Examples.picture(state, 4, 20);
    assertThat(picture).contains("Em7").contains("word ...");
    assertThat(Examples.picture(state, 1, 20)).contains("Em7").doesNotContain("word");
  }

  @Test
  void the_help_cuts_no_words() {
    State help = Examples.playing(1, "1").withLayer(new Layer.Help(0));
    String picture = Examples.picture(help, 40, 120);
    for (Action action : Action.values()) {
      assertThat(picture).contains(" " + action.words());
    }
  }

  @Test
  void a_bar_is_as_wide_as_it_is_long() {
    State state = Examples.playing(1, "1");
    BarRuler ruler = BarRuler.of(state, new Outlook(state), 80, 0);
    for (int i = 1; i < ruler.size(); i++) {
      int width = ruler.end(i) - ruler.start(i);
      assertThat(width).isBetween(ruler.end(0) - ruler.start(0) - 1, ruler.end(0) + 1);
    }
  }

  @Test
  void a_form_of_one_bar_has_one_lap_and_an_ending_of_its_own() {
    Chart chart = Examples.chart("sections: {one: {key: D minor, bars: '| Dm7 |'}}");
    Form form = Form.of(chart);
    Fretboard board = Fretboard.of(chart.tuning(), chart.capo());
    ChartFacts facts = FactFinder.sketch("", "", board, Plan.of(chart, form));
    Terminal terminal = new Terminal(new Size(24, 80), false);
    State start = State.of(facts, Statuses.ending(1, 1, 1), ViewSettings.USUAL, terminal);
    State first = Update.apply(start, new Message.Beat(Beats.ONE)).state();
    assertThat(Examples.picture(first, 24, 80)).contains("lap 1 of 1");
    State last = Update.apply(start, new Message.Beat(Beats.of(5))).state();
    assertThat(Examples.picture(last, 24, 80)).contains("ending").doesNotContain("lap");
  }

  @Test
  void texts_of_others_command_no_terminal_and_every_row_keeps_its_width() {
    Chart chart =
        Examples.chart(
            """
            title: "\\e]0;X\\a\\u202e\\u009b2J"
            sections:
              "low\\e[2J\\u2066": {key: D minor, bars: '| Dm7 |'}
            """);
    Form form = Form.of(chart);
    Fretboard board = Fretboard.of(chart.tuning(), chart.capo());
    ChartFacts facts = FactFinder.sketch(chart.title(), "a\u001bb", board, Plan.of(chart, form));
    Size size = new Size(24, 80);
    State state =
        State.of(
            facts, Status.atRest(Tempo.of(100), 60), ViewSettings.USUAL, new Terminal(size, false));

    for (State shown :
        List.of(
            state, broken(state, "\u009b2J"), state.withStatus(Statuses.moving(Motion.PLAYING)))) {
      Frame frame = View.render(shown, size);
      assertThat(frame.text()).contains("low·[2J·").contains("·]0;X···2J");
      assertThat(frame.text().codePoints().filter(c -> c != '\n')).allMatch(Printable::isPrintable);
      assertThat(frame.lines()).allMatch(line -> DisplayWidth.of(line.text()) == 80);
    }
  }
}
