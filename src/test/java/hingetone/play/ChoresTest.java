package hingetone.play;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.play.Chores.Kind;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ChoresTest {
  private final List<Runnable> handedOver = new ArrayList<>();
  private final List<String> done = new ArrayList<>();
  private final Chores chores = new Chores(handedOver::add);

  private void work() {
    List<Runnable> all = List.copyOf(handedOver);
    handedOver.clear();
    all.forEach(Runnable::run);
  }

  @Test
  void of_each_kind_the_newest_that_waits_is_done_once() {
    for (int i = 1; i <= 1000; i++) {
      int number = i;
      chores.add(Kind.GROOVE, () -> done.add("groove " + number));
      chores.add(Kind.FACTS, () -> done.add("facts " + number));
    }
    assertThat(handedOver).hasSize(2);
    work();
    assertThat(done).containsExactly("groove 1000", "facts 1000");
  }

  @Test
  void what_comes_while_it_is_being_done_waits_for_its_turn() {
    chores.add(
        Kind.SETTINGS,
        () -> {
          done.add("first");
          chores.add(Kind.SETTINGS, () -> done.add("second"));
        });
    work();
    assertThat(done).containsExactly("first");
    work();
    assertThat(done).containsExactly("first", "second");
  }
}
