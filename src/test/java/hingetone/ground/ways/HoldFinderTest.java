package hingetone.ground.ways;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.ground.Ground;
import hingetone.ground.GroundCharts;
import hingetone.ground.scales.DegreeNames;
import hingetone.neck.Bend;
import hingetone.neck.Dot;
import hingetone.neck.Fretboard;
import hingetone.neck.Shape;
import hingetone.neck.Spot;
import hingetone.neck.Tuning;
import hingetone.theory.Chord;
import hingetone.theory.Interval;
import hingetone.theory.Key;
import hingetone.theory.Keys;
import hingetone.theory.Pitch;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What two keys share, and which of it may ring from one into the other. */
class HoldFinderTest {
  private static final Fretboard GUITAR = Fretboard.of(Tuning.STANDARD, 0);

  /**
   * What two minor pentatonics share: half steps from the lower tonic up to the upper | degrees in
   * the lower key and in the upper. Common practice, as in {@code reference/README.md}.
   */
  private static final String SHARED =
      """
      1 |
      2 | 1>b7 4>b3 5>4
      3 | b3>1 b7>5
      4 | 5>b3
      5 | 1>5 b3>b7 4>1 b7>4
      6 |
      7 | 1>4 4>b7 5>1 b7>b3
      """;

  /** The degree after the line of each shared degree before it, by half steps from 1 to 11. */
  private static final Map<Integer, Map<String, String>> KEPT = kept();

  private static Map<Integer, Map<String, String>> kept() {
    Map<Integer, Map<String, String>> kept = new HashMap<>();
    for (String row : SHARED.lines().toList()) {
      int up = Integer.parseInt(row.substring(0, 1));
      List<String[]> pairs =
          Stream.of(row.substring(3).strip().split(" "))
              .filter(pair -> !pair.isEmpty())
              .map(pair -> pair.split(">"))
              .toList();
      Map<String, String> rising = new HashMap<>();
      Map<String, String> falling = new HashMap<>();
      pairs.forEach(pair -> rising.put(pair[0], pair[1]));
      pairs.forEach(pair -> falling.put(pair[1], pair[0]));
      kept.put(up, rising);
      assertThat(kept.getOrDefault(12 - up, falling)).isEqualTo(falling);
      kept.put(12 - up, falling);
    }
    return kept;
  }

  private static Map<String, String> kept(Crossing crossing) {
    return KEPT.get(Keys.up(crossing.from(), crossing.to()));
  }

  /** Every change from one minor key to another, their tonics' chords on either side. */
  private static void overEveryPair(BiConsumer<Crossing, Map<String, String>> check) {
    List<Crossing> crossings = GroundCharts.everyMinorPair().crossings();
    assertThat(crossings).hasSize(12 * 11);
    crossings.forEach(crossing -> check.accept(crossing, kept(crossing)));
  }

  private static String degrees(Hold hold) {
    return hold.before().degree() + ">" + hold.after().degree();
  }

  @Test
  void any_two_minor_pentatonics_share_what_players_know_them_to_share() {
    overEveryPair(
        (crossing, kept) ->
            assertThat(
                    crossing.commonTones().pentatonic().stream()
                        .collect(
                            Collectors.toMap(
                                note -> DegreeNames.in(crossing.from(), note).toString(),
                                note -> DegreeNames.in(crossing.to(), note).toString())))
                .as("%s to %s", crossing.from(), crossing.to())
                .isEqualTo(kept));
  }

  @Test
  void each_shared_note_may_be_held_and_is_named_in_both_keys() {
    overEveryPair(
        (crossing, kept) -> {
          String keys = crossing.from() + " to " + crossing.to();
          assertThat(crossing.holds().stream().map(HoldFinderTest::degrees))
              .as(keys)
              .containsAll(
                  kept.entrySet().stream()
                      .map(Object::toString)
                      .map(s -> s.replace('=', '>'))
                      .toList());
          for (Hold hold : crossing.holds()) {
            assertThat(semitones(hold.before().degree()))
                .as(keys)
                .isEqualTo(above(crossing.from(), hold.note().midi()));
            assertThat(semitones(hold.after().degree()))
                .as(keys)
                .isEqualTo(above(crossing.to(), hold.noteAfter().midi()));
          }
        });
  }

  private static int semitones(Interval degree) {
    return Math.floorMod(degree.semitones(), 12);
  }

  private static int above(Key key, int midi) {
    return Math.floorMod(midi - key.tonic().chroma(), 12);
  }

  @Test
  void a_bend_from_one_shared_note_to_another_may_be_held_at_either_end() {
    Set<Integer> bent = new java.util.TreeSet<>();
    overEveryPair(
        (crossing, kept) -> {
          for (Hold hold : crossing.holds()) {
            wholeToneUp(kept, hold.before().degree())
                .filter(upper -> whole(hold.spot()))
                .ifPresent(
                    upper -> {
                      assertThatItBends(hold, upper, kept.get(upper));
                      bent.add(Keys.up(crossing.from(), crossing.to()));
                    });
          }
        });
    assertThat(bent).as("half steps between keys that share a bend").containsExactly(2, 5, 7, 10);
  }

