package hingetone.backing;

import hingetone.chart.Chart;
import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import hingetone.score.Fullness;
import hingetone.score.Note;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.text.Page;
import hingetone.time.Meter;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Measures how the players of a groove go together: bass and bass drum, what a light and a full lap
 * give, how far under the lead the chords stay, and where in time everybody lies.
 *
 * @param kickWithBass of a hundred strokes of the bass drum, those with which the bass strikes
 * @param bassWithKick of a hundred notes of the bass, those with which the bass drum strikes
 * @param light notes times velocity in a light lap, of a hundred in a normal one
 * @param full the same in a full lap
 * @param belowLead semitones from the highest note of the chords to the lead's register
 * @param snare how late the backbeat lies on average, in milliseconds
 * @param bass how late the bass lies
 * @param chords how late the chords lie, their strum included
 */
record TimeMeasure(
    double kickWithBass,
    double bassWithKick,
    double light,
    double full,
    int belowLead,
    double snare,
    double bass,
    double chords) {
  /** The lead plays from C5 upwards. */
  static final int LEAD_REGISTER = 72;

  private static final String HEAD =
      "| in time | with-kick | kick with bass | bass with kick | light | full | below the lead |"
          + " backbeat, ms | bass, ms | chords, ms |\n|---|---|---|---|---|---|---|---|---|---|\n";

  private static final String KICKS = "bass drum 1/acoustic bass drum";
  private static final Set<Integer> BACKBEAT = Set.of(37, 38, 40);

  static TimeMeasure of(Groove groove) {
    StylePlay play = StylePlay.of(groove, BandMeasure.LAPS);
    double normal = given(groove, Fullness.NORMAL);
    List<Score> laps =
        BandMeasure.CHARTS.stream()
            .map(chart -> backing(groove, chart))
            .flatMap(band -> IntStream.rangeClosed(1, BandMeasure.LAPS).mapToObj(band::lap))
            .toList();
    int highest = notes(laps, Role.CHORDS).mapToInt(Note::key).max().orElseThrow();
    return new TimeMeasure(
        play.together(KICKS, "bass"),
        play.together("bass", KICKS),
        100 * given(groove, Fullness.LIGHT) / normal,
        100 * given(groove, Fullness.FULL) / normal,
        LEAD_REGISTER - highest,
        millis(notes(laps, Role.DRUMS).filter(note -> BACKBEAT.contains(note.key()))),
        millis(notes(laps, Role.BASS)),
        millis(notes(laps, Role.CHORDS)));
  }

  private static Backing backing(Groove groove, String chart) {
    Meter meter = groove.meters().stream().findFirst().orElse(Meter.COMMON);
    return Backing.of(BandMeasure.chart(chart, groove.name(), meter), Grooves.builtIn());
  }

  /** What is played of a part, as people play it. */
  private static Stream<Note> notes(List<Score> laps, Role role) {
    return laps.stream().flatMap(score -> score.part(role).orElseThrow().notes().stream());
  }

  private static double millis(Stream<Note> notes) {
    return notes.mapToLong(Note::offsetMicros).average().orElse(0) / 1000;
  }

  /** Of a first lap, in which a band that is left normal plays normal throughout. */
  private static double given(Groove groove, Fullness band) {
    Meter meter = groove.meters().stream().findFirst().orElse(Meter.COMMON);
    Chart chart = BandMeasure.chart("lantern-quay", groove.name(), meter, section -> band);
    return BandMeasure.given(Backing.of(chart, Grooves.builtIn()).exact().lap(1));
  }

  String row(Groove groove) {
    return String.format(
        Locale.ROOT,
        "| %s | %d %% | %.0f %% | %.0f %% | %.0f %% | %.0f %% | %d | %+.1f | %+.1f | %+.1f |\n",
        groove.name(),
        groove.bass().withKickPercent(),
        kickWithBass,
        bassWithKick,
        light,
        full,
        belowLead,
        snare,
        bass,
        chords);
  }

  /** Writes the table into the page named, {@code src/docs/band.md}. */
  public static void main(String[] args) throws IOException {
    StringBuilder table = new StringBuilder(HEAD);
    Grooves.builtIn().all().forEach(groove -> table.append(of(groove).row(groove)));
    Page.replaceTable(Path.of(args[0]), "| in time |", table.toString());
  }
}
