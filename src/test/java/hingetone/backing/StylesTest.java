package hingetone.backing;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every sentence of {@code src/docs/styles.md} is borne out by what the band plays. */
class StylesTest {
  static Stream<Groove> grooves() {
    return Grooves.builtIn().all().stream();
  }

  @ParameterizedTest
  @MethodSource("grooves")
  void what_is_said_of_a_style_is_played(Groove groove) {
    List<Styles.Claim> said =
        Styles.CLAIMS.stream().filter(claim -> claim.groove().equals(groove.name())).toList();
    StylePlay play = StylePlay.of(groove);
    assertThat(play.bars()).hasSizeGreaterThan(40);
    assertThat(said).isNotEmpty().allMatch(claim -> claim.holds().test(play));
  }

  @Test
  void the_page_says_what_is_checked() throws IOException {
    String page = Files.readString(Styles.FILE);
    assertThat(page).isEqualTo(Styles.withTable(page));
  }

  @Test
  void what_is_said_of_one_style_is_not_true_of_another() {
    StylePlay rock = StylePlay.of(Grooves.builtIn().read("gravel-road").value().orElseThrow());
    assertThat(Styles.CLAIMS)
        .filteredOn(claim -> claim.groove().equals("salt-hammock"))
        .noneMatch(claim -> claim.holds().test(rock));
  }
}