  /** The shared degree a whole tone above another shared one. */
  private static Optional<String> wholeToneUp(Map<String, String> kept, Interval degree) {
    return kept.keySet().stream()
        .filter(upper -> kept.containsKey(degree.toString()))
        .filter(
            upper ->
                Math.floorMod(
                        Interval.parse(upper).orElseThrow().semitones() - degree.semitones(), 12)
                    == 2)
        .findFirst();
  }

  private static void assertThatItBends(Hold hold, String before, String after) {
    Hold.BentHold bend = hold.bend().orElseThrow();
    assertThat(bend.size()).as("%s", hold).isEqualTo(Bend.Size.WHOLE);
    assertThat(bend.to().midi()).isEqualTo(hold.note().midi() + 2);
    assertThat(bend.before().degree()).as("%s", hold).hasToString(before);
    assertThat(bend.after().degree()).as("%s", hold).hasToString(after);
  }

  @Test
  void a_whole_tone_up_the_fourth_is_held_and_bent_wherever_the_hand_is() {
    for (Key from : Keys.MINOR) {
      Key to = from.shifted(2);
      Ground ground = GroundCharts.two(from.toString(), "N.C.", to.toString(), "N.C.", GUITAR);
      for (Shape hand : ground.shapes(from.pentatonic())) {
        List<Hold> fourths =
            HoldFinder.over(line(ground, from, to, hand)).stream()
                .filter(hold -> degrees(hold).equals("4>b3"))
                .filter(hold -> whole(hold.spot()))
                .toList();
        fourths.forEach(hold -> assertThatItBends(hold, "5", "4"));
        assertThat(fourths)
            .as("%s from fret %s", from, hand.low())
            .extracting(Hold::spot)
            .containsAll(
                hand.dots().stream()
                    .filter(dot -> dot.degree().toString().equals("4"))
                    .map(Dot::spot)
                    .filter(HoldFinderTest::whole)
                    .toList());
      }
    }
  }

  private static CrossingLine line(Ground ground, Key from, Key to, Shape hand) {
    return new CrossingLine(
        GUITAR,
        Meter.COMMON,
        new CrossingLine.Side(from, Chord.parse(from.tonic() + "m7"), from.heptatonic(), hand),
        new CrossingLine.Side(
            to,
            Chord.parse(to.tonic() + "m7"),
            to.heptatonic(),
            ground.nearest(to.pentatonic(), hand)),
        ground.shapes(to.pentatonic()),
        false);
  }

  private static boolean whole(Spot spot) {
    return Bend.Size.WHOLE.isPlayableAt(spot, GUITAR.midi(spot));
  }

  @Test
  void over_a_riff_the_upper_end_of_a_bend_is_held_before_the_plain_note() {
    int bent = 0;
    for (Key from : Keys.MINOR) {
      Key to = from.shifted(2);
      String riff = from.tonic() + "5 | " + from.tonic() + "m7";
      for (String before : List.of(riff, from.tonic() + "m7")) {
        Ground ground =
            GroundCharts.two(from.toString(), before, to.toString(), to.tonic() + "m7", GUITAR);
        for (Hold hold : ground.crossings().get(0).holds()) {
          boolean rests = before.equals(riff) && hold.bend().isPresent();
          boolean better = rests && fits(to, hold.bend().get().to()) >= fits(to, hold.noteAfter());
          assertThat(hold.bentFirst()).as("%s", hold).isEqualTo(better);
          assertThat(WayWords.of(hold).contains(" or plain: ")).isEqualTo(better);
          Pitch rings = better ? hold.bend().get().to() : hold.noteAfter();
          assertThat(hold.ringing()).isEqualTo(rings);
          bent += better ? 1 : 0;
        }
      }
    }
    assertThat(bent).isGreaterThanOrEqualTo(12);
  }

  /** 2 for a note of the minor seventh chord on a key's tonic, 0 for one a half step above one. */
  private static int fits(Key key, Pitch note) {
    int above = above(key, note.midi());
    return List.of(0, 3, 7, 10).contains(above) ? 2 : List.of(1, 4, 8, 11).contains(above) ? 0 : 1;
  }

  @Test
  void what_the_hand_covers_costs_no_travel() {
    Ground ground = GroundCharts.everyMinorPair();
    for (Crossing crossing : ground.crossings()) {
      Shape hand = ground.neckAt(crossing.atBar() - 1, Beats.ONE);
      assertThat(crossing.holds())
          .filteredOn(h -> h.spot().fret() >= hand.low() && h.spot().fret() <= hand.high())
          .allMatch(h -> h.travel() == 0);
    }
  }

  @Test
  void where_the_pentatonics_share_nothing_a_held_note_is_bent_or_slid_on_the_line() {
    // Common practice: keys a half step apart, and by the same reasoning a tritone.
    overEveryPair(
        (crossing, kept) -> {
          String keys = crossing.from() + " to " + crossing.to();
          List<Hold> moved =
              crossing.holds().stream().filter(h -> h.move() != Hold.Move.STAY).toList();
          assertThat(moved.isEmpty()).as(keys).isEqualTo(!kept.isEmpty());
          assertThat(moved)
              .as(keys)
              .allMatch(h -> Math.abs(h.noteAfter().midi() - h.note().midi()) == 1);
        });
  }
}
