package hingetone.backing;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.groove.BassStyle;
import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import hingetone.score.Note;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.text.reading.Source;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Where the groove's bass line meets a riff of the player's own. */
class BassBesideRiffsTest {
  private static final int OCTAVE = 12;

  static Stream<Groove> grooves() {
    return Grooves.builtIn().all().stream();
  }

  /** A riff from low to high, in eighths, one bar of the meter. */
  private static String riff(Meter meter) {
    int eighths = (int) meter.barLength().times(2).floor();
    return Stream.of("G1", "Bb2", "D3", "F3")
            .map(note -> note + "i")
            .collect(Collectors.joining(" "))
        + " Ri".repeat(eighths - 5)
        + " Ab3i";
  }

  private static Backing backing(Groove groove, String form) {
    Meter meter = groove.meters().stream().findFirst().orElse(Meter.COMMON);
    String text =
        """
        groove: %s
        meter: %s
        form: %s
        sections:
          plain:
            key: Eb minor
            bars: |
              | Ebm7 | Abm7 | E7 | Bb7 |
          own:
            key: G minor
            bars: |
              | Gm7 | Cm7 |
            riff: {bass: %s}
        """
            .formatted(groove.name(), meter, form, riff(meter));
    Chart chart = ChartReader.read(new Source("riff", text)).value().orElseThrow();
    return Backing.of(chart, Grooves.builtIn()).exact();
  }

  private static boolean isOwn(Backing backing, Note note) {
    Beats inLap = note.onset().modulo(backing.form().length());
    return backing.form().bar(backing.form().position(inLap).bar()).section().name().equals("own");
  }

  /** The bass of four laps and the ending, one after the other. */
  private static List<Note> bass(Backing backing) {
    List<Score> laps = new ArrayList<>();
    for (int lap = 1; lap < 4; lap++) {
      laps.add(backing.lap(lap));
    }
    laps.add(backing.lastLap(4));
    return Score.inTurn(laps).part(Role.BASS).orElseThrow().notes();
  }

  @ParameterizedTest
  @MethodSource("grooves")
  void the_line_arrives_and_goes_on_within_reach(Groove groove) {
    BassStyle style = groove.bass();
    for (String form : List.of("plain own", "own plain", "plain own plain", "own plain own")) {
      Backing backing = backing(groove, form);
      List<Note> bass = bass(backing);
      int seams = 0;
      for (int i = 1; i < bass.size(); i++) {
        Note before = bass.get(i - 1);
        Note now = bass.get(i);
        int size = Math.abs(now.key() - before.key());
        String place = form + " at " + now.onset();
        boolean ending = now.onset().equals(backing.form().length().times(4));
        if (!isOwn(backing, now)) {
          assertThat(now.key()).as(place).isBetween(style.lowest(), style.highest());
        }
        if (ending || isOwn(backing, before) != isOwn(backing, now)) {
          seams++;
          assertThat(size).as(place).isLessThanOrEqualTo(OCTAVE);
        }
        if (!ending && !isOwn(backing, before) && isOwn(backing, now)) {
          assertThat(size).as("into the riff, " + place).isIn(1, 2, 5, 7);
        }
      }
      assertThat(seams).isGreaterThanOrEqualTo(7);
    }
  }

  @Test
  void the_riff_itself_is_played_as_written() {
    Groove groove = Grooves.builtIn().read("gravel-road").value().orElseThrow();
    List<Note> bass = backing(groove, "own").lap(1).part(Role.BASS).orElseThrow().notes();
    assertThat(bass).extracting(Note::key).startsWith(31, 46, 50, 53, 56, 31);
  }
}
