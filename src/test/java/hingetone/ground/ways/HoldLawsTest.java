package hingetone.ground.ways;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.EveryPair;
import hingetone.chart.Form;
import hingetone.ground.Ground;
import hingetone.ground.ways.Hold.Heard;
import hingetone.ground.ways.Hold.Move;
import hingetone.neck.Fretboard;
import hingetone.neck.Tuning;
import hingetone.theory.Key;
import hingetone.theory.Keys;
import hingetone.time.Beats;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Every claim of every hold from each key to each other, recomputed by arithmetic on semitones of
 * its own. The tables are what any handbook of harmony lists (common practice).
 */
class HoldLawsTest {
  /** Open strings from the highest, as MIDI keys. */
  private static final int[] OPEN = {64, 59, 55, 50, 45, 40};

  private static final Map<String, Integer> NATURAL =
      Map.of("1", 0, "2", 2, "3", 4, "4", 5, "5", 7, "6", 9, "7", 11, "9", 2, "11", 5, "13", 9);

  private static final Map<String, List<Integer>> CHORDS =
      Map.of(
          "maj7", List.of(0, 4, 7, 11),
          "m7", List.of(0, 3, 7, 10),
          "7", List.of(0, 4, 7, 10));

  /** The chord on the tonic, on the fourth and on the fifth. */
  private static final Map<String, List<String>> DEGREES =
      Map.of(
          "major", List.of("maj7", "maj7", "7"),
          "minor", List.of("m7", "m7", "7"),
          "dorian", List.of("m7", "7", "7"),
          "blues", List.of("7", "7", "7"));

  private static final List<String> ROOTS = List.of("1", "4", "5");

  private static List<Key> keys() {
    Stream<Key> others =
        Stream.of("minor", "blues", "dorian")
            .flatMap(mode -> Keys.MINOR.stream().map(key -> Keys.key(key.tonic() + " " + mode)));
    return Stream.concat(Keys.MAJOR.stream(), others).toList();
  }

  /** A chord by its place in a key: 0 on the tonic, 1 on the fourth, 2 on the fifth. */
  private record Placed(Key key, int place) {
    String quality() {
      return DEGREES.get(key.mode().toString()).get(place);
    }

    String symbol() {
      return Keys.chord(key, ROOTS.get(place), quality());
    }

    int root() {
      return key.tonic().chroma() + NATURAL.get(ROOTS.get(place));
    }

    Set<Integer> notes() {
      return CHORDS.get(quality()).stream()
          .map(n -> Math.floorMod(root() + n, 12))
          .collect(Collectors.toSet());
    }
  }

  private static int semitones(String degree) {
    String number = degree.replaceAll("[b#]", "");
    long sharps = degree.chars().filter(c -> c == '#').count();
    long flats = degree.chars().filter(c -> c == 'b').count();
    return NATURAL.get(number) + (int) (sharps - flats);
  }

  /** Over all pairs: the last chord before each line and the first one after it. */
  private static void check(List<Key> keys, int last, int first) {
    Form form =
        Form.of(
            EveryPair.of(
                keys,
                key -> new Placed(key, first).symbol() + " | " + new Placed(key, last).symbol()));
    List<Crossing> crossings = Ground.of(form, Fretboard.of(Tuning.STANDARD, 0)).crossings();
    assertThat(crossings).hasSize(keys.size() * (keys.size() - 1));
    for (Crossing crossing : crossings) {
      Placed before = new Placed(crossing.from(), last);
      Placed after = new Placed(crossing.to(), first);
      assertThat(form.bar(crossing.atBar()).chordAt(Beats.ONE).orElseThrow().symbol())
          .isEqualTo(after.symbol());
      crossing.holds().forEach(hold -> check(hold, before, after));
      checkFirst(crossing, before, after);
    }
  }

  /** What both chords have stays; nobody has to bend for it. */
  private static void checkFirst(Crossing crossing, Placed before, Placed after) {
    Set<Integer> common =
        before.notes().stream().filter(after.notes()::contains).collect(Collectors.toSet());
    if (!common.isEmpty()) {
      assertThat(crossing.holds()).as("%s", crossing).isNotEmpty();
      Hold first = crossing.holds().get(0);
      assertThat(first.move()).as("%s", crossing).isEqualTo(Move.STAY);
      assertThat(common).as("%s", crossing).contains(first.note().midi() % 12);
    }
    List<Move> moves = crossing.holds().stream().map(Hold::move).toList();
    int staying = (int) moves.stream().filter(Move.STAY::equals).count();
    assertThat(moves.subList(0, staying)).containsOnly(Move.STAY);
  }

  private static void check(Hold hold, Placed before, Placed after) {
    String as = before.symbol() + " to " + after.symbol() + ": " + hold;
    int midi = OPEN[hold.spot().string() - 1] + hold.spot().fret();
    assertThat(hold.note().midi()).as(as).isEqualTo(midi);
    int moved = hold.noteAfter().midi() - midi;
    switch (hold.move()) {
      case STAY -> assertThat(moved).as(as).isZero();
      case BEND -> assertThat(moved).as(as).isEqualTo(1);
      case SLIDE -> assertThat(Math.abs(moved)).as(as).isEqualTo(1);
    }
    checkHeard(hold.before(), midi, before, as);
    checkHeard(hold.after(), midi + moved, after, as);
    hold.bend()
        .ifPresent(
            bend -> {
              int reached = midi + bend.size().semitones();
              assertThat(bend.to().midi()).as(as).isEqualTo(reached);
              checkHeard(bend.before(), reached, before, as);
              checkHeard(bend.after(), reached, after, as);
            });
  }

  private static void checkHeard(Heard heard, int midi, Placed place, String as) {
    int tonic = place.key().tonic().chroma();
    assertThat(Math.floorMod(semitones(heard.degree().toString()) + tonic - midi, 12))
        .as(as)
        .isZero();
    String over = heard.overChord().orElseThrow();
    assertThat(Math.floorMod(semitones(over) + place.root() - midi, 12)).as(as).isZero();
    boolean chordTone = place.notes().contains(Math.floorMod(midi, 12));
    assertThat(Set.of("1", "b3", "3", "5", "b7", "7").contains(over)).as(as).isEqualTo(chordTone);
  }

  /** Three keys of each kind, on all twelve tonics. */
  @Test
  void from_the_fifth_onto_the_tonic() {
    List<Key> all = keys();
    check(IntStream.range(0, 12).mapToObj(i -> all.get(12 * (i % 4) + i)).toList(), 2, 0);
  }

  @Test
  @Tag("long")
  void over_every_pair_of_keys_and_four_pairs_of_chords() {
    check(keys(), 0, 0);
    check(keys(), 1, 0);
    check(keys(), 2, 0);
    check(keys(), 2, 1);
  }
}
