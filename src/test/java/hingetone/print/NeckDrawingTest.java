package hingetone.print;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.neck.Fretboard;
import hingetone.neck.Shape;
import hingetone.neck.Shapes;
import hingetone.neck.Tuning;
import hingetone.print.NeckDrawing.Look;
import hingetone.print.NeckPicture.Meaning;
import hingetone.theory.Chord;
import hingetone.theory.Scale;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class NeckDrawingTest {
  private static final Set<Integer> D_G_A = Set.of(2, 7, 9);

  @Test
  void the_highest_string_is_on_top_chord_tones_are_filled_common_tones_are_diamonds() {
    assertThat(drawn(2, false, new Look(true, 8)))
        .isEqualTo(
            """
            E  ───────┼──◆b3──┼───────┼──◇4───┼
            B  ───────┼──◆b7──┼───────┼──●1───┼
            G  ──◇4───┼───────┼──●5───┼───────┼
            D  ──●1───┼───────┼───────┼──◆b3──┼
            A  ──●5───┼───────┼───────┼──◆b7──┼
            E  ───────┼──◆b3──┼───────┼──◇4───┼
                  2       3       4       5
            """);
  }

  @Test
  void in_ascii_and_narrow_it_says_the_same() {
    assertThat(drawn(2, false, new Look(false, 6)))
        .isEqualTo(
            """
            E  -----|-Xb3-|-----|-x4--|
            B  -----|-Xb7-|-----|-@1--|
            G  -x4--|-----|-@5--|-----|
            D  -@1--|-----|-----|-Xb3-|
            A  -@5--|-----|-----|-Xb7-|
            E  -----|-Xb3-|-----|-x4--|
                 2     3     4     5
            """);
  }

  @Test
  void a_third_that_is_curled_up_towards_the_chords_has_an_arrow() {
    Fretboard neck = Fretboard.of(Tuning.STANDARD, 0);
    Shape shape = Shapes.of(neck, Scale.parse("E minor pentatonic").orElseThrow()).get(1);
    for (String chord : List.of("E7", "Em7", "E7#9")) {
      String drawn =
          lines(NeckPicture.of(neck, shape, Chord.parse(chord), Set.of()), new Look(true, 8));
      assertThat(drawn.contains("○b3↑")).as(chord).isEqualTo(chord.equals("E7"));
    }
    assertThat(NeckDrawing.legend(false, Set.of(Meaning.CURLED))).endsWith("  ^ curl it up");
  }

  @Test
  void for_a_left_handed_player_the_nut_is_on_the_right() {
    assertThat(drawn(0, true, new Look(true, 6)))
        .isEqualTo(
            """
            ┼─◆b3─┼─────┼─────║ ●1    E
            ┼─◆b7─┼─────┼─────║ ●5    B
            ┼─────┼─◇4──┼─────║ ◆b3   G
            ┼─────┼─●1──┼─────║ ◆b7   D
            ┼─────┼─●5──┼─────║ ◇4    A
            ┼─◆b3─┼─────┼─────║ ●1    E
               3     2     1     0
            """);
  }

  @Test
  void what_comes_with_the_next_key_is_a_triangle() {
    NeckPicture picture =
        new NeckPicture(
            List.of("E"),
            false,
            6,
            8,
            List.of(
                new NeckPicture.Mark(
                    1, 6, "1", Set.of(Meaning.OF_CHORD, Meaning.COMES), NeckPicture.Weight.FAINT),
                new NeckPicture.Mark(1, 8, "2", Set.of(Meaning.COMES), NeckPicture.Weight.STRONG)));
    assertThat(NeckDrawing.lines(picture, new Look(true, 5)).get(0).plain())
        .isEqualTo("E  ─▲1─┼────┼─△2─┼");
  }

  @Test
  void a_long_neck_has_numbers_at_the_inlays_only() {
    NeckPicture picture = new NeckPicture(List.of("E"), false, 2, 12, List.of());
    assertThat(NeckDrawing.lines(picture, new Look(true, 4)).get(1).plain())
        .isEqualTo("    2   3       5       7       9          12");
  }

  @Test
  void no_line_is_wider_than_its_frets_and_colour_adds_no_text() {
    for (int cell : List.of(8, 6, 4)) {
      Look look = new Look(true, cell);
      NeckPicture picture = picture(2, false);
      int width = NeckDrawing.labelWidth() + (picture.high() - picture.low() + 1) * cell;
      for (InkedLine line : NeckDrawing.lines(picture, look)) {
        assertThat(line.plain().length()).isLessThanOrEqualTo(width);
        String withoutInk = line.onTerminal().replaceAll("\u001b\\[[0-9;]*m", "");
        assertThat(withoutInk.stripTrailing()).isEqualTo(line.plain());
      }
    }
  }

  private static String drawn(int low, boolean leftHanded, Look look) {
    return lines(picture(low, leftHanded), look);
  }

  private static String lines(NeckPicture picture, Look look) {
    return NeckDrawing.lines(picture, look).stream()
        .map(line -> line.plain() + "\n")
        .collect(Collectors.joining());
  }

  private static NeckPicture picture(int low, boolean leftHanded) {
    Fretboard neck = new Fretboard(Tuning.STANDARD, 0, 22, leftHanded);
    Shape shape =
        Shapes.of(neck, Scale.parse("E minor pentatonic").orElseThrow()).stream()
            .filter(s -> s.low() == low)
            .findFirst()
            .orElseThrow();
    return NeckPicture.of(neck, shape, Chord.parse("Em7"), D_G_A);
  }
}
