package hingetone.play;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hingetone.backing.Backing;
import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.groove.Grooves;
import hingetone.journal.PracticeLog;
import hingetone.midi.Received;
import hingetone.output.CommandFailure;
import hingetone.plan.ExampleChoice;
import hingetone.sequencer.PlaySetup;
import hingetone.take.TakeFiles;
import hingetone.text.reading.Source;
import hingetone.transport.Transport;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Whole performances in lines of text, on a clock without sound. */
@Timeout(30)
class PerformanceTest {
  private static final String CHART =
      """
      title: Two doors
      tempo: 400
      sections:
        one: {key: E minor, bars: '| Em7 | D7 |', phrases: 'statement 2'}
        two: {key: G minor, bars: '| Gm7 | C7 |', phrases: 'reply 2'}
      """;

  @TempDir Path folder;

  private final StringWriter text = new StringWriter();
  private final Chart chart = ChartReader.read(new Source("", CHART)).value().orElseThrow();

  private Performance performance(
      CompletableFuture<Arrangement.Music> music, Performance.Instrument pedals) {
    return new Performance(
        Arrangement.of(chart, false, "plain", music, Optional.empty()),
        Optional.empty(),
        (laps, listener, say) -> {
          say.accept("No sound here.");
          return Transport.onSilentClock(laps, PlaySetup.USUAL.withLaps(1).withEnding(1), listener);
        },
        new Performance.Player(
            pedals,
            new KeptSettings(folder),
            new Performance.Takes(
                new TakeFiles(folder.resolve("takes")),
                "",
                0,
                Optional.empty(),
                new PracticeLog(folder.resolve("log")))),
        Optional.empty());
  }

  private CompletableFuture<Arrangement.Music> band() {
    Backing backing = Backing.of(chart, Grooves.builtIn());
    return CompletableFuture.completedFuture(
        new Arrangement.Music(
            "plain", (shown, from, position) -> lap -> backing.lapOf(lap, 1), Optional::empty));
  }

  private List<String> lines() {
    return text.toString().lines().toList();
  }

  @Test
  void a_lap_is_told_from_the_count_in_to_the_ending() {
    performance(band(), (player, events) -> () -> {}).inLines(new PrintWriter(text), false);
    assertThat(lines())
        .contains("No sound here.", "Playing.")
        .containsSubsequence(
            "Count-in 1.",
            "Count-in 4.",
            "Lap 1 of 1, section one in E minor, Em7.",
            "Next D7.",
            "Last bar before G minor.",
            "Lap 1 of 1, section two in G minor, Gm7.",
            "Next C7.",
            "Ending, Em7.");
  }

  @Test
  void a_pedal_is_a_key_and_the_last_thing_is_that_it_is_let_go() throws Exception {
    StringBuilder letGo = new StringBuilder();
    Files.writeString(folder.resolve("screen"), "pedal cc 80: quit\n");
    Performance.Instrument pedals =
        (player, events) -> {
          player.accept(new Received(0, 0xB0, 0, 80, 127));
          return () -> letGo.append("let go");
        };
    performance(band(), pedals).inLines(new PrintWriter(text), false);
    assertThat(letGo).hasToString("let go");
    assertThat(lines()).noneMatch(line -> line.startsWith("Ending"));
  }

  @Test
  void the_examples_stay_in_the_position_that_the_screen_shows() throws Exception {
    List<Optional<Integer>> asked = new CopyOnWriteArrayList<>();
    Backing backing = Backing.of(chart, Grooves.builtIn());
    Arrangement.Laps laps =
        (shown, from, position) -> {
          asked.add(position);
          return lap -> backing.lapOf(lap, 1);
        };
    Arrangement.Music music = new Arrangement.Music("plain", laps, Optional::empty);
    Arrangement arrangement =
        Arrangement.of(
            chart,
            false,
            "plain",
            CompletableFuture.completedFuture(music),
            Optional.of(ExampleChoice.ALL));
    Arrangement staying = arrangement.at(Optional.of(9));
    staying.laps();
    arrangement.laps();
    assertThat(asked).containsExactly(Optional.of(9), Optional.empty());
    assertThat(staying.facts(3).position()).contains(9);
    assertThat(staying.at(Optional.empty()).facts(0).fits())
        .isEqualTo(arrangement.facts(0).fits())
        .isNotEqualTo(staying.facts(0).fits());
  }

  @Test
  void a_band_that_cannot_be_made_ends_it_with_the_reason() {
    CompletableFuture<Arrangement.Music> none =
        CompletableFuture.failedFuture(CommandFailure.couldNot("There is no such groove."));
    Performance performance = performance(none, (player, events) -> () -> {});
    assertThatThrownBy(() -> performance.inLines(new PrintWriter(text), false))
        .isInstanceOf(CommandFailure.class)
        .hasMessage("There is no such groove.");
  }
}
