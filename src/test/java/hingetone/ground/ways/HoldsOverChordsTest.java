package hingetone.ground.ways;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.EveryPair;
import hingetone.chart.Form;
import hingetone.ground.Ground;
import hingetone.ground.GroundCharts;
import hingetone.neck.Fretboard;
import hingetone.neck.Tuning;
import hingetone.theory.Chord;
import hingetone.theory.Key;
import hingetone.theory.Keys;
import hingetone.theory.NoteName;
import hingetone.time.Beats;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a held note is worth over the chords on either side of the line. */
class HoldsOverChordsTest {
  private static final Fretboard GUITAR = Fretboard.of(Tuning.STANDARD, 0);

  @Test
  void a_common_tone_that_fights_the_chord_after_the_line_goes_down() {
    // Common practice. From a minor key into its relative major, whose tonic is of both: over the
    // third degree and the dominant it rubs a half step above a chord tone.
    for (Key major : Keys.MAJOR) {
      assertThat(betterThanTonic(major, "4", "maj7")).as("%s", major).isZero();
      assertThat(betterThanTonic(major, "6", "m7")).as("%s", major).isZero();
      assertThat(betterThanTonic(major, "3", "m7")).as("%s", major).isGreaterThan(2);
      assertThat(betterThanTonic(major, "5", "7")).as("%s", major).isGreaterThan(2);
    }
  }

  /** How many other notes are better held than the tonic of a major key, coming from its minor. */
  private static long betterThanTonic(Key major, String degree, String quality) {
    String minor = Keys.degree(major, "6");
    String chord = minor + "m7";
    List<Hold> holds =
        GroundCharts.two(
                minor + " minor",
                chord + " | " + chord,
                major.toString(),
                Keys.chord(major, degree, quality),
                GUITAR)
            .crossings()
            .get(0)
            .holds();
    double tonic =
        holds.stream()
            .filter(hold -> hold.noteAfter().name().equals(major.tonic()))
            .mapToDouble(Hold::score)
            .max()
            .orElse(0);
    return holds.stream()
        .filter(hold -> hold.score() > tonic)
        .map(hold -> hold.noteAfter().name())
        .distinct()
        .count();
  }

  @Test
  void a_bend_is_not_held_onto_a_chord_that_its_upper_end_fights() {
    // From a major key into its minor: the third bent a half tone to the fourth would rub over the
    // minor chord on the sixth degree, the sixth bent a whole tone to the seventh is its ninth.
    for (Key major : Keys.MAJOR) {
      String minor = Keys.degree(major, "6");
      List<Hold> holds =
          GroundCharts.two(
                  major.toString(),
                  major.tonic() + " | " + Keys.chord(major, "5", ""),
                  minor + " minor",
                  minor + "m",
                  GUITAR)
              .crossings()
              .get(0)
              .holds();
      assertThat(holds).anyMatch(h -> h.before().degree().toString().equals("3"));
      assertThat(holds)
          .as("%s", major)
          .flatExtracting(h -> h.bend().stream().map(b -> b.before().degree().toString()).toList())
          .contains("7")
          .doesNotContain("4");
    }
  }

  @Test
  void a_note_of_both_chords_stands_above_one_that_fights_both_over_every_pair_of_keys() {
    int fighting = 0;
    for (String chord : List.of("m7", "7", "maj7", "7#9", "m7b5")) {
      Form form = Form.of(EveryPair.of(Keys.MINOR, key -> key.tonic() + chord));
      for (Crossing crossing : Ground.of(form, GUITAR).crossings()) {
        Chord before = form.bar(crossing.atBar() - 1).chordAt(Beats.ONE).orElseThrow();
        Chord after = form.bar(crossing.atBar()).chordAt(Beats.ONE).orElseThrow();
        boolean fought = false;
        for (Hold hold : crossing.holds()) {
          int from = hold.note().midi();
          int to = hold.noteAfter().midi();
          boolean fightsBoth = fights(before, from) && fights(after, to);
          boolean ofBoth = has(before, from) && has(after, to);
          assertThat(fought && ofBoth).as("%s %s", crossing.atBar(), hold).isFalse();
          fought |= fightsBoth;
          fighting += fightsBoth ? 1 : 0;
        }
      }
    }
    assertThat(fighting).isPositive();
  }

  private static boolean has(Chord chord, int midi) {
    return chord.notes().stream().map(NoteName::chroma).anyMatch(chroma -> chroma == midi % 12);
  }

  private static boolean fights(Chord chord, int midi) {
    return !has(chord, midi) && has(chord, midi - 1);
  }
}
