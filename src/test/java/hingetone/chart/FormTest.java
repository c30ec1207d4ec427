package hingetone.chart;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.text.reading.Source;
import hingetone.time.Beats;
import hingetone.time.Position;
import org.junit.jupiter.api.Test;

class FormTest {
  /** Two bars of 4/4, three of 7/8, one of 12/8: 8 + 21/2 + 6 quarters. */
  private static final Form FORM =
      Form.of(
          ChartReader.read(
                  new Source(
                      "mixed.yaml",
                      """
                      sections:
                        a:
                          key: C minor
                          bars: |
                            | Cm7 | F7 |
                        b:
                          key: Db major
                          meter: 7/8
                          bars: |
                            | Db | Gb | Ab7 |
                        c:
                          key: Eb minor
                          meter: 12/8
                          bars: |
                            | Ebm7 |
                      """))
              .value()
              .orElseThrow());

  @Test
  void bars_are_numbered_through_the_form_and_know_their_section() {
    assertThat(FORM.bars()).extracting(Form.Bar::number).containsExactly(1, 2, 3, 4, 5, 6);
    assertThat(FORM.bars())
        .extracting(b -> b.section().name())
        .containsExactly("a", "a", "b", "b", "b", "c");
    assertThat(FORM.bars()).extracting(Form.Bar::inSection).containsExactly(1, 2, 1, 2, 3, 1);
    assertThat(FORM.bars()).extracting(Form.Bar::place).containsExactly(0, 0, 1, 1, 1, 2);
    assertThat(FORM.length()).isEqualTo(Beats.of(49, 2));
    assertThat(FORM.bar(5).isLastOfSection()).isTrue();
    assertThat(FORM.bar(6).isFirstOfSection()).isTrue();
  }

  @Test
  void positions_and_quarters_are_each_others_inverse_through_three_laps_and_the_count_in() {
    for (int bar = -2; bar <= 18; bar++) {
      int beats = FORM.bar(bar).meter().beatsPerBar();
      for (int step = 0; step < 6 * beats; step++) {
        Position position = new Position(bar, Beats.ONE.plus(Beats.of(step, 6)));
        Beats quarters = FORM.quarters(position);
        assertThat(FORM.position(quarters)).isEqualTo(position);
      }
    }
  }

  @Test
  void bars_count_on_through_the_laps() {
    assertThat(FORM.startOf(1)).isEqualTo(Beats.ZERO);
    assertThat(FORM.startOf(3)).isEqualTo(Beats.of(8));
    assertThat(FORM.startOf(4)).isEqualTo(Beats.of(23, 2));
    assertThat(FORM.startOf(7)).isEqualTo(FORM.length());
    assertThat(FORM.startOf(8)).isEqualTo(FORM.length().plus(Beats.of(4)));
    assertThat(FORM.lapOf(6)).isEqualTo(1);
    assertThat(FORM.lapOf(7)).isEqualTo(2);
    assertThat(FORM.bar(9)).isEqualTo(FORM.bar(3));
  }

  @Test
  void bars_before_bar_one_have_its_meter_and_belong_to_no_lap() {
    assertThat(FORM.startOf(0)).isEqualTo(Beats.of(-4));
    assertThat(FORM.position(Beats.of(-1, 2)))
        .isEqualTo(new Position(0, Beats.parse("4+1/2").orElseThrow()));
    assertThat(FORM.lapOf(0)).isZero();
    assertThat(FORM.lapOf(-3)).isZero();
  }

  @Test
  void moving_by_quarters_goes_exactly_over_a_change_of_meter() {
    Position before = Position.of(2, 4);
    assertThat(FORM.plus(before, Beats.of(3, 2))).isEqualTo(Position.of(3, 2));
    assertThat(FORM.plus(Position.of(3, 2), Beats.of(-3, 2))).isEqualTo(before);
    assertThat(FORM.plus(Position.of(6, 1), Beats.of(3, 2))).isEqualTo(Position.of(6, 2));
  }
}
