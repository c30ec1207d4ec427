package hingetone.time;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class BeatsTest {
  private static List<Beats> small() {
    List<Beats> all = new ArrayList<>();
    for (int n = -7; n <= 7; n++) {
      for (int d = 1; d <= 6; d++) {
        all.add(Beats.of(n, d));
      }
    }
    return all;
  }

  @Test
  void a_fraction_is_always_reduced_and_its_denominator_positive() {
    assertThat(Beats.of(6, 4)).isEqualTo(Beats.of(3, 2));
    assertThat(Beats.of(1, -2)).isEqualTo(Beats.of(-1, 2));
    assertThat(Beats.of(0, 7)).isEqualTo(Beats.ZERO);
  }

  @Test
  void addition_and_multiplication_obey_the_laws_of_fractions() {
    for (Beats a : small()) {
      for (Beats b : small()) {
        assertThat(a.plus(b)).isEqualTo(b.plus(a));
        assertThat(a.plus(b).minus(b)).isEqualTo(a);
        assertThat(a.times(b)).isEqualTo(b.times(a));
        if (!b.isZero()) {
          assertThat(a.times(b).dividedBy(b)).isEqualTo(a);
          assertThat(a.dividedBy(b).times(b)).isEqualTo(a);
        }
        assertThat(a.compareTo(b)).isEqualTo(Double.compare(a.toDouble(), b.toDouble()));
      }
    }
  }

  @Test
  void floor_fraction_and_modulo_also_hold_below_zero() {
    for (Beats a : small()) {
      assertThat(Beats.of(a.floor()).plus(a.fraction())).isEqualTo(a);
      assertThat(a.fraction().isNegative()).isFalse();
      assertThat(a.fraction().isBefore(Beats.ONE)).isTrue();
      assertThat(a.ceil()).isEqualTo(-a.negated().floor());
      Beats cycle = Beats.of(7, 2);
      assertThat(a.minus(a.modulo(cycle)).dividedBy(cycle).denominator()).isEqualTo(1);
      assertThat(a.modulo(cycle).isBefore(cycle)).isTrue();
    }
  }

  @Test
  void text_is_read_back_as_the_same_fraction() {
    for (Beats a : small()) {
      assertThat(Beats.parse(a.toString())).contains(a);
    }
    assertThat(Beats.of(5, 2)).hasToString("2+1/2");
    assertThat(Beats.parse("3/2")).contains(Beats.of(3, 2));
  }

  @Test
  void text_that_is_no_fraction_is_refused() {
    for (String text : List.of("", "1/0", "2+1", "a", "1.5", "1//2", "--1", "1/2/3", "+1")) {
      assertThat(Beats.parse(text)).as(text).isEmpty();
    }
  }

  @Test
  void units_are_rounded_once_half_up() {
    assertThat(Beats.of(1, 3).toUnits(960)).isEqualTo(320);
    assertThat(Beats.of(1, 7).toUnits(960)).isEqualTo(137);
    assertThat(Beats.of(1, 2).toUnits(1)).isEqualTo(1);
    assertThat(Beats.of(-1, 2).toUnits(1)).isZero();
  }

  @Test
  void an_overflow_fails_instead_of_wrapping() {
    Beats huge = Beats.of(Long.MAX_VALUE);
    assertThatThrownBy(() -> huge.plus(Beats.ONE)).isInstanceOf(ArithmeticException.class);
    assertThatThrownBy(() -> huge.times(2)).isInstanceOf(ArithmeticException.class);
    assertThatThrownBy(() -> Beats.of(Long.MIN_VALUE).negated())
        .isInstanceOf(ArithmeticException.class);
  }
}
