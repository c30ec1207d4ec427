package hingetone.print;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.neck.Fretboard;
import hingetone.neck.Shape;
import hingetone.neck.Shapes;
import hingetone.neck.Tuning;
import hingetone.print.NeckDrawing.Look;
import hingetone.theory.Chord;
import hingetone.theory.Scale;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class NeckDrawingTest {
  private static final Set<Integer> A_D_E = Set.of(9, 2, 4);

  @Test
  void the_highest_string_is_on_top_chord_tones_in_brackets_common_tones_starred() {
    assertThat(drawn(7, false, new Look(true, true)))
        .isEqualTo(
            """
                   7       8       9       10
            E  ┊───────│─[b3]──│───────│─(4)*──│
            B  ┊───────│─[b7]──│───────│─[1]*──│
            G  ┊─(4)*──│───────│─[5]*──│───────│
            D  ┊─[1]*──│───────│───────│─[b3]──│
            A  ┊─[5]*──│───────│───────│─[b7]──│
            E  ┊───────│─[b3]──│───────│─(4)*──│
            """);
  }

  @Test
  void in_ascii_and_narrow_it_says_the_same() {
    assertThat(drawn(7, false, new Look(false, false)))
        .isEqualTo(
            """
                   7      8      9     10
            E  :------| [b3] |------| (4)* |
            B  :------| [b7] |------| [1]* |
            G  : (4)* |------| [5]* |------|
            D  : [1]* |------|------| [b3] |
            A  : [5]* |------|------| [b7] |
            E  :------| [b3] |------| (4)* |
            """);
  }

  @Test
  void for_a_left_handed_player_the_nut_is_on_the_right() {
    List<String> lines = drawn(0, true, new Look(true, true)).lines().toList();
    assertThat(lines.get(1)).endsWith("║ [5]*   E").startsWith("│");
    assertThat(lines.get(0).strip()).startsWith("3").endsWith("0");
  }

  @Test
  void no_line_is_wider_than_said_and_colour_adds_no_text() {
    for (boolean wide : List.of(true, false)) {
      Look look = new Look(true, wide);
      NeckPicture picture = picture(7, false);
      for (InkedLine line : NeckDrawing.lines(picture, look)) {
        assertThat(line.plain().length()).isLessThanOrEqualTo(NeckDrawing.width(picture, look));
        String withoutInk = line.onTerminal().replaceAll("\u001b\\[[0-9;]*m", "");
        assertThat(withoutInk.stripTrailing()).isEqualTo(line.plain());
      }
    }
  }

  private static String drawn(int low, boolean leftHanded, Look look) {
    return NeckDrawing.lines(picture(low, leftHanded), look).stream()
        .map(line -> line.plain() + "\n")
        .collect(Collectors.joining());
  }

  private static NeckPicture picture(int low, boolean leftHanded) {
    Fretboard neck = new Fretboard(Tuning.STANDARD, 0, 22, leftHanded);
    Shape shape =
        Shapes.of(neck, Scale.parse("A minor pentatonic").orElseThrow()).stream()
            .filter(s -> s.low() == low)
            .findFirst()
            .orElseThrow();
    return NeckPicture.of(neck, shape, Chord.parse("Am7"), A_D_E);
  }
}
