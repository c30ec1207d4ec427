package hingetone.groove;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.score.Fullness;
import hingetone.text.reading.Diagnostic;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class GroovesTest {
  @Test
  void every_file_in_the_folder_is_built_in_and_is_read_without_a_problem() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("grooves"))) {
      assertThat(files.map(f -> f.getFileName().toString().replace(".yaml", "")))
          .containsExactlyInAnyOrderElementsOf(Grooves.BUILT_IN);
    }
    for (String name : Grooves.BUILT_IN) {
      Reading<Groove> reading = Grooves.builtIn().read(name);
      assertThat(reading.problems()).extracting(Diagnostic::report).as(name).isEmpty();
      assertThat(reading.value().orElseThrow().about()).isNotBlank();
    }
  }

  @Test
  void every_groove_has_patterns_and_fills_of_each_size_for_each_of_its_meters() {
    for (Groove groove : Grooves.builtIn().all()) {
      for (Meter meter : groove.meters()) {
        assertThat(groove.drums().patterns()).anyMatch(p -> p.use().fits(meter));
        assertThat(groove.bass().patterns()).anyMatch(p -> p.use().fits(meter));
        assertThat(groove.chords().patterns()).anyMatch(p -> p.use().fits(meter));
        for (Fill.Size size : Fill.Size.values()) {
          assertThat(groove.drums().fills())
              .as(groove.name() + " " + size)
              .filteredOn(f -> f.size() == size && f.use().fits(meter))
              .hasSizeGreaterThanOrEqualTo(2);
        }
      }
    }
  }

  @Test
  void every_groove_has_patterns_of_its_own_for_a_light_and_a_full_band() {
    for (Groove groove : Grooves.builtIn().all()) {
      List<List<? extends Pattern>> players =
          List.of(groove.drums().patterns(), groove.bass().patterns(), groove.chords().patterns());
      List<Meter> meters = groove.meters().isEmpty() ? List.of(Meter.COMMON) : groove.meters();
      for (Meter meter : meters) {
        for (Fullness band : List.of(Fullness.LIGHT, Fullness.FULL)) {
          for (List<? extends Pattern> patterns : players) {
            assertThat(patterns)
                .as(groove.name() + " " + band)
                .filteredOn(p -> p.use().isMeantFor(band) && p.use().fits(meter))
                .hasSizeGreaterThanOrEqualTo(2);
          }
        }
      }
    }
  }

  @Test
  void a_groove_of_the_users_folder_overrides_and_adds(@TempDir Path folder) throws IOException {
    String text = Files.readString(Path.of("grooves/gravel-road.yaml"));
    Files.writeString(folder.resolve("plain.yaml"), text);
    Files.writeString(folder.resolve("mine.yaml"), text);
    Grooves grooves = Grooves.builtIn().withFolder(folder);
    assertThat(grooves.names()).contains("mine", "gravel-road");
    assertThat(grooves.read("plain").value().orElseThrow().about())
        .isEqualTo("straight driving rock");
  }

  @Test
  void swing_puts_the_off_beat_where_the_percentage_says() {
    Feel feel = Feel.STRAIGHT.withPercent(62);
    assertThat(feel.place(Beats.of(1, 2), Meter.COMMON)).isEqualTo(Beats.of(62, 100));
    assertThat(feel.place(Beats.of(7, 2), Meter.COMMON)).isEqualTo(Beats.of(362, 100));
    assertThat(feel.place(Beats.of(1), Meter.COMMON)).isEqualTo(Beats.ONE);
    assertThat(feel.place(Beats.of(1, 3), Meter.COMMON)).isEqualTo(Beats.of(1, 3));
    assertThat(feel.place(Beats.of(1, 2), Meter.of(7, 8))).isEqualTo(Beats.of(1, 2));
  }

  @Test
  void a_wrong_sign_and_an_unknown_instrument_are_reported_where_they_stand() {
    String text =
        """
        meter: 4/4
        drums:
          patterns:
            - lanes:
                acoustic snar: x...
                bass drum 1: x.q.
        bass: {patterns: [{line: 1---}]}
        chords: {patterns: [{line: x---}]}
        """;
    List<Diagnostic> problems = GrooveReader.read(new Source("g", text), "g").problems();
    assertThat(problems).hasSize(2);
    assertThat(problems.get(0).suggestion()).hasValue("acoustic snare");
    assertThat(problems.get(1).line()).isEqualTo(6);
    assertThat(problems.get(1).column()).isEqualTo(24);
  }
}
