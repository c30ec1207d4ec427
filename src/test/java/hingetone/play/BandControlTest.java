package hingetone.play;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.plan.ExampleChoice;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class BandControlTest {
  @Test
  void the_phrases_heard_go_round() {
    Optional<ExampleChoice> none = Optional.empty();
    Optional<ExampleChoice> statements = BandControl.next(none);
    Optional<ExampleChoice> all = BandControl.next(statements);
    assertThat(statements).contains(ExampleChoice.STATEMENTS);
    assertThat(all).contains(ExampleChoice.ALL);
    assertThat(BandControl.next(all)).contains(ExampleChoice.CROSSINGS);
    assertThat(BandControl.next(Optional.of(ExampleChoice.CROSSINGS))).isEmpty();
    assertThat(BandControl.next(Optional.of(ExampleChoice.NEXT_CROSSING)))
        .contains(ExampleChoice.STATEMENTS);
  }
}
