package hingetone.ground;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Form;
import hingetone.neck.Figure;
import hingetone.neck.Fretboard;
import hingetone.neck.Shape;
import hingetone.neck.Spot;
import hingetone.neck.Tuning;
import hingetone.theory.Chord;
import hingetone.theory.Key;
import hingetone.theory.NoteName;
import hingetone.theory.Scale;
import hingetone.theory.ScaleType;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class CrossingTest {
  private static final Fretboard GUITAR = Fretboard.of(Tuning.STANDARD, 0);
  private static final String[] TONICS = {
    "C", "C#", "D", "Eb", "E", "F", "F#", "G", "G#", "A", "Bb", "B"
  };

  /** Six that players use and one of our own with odd steps. */
  private static final List<Fretboard> NECKS =
      List.of(
          GUITAR,
          Fretboard.of(Tuning.parse("D A D G A D").orElseThrow(), 2),
          Fretboard.of(Tuning.parse("open G").orElseThrow(), 0),
          Fretboard.of(Tuning.parse("7-string").orElseThrow(), 0),
          new Fretboard(Tuning.parse("bass").orElseThrow(), 0, 20, true),
          new Fretboard(Tuning.parse("drop D").orElseThrow(), 0, 27, false),
          Fretboard.of(Tuning.parse("E2 G2 D#3 E3 A#3 C4").orElseThrow(), 0));

  private static Ground aMinorToBMinor() {
    return Charts.two("A minor", "Am7 | Am7", "B minor", "Bm7 | Bm7", GUITAR);
  }

  @Test
  void two_transpositions_share_as_many_notes_as_the_common_tone_theorem_says() {
    // The reference file: computed from the common-tone theorem.
    assertThat(shared("major")).containsExactly(7, 2, 5, 4, 3, 6, 2, 6, 3, 4, 5, 2);
    assertThat(shared("harmonic minor")).containsExactly(7, 3, 3, 5, 4, 4, 4, 4, 4, 5, 3, 3);
    assertThat(shared("minor pentatonic")).containsExactly(5, 0, 3, 2, 1, 4, 0, 4, 1, 2, 3, 0);
  }

  private static List<Integer> shared(String kind) {
    Scale c = new Scale(NoteName.parse("C").orElseThrow(), ScaleType.named(kind));
    List<Integer> counts = new ArrayList<>();
    for (String tonic : TONICS) {
      Scale moved = new Scale(NoteName.parse(tonic).orElseThrow(), c.type());
      counts.add(c.commonTones(moved).size());
    }
    return counts;
  }

  @Test
  void a_minor_and_b_minor_keep_a_d_and_e() {
    // Common practice: both pentatonics have A, D and E.
    Crossing crossing = aMinorToBMinor().crossings().get(0);
    assertThat(crossing.atBar()).isEqualTo(3);
    assertThat(crossing.semitones()).isEqualTo(2);
    assertThat(crossing.commonTones().pentatonic()).hasToString("[A, D, E]");
    assertThat(crossing.commonTones().scale()).hasToString("[A, B, D, E, G]");
    assertThat(crossing.commonTones().chords()).hasToString("[A]");
  }

  @Test
  void d_is_held_as_the_fourth_then_the_third_and_its_bend_to_e_as_the_fifth_then_the_fourth() {
    // Common practice.
    Hold hold =
        aMinorToBMinor().crossings().get(0).holds().stream()
            .filter(h -> h.note().toString().equals("D5") && h.spot().equals(new Spot(1, 10)))
            .findFirst()
            .orElseThrow();
    assertThat(hold.before().degree()).hasToString("4");
    assertThat(hold.after().degree()).hasToString("b3");
    assertThat(hold.before().overChord()).contains("11");
    assertThat(hold.after().overChord()).contains("b3");
    Hold.BentHold bend = hold.bend().orElseThrow();
    assertThat(bend.to()).hasToString("E5");
    assertThat(bend.kind().cents()).isEqualTo(200);
    assertThat(bend.before().degree()).hasToString("5");
    assertThat(bend.after().degree()).hasToString("4");
  }

  @Test
  void with_the_hand_at_fret_twelve_d_is_held_on_string_two_fret_fifteen_and_bent_to_e() {
    // Common practice: string 2 fret 15 bent from D5 to E5.
    Ground ground = aMinorToBMinor();
    Key a = Key.parse("A minor").orElseThrow();
    Key b = Key.parse("B minor").orElseThrow();
    Shape hand = evenFrom(ground, a.pentatonic(), 12);
    Line line =
        new Line(
            GUITAR,
            Meter.parse("4/4").orElseThrow(),
            new Line.Side(a, Chord.parse("Am7"), a.heptatonic(), hand),
            new Line.Side(
                b, Chord.parse("Bm7"), b.heptatonic(), ground.nearest(b.pentatonic(), hand)),
            ground.shapes(b.pentatonic()));
    Hold hold =
        Holds.over(line).stream()
            .filter(h -> h.spot().equals(new Spot(2, 15)))
            .findFirst()
            .orElseThrow();
    assertThat(hold.note()).hasToString("D5");
    assertThat(hold.before().degree()).hasToString("4");
    assertThat(hold.after().degree()).hasToString("b3");
    assertThat(hold.bend().orElseThrow().to()).hasToString("E5");
    assertThat(hold.bend().orElseThrow().before().degree()).hasToString("5");
    assertThat(hold.bend().orElseThrow().after().degree()).hasToString("4");
  }

  private static Shape evenFrom(Ground ground, Scale scale, int fret) {
    return ground.shapes(scale).stream()
        .filter(s -> s.layout() == Shape.Layout.EVEN && s.lowest().fret() == fret)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void a_double_stop_is_walked_up_a_whole_tone_to_land_on_the_line() {
    // Common practice: strings 3 and 2 at frets 9/10, 10/11, 11/12, the last on the line.
    Run walk =
        aMinorToBMinor().crossings().get(0).runs().stream()
            .filter(r -> r.figure().equals(List.of(new Spot(3, 9), new Spot(2, 10))))
            .findFirst()
            .orElseThrow();
    assertThat(walk.steps())
        .extracting(s -> s.notes().toString())
        .containsExactly("[E4, A4]", "[F4, Bb4]", "[F#4, B4]");
    assertThat(walk.steps().get(2).spots()).containsExactly(new Spot(3, 11), new Spot(2, 12));
    assertThat(walk.steps().get(2).beatsBefore().isZero()).isTrue();
  }

  @Test
  void a_figure_of_three_or_four_notes_is_touched_briefly_on_the_frets_between() {
    for (int size : List.of(3, 4)) {
      Run walk =
          aMinorToBMinor().crossings().get(0).runs().stream()
              .filter(r -> r.kind() == Run.Kind.WALK && r.figure().size() == size)
              .findFirst()
              .orElseThrow();
      assertThat(walk.frets()).isEqualTo(2);
      assertThat(walk.steps()).extracting(s -> s.notes().size()).containsExactly(size, 2, size);
      assertThat(walk.steps())
          .extracting(Run.Step::beatsBefore)
          .containsExactly(Beats.of(3, 2), Beats.of(1, 2), Beats.ZERO);
    }
  }

  @Test
  void shapes_move_two_frets_with_a_whole_tone_and_another_stays_under_the_hand() {
    Ground ground = aMinorToBMinor();
    Crossing crossing = ground.crossings().get(0);
    assertThat(crossing.stays().get(0).from().start()).hasToString("b3");
    assertThat(crossing.stays().get(0).to().start()).hasToString("1");
    assertThat(crossing.stays().get(0).to().low()).isEqualTo(7);
    assertThat(crossing.stays().get(0).to().high()).isEqualTo(10);
  }

  @Test
  void no_figure_walks_farther_than_three_frets_where_the_keys_lie_nearer_or_share_all_notes() {
    for (String keys : List.of("A minor:C major", "G major:E minor", "E minor:F minor")) {
      String[] both = keys.split(":");
      Crossing crossing =
          Charts.two(both[0], "N.C. | N.C.", both[1], "N.C.", GUITAR).crossings().get(0);
      assertThat(crossing.runs())
          .filteredOn(run -> run.kind() == Run.Kind.WALK)
          .isNotEmpty()
          .allMatch(run -> Math.abs(run.frets()) <= 3);
    }
  }

  @Test
  void a_fourth_is_crossed_by_a_short_walk_rather_than_by_five_frets() {
    for (String to : List.of("D minor", "E minor")) {
      Ground ground = Charts.two("A minor", "Am7 | Am7", to, to.charAt(0) + "m7", GUITAR);
      List<Run> runs = ground.crossings().get(0).runs();
      for (int size : List.of(2, 3, 4)) {
        Run best =
            runs.stream()
                .filter(run -> run.kind() == Run.Kind.WALK && run.figure().size() == size)
                .findFirst()
                .orElseThrow();
        assertThat(Math.abs(best.frets())).as("%d notes to %s", size, to).isLessThan(4);
      }
    }
  }

  @Test
  void what_the_hand_covers_costs_no_travel() {
    Ground ground = aMinorToBMinor();
    Shape hand = ground.shapeAt(2, Beats.ONE);
    assertThat(ground.crossings().get(0).holds())
        .filteredOn(h -> h.spot().fret() >= hand.low() && h.spot().fret() <= hand.high())
        .isNotEmpty()
        .allMatch(h -> h.travel() == 0);
  }

  @Test
  void shifts_above_three_frets_are_walked_at_their_end_only() {
    assertThat(Runs.moves(1)).containsExactly(0, 1);
    assertThat(Runs.moves(2)).containsExactly(0, 1, 2);
    assertThat(Runs.moves(-3)).containsExactly(0, -1, -2, -3);
    assertThat(Runs.moves(5)).containsExactly(0, 3, 4, 5);
    assertThat(Runs.moves(-6)).containsExactly(0, -4, -5, -6);
  }

  @Test
  void a_half_step_apart_a_held_note_is_bent_or_slid_on_the_line() {
    // Common practice: the two minor pentatonics share nothing.
    Crossing crossing =
        Charts.two("E minor", "Em7 | Em7", "F minor", "Fm7 | Fm7", GUITAR).crossings().get(0);
    assertThat(crossing.commonTones().pentatonic()).isEmpty();
    assertThat(crossing.holds()).anyMatch(h -> h.move() == Hold.Move.BEND);
    assertThat(crossing.holds())
        .filteredOn(h -> h.move() != Hold.Move.STAY)
        .isNotEmpty()
        .allMatch(h -> Math.abs(h.noteAfter().midi() - h.note().midi()) == 1);
  }

  @Test
  void the_seam_is_a_crossing_and_a_change_of_section_without_a_change_of_key_is_none() {
    Ground ground =
        Charts.ground(
            Charts.section("one", "A minor", "Am7 | Am7")
                + Charts.section("two", "A minor", "Dm7 | Am7")
                + Charts.section("three", "C minor", "Cm7 | G7"),
            GUITAR);
    assertThat(ground.crossings()).extracting(Crossing::atBar).containsExactly(5, 7);
    assertThat(ground.nextCrossing(Position.of(0, 1)).orElseThrow().atBar()).isEqualTo(5);
    assertThat(ground.nextCrossing(Position.of(5, 1)).orElseThrow().atBar()).isEqualTo(7);
    assertThat(ground.nextCrossing(Position.of(7, 1)).orElseThrow().atBar()).isEqualTo(11);
    assertThat(ground.nextCrossing(Position.of(18, 4)).orElseThrow().atBar()).isEqualTo(19);
    assertThat(Charts.one("A minor", "Am7 | E7").nextCrossing(Position.of(1, 1))).isEmpty();
  }

  @Test
  void the_dominant_at_a_sections_end_is_a_turnaround() {
    Ground ground = Charts.two("A minor", "Am7 | Am7", "B minor", "Bm7 | E7#9 | E7#9", GUITAR);
    assertThat(ground.turnarounds()).hasSize(1);
    Turnaround back = ground.turnarounds().get(0);
    assertThat(back.atBar()).isEqualTo(6);
    assertThat(back.bars()).isEqualTo(2);
    assertThat(back.dominant()).hasToString("E7#9");
    assertThat(back.to()).hasToString("A minor");
    assertThat(back.holds()).isNotEmpty();
    assertThat(back.runs()).isNotEmpty();
  }

  @Test
  void a_common_tone_that_fights_the_chord_after_the_line_goes_down() {
    // Common practice. C is of both keys; over Em7 it rubs a half step above B.
    assertThat(rankOfC("Fmaj7")).isZero();
    assertThat(rankOfC("Am7")).isZero();
    assertThat(rankOfC("Em7")).isGreaterThan(2);
    assertThat(rankOfC("G7")).isGreaterThan(2);
  }

  /** How many other notes are better held from A minor into C major. */
  private static int rankOfC(String chordAfter) {
    Ground ground = Charts.two("A minor", "Am7 | Am7", "C major", chordAfter, GUITAR);
    return ground.crossings().get(0).holds().stream()
        .map(hold -> hold.note().name().toString())
        .distinct()
        .toList()
        .indexOf("C");
  }

  @Test
  void a_bend_is_not_held_onto_a_chord_that_its_upper_end_fights() {
    // E bent a half tone to F would rub over Am; A bent a whole tone to B is its ninth.
    List<Hold> holds =
        Charts.two("C major", "C | G", "A minor", "Am", GUITAR).crossings().get(0).holds();
    assertThat(holds).filteredOn(h -> h.note().name().toString().equals("E")).isNotEmpty();
    assertThat(holds)
        .flatExtracting(h -> h.bend().stream().map(b -> b.to().name().toString()).toList())
        .contains("B")
        .doesNotContain("F");
  }

  @Test
  void a_note_of_both_chords_stands_above_one_that_fights_both_over_every_pair_of_keys() {
    int fighting = 0;
    for (String chord : List.of("m7", "7", "maj7", "7#9", "m7b5")) {
      Ground ground = Charts.ground(allPairs(new StringBuilder(), "minor", chord), GUITAR);
      for (Crossing crossing : ground.crossings()) {
        Chord before = ground.form().bar(crossing.atBar() - 1).chordAt(Beats.ONE).orElseThrow();
        Chord after = ground.form().bar(crossing.atBar()).chordAt(Beats.ONE).orElseThrow();
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
    return chord.notes().stream().anyMatch(n -> n.chroma() == midi % 12);
  }

  private static boolean fights(Chord chord, int midi) {
    return !has(chord, midi) && has(chord, midi - 1);
  }

  @Test
  void over_every_pair_of_minor_keys_and_of_major_keys_all_ways_keep_their_rules() {
    for (String mode : List.of("minor", "major")) {
      String chord = mode.equals("minor") ? "m7" : "maj7";
      for (Fretboard neck : NECKS) {
        StringBuilder sections = new StringBuilder();
        Ground ground = Charts.ground(allPairs(sections, mode, chord), neck);
        Set<String> pairs = new HashSet<>();
        for (Crossing crossing : ground.crossings()) {
          pairs.add(crossing.from() + " " + crossing.to());
          check(ground, crossing);
        }
        for (Form.Bar bar : ground.form().bars()) {
          Shape shape = ground.shapeAt(bar.number(), Beats.ONE);
          assertThat(shape.dots()).as("bar %d", bar.number()).allMatch(d -> neck.has(d.spot()));
        }
        assertThat(pairs).hasSize(12 * 11);
      }
    }
  }

  /** A section for each key, and a form that goes from each key to each other one. */
  private static String allPairs(StringBuilder sections, String mode, String chord) {
    for (String tonic : TONICS) {
      sections.append(
          Charts.section("s" + tonic.replace("#", "is"), tonic + " " + mode, tonic + chord));
    }
    return sections + "form: " + String.join(" ", eulerian()) + "\n";
  }

  /** A closed walk over twelve keys that uses each ordered pair once (Hierholzer). */
  private static List<String> eulerian() {
    boolean[][] used = new boolean[12][12];
    List<Integer> stack = new ArrayList<>(List.of(0));
    List<String> walk = new ArrayList<>();
    while (!stack.isEmpty()) {
      int here = stack.get(stack.size() - 1);
      int next = 0;
      while (next < 12 && (next == here || used[here][next])) {
        next++;
      }
      if (next < 12) {
        used[here][next] = true;
        stack.add(next);
      } else {
        walk.add("s" + TONICS[stack.remove(stack.size() - 1)].replace("#", "is"));
      }
    }
    return walk.subList(0, walk.size() - 1);
  }

  private static void check(Ground ground, Crossing crossing) {
    Fretboard neck = ground.fretboard();
    Set<Integer> small = common(crossing.from().pentatonic(), crossing.to().pentatonic());
    Set<Integer> large = common(crossing.from().heptatonic(), crossing.to().heptatonic());
    assertThat(chromas(crossing.commonTones().pentatonic())).isEqualTo(small);
    assertThat(chromas(crossing.commonTones().scale())).isEqualTo(large);
    List<Object> wrong = new ArrayList<>();
    for (Hold hold : crossing.holds()) {
      if (!isRight(hold, crossing, neck, small, large)) {
        wrong.add(hold);
      }
    }
    for (Run run : crossing.runs()) {
      if (!isRight(run, crossing, neck)) {
        wrong.add(run);
      }
    }
    for (Stay stay : crossing.stays()) {
      if (!stay.to().dots().stream().allMatch(d -> neck.has(d.spot()))) {
        wrong.add(stay);
      }
    }
    assertThat(crossing.holds()).isNotEmpty();
    assertThat(crossing.runs()).isNotEmpty();
    assertThat(wrong).as("%s to %s in %s", crossing.from(), crossing.to(), neck).isEmpty();
  }

  /** On the neck, and a common tone, or where the pentatonics share none a half step to the new. */
  private static boolean isRight(
      Hold hold, Crossing crossing, Fretboard neck, Set<Integer> small, Set<Integer> large) {
    int moved = hold.noteAfter().midi() - hold.note().midi();
    boolean stays = moved == 0 && large.contains(hold.note().name().chroma());
    boolean moves =
        Math.abs(moved) == 1
            && small.isEmpty()
            && in(crossing.to().pentatonic(), hold.noteAfter().midi());
    return neck.has(hold.spot())
        && neck.midi(hold.spot()) == hold.note().midi()
        && (hold.move() == Hold.Move.STAY ? stays : moves)
        && hold.bend().stream().allMatch(b -> large.contains(b.to().name().chroma()));
  }

  /**
   * Its last step on the line and in the new pentatonic, all of it on the neck; not begun more than
   * two beats before, what lies between two notes in half a beat.
   */
  private static boolean isRight(Run run, Crossing crossing, Fretboard neck) {
    Run.Step last = run.steps().get(run.steps().size() - 1);
    boolean brief =
        run.kind() == Run.Kind.SCALE
            || run.steps().subList(1, run.steps().size() - 1).stream()
                .allMatch(s -> s.beats().equals(Beats.of(1, 2)) && s.notes().size() == 2);
    return brief
        && !run.steps().get(0).beatsBefore().isAfter(Beats.of(2))
        && last.beatsBefore().isZero()
        && isRight(run.octaves(neck, -1), run, neck, -12)
        && isRight(run.octaves(neck, 1), run, neck, 12)
        && last.notes().stream().allMatch(n -> in(crossing.to().pentatonic(), n.midi()))
        && run.steps().stream().allMatch(s -> s.spots().stream().allMatch(neck::has));
  }

  /** The same notes so many semitones away, with room on the neck for the whole walk. */
  private static boolean isRight(Optional<Figure> moved, Run run, Fretboard neck, int semitones) {
    if (moved.isEmpty()) {
      return true;
    }
    List<Spot> spots = moved.get().touches().stream().map(Figure.Touch::spot).toList();
    return IntStream.range(0, spots.size())
        .allMatch(
            i ->
                neck.midi(spots.get(i)) == neck.midi(run.figure().get(i)) + semitones
                    && neck.has(spots.get(i))
                    && neck.has(spots.get(i).up(run.frets())));
  }

  private static boolean in(Scale scale, int midi) {
    return scale.degreeOf(Math.floorMod(midi, 12)).isPresent();
  }

  /** A plain set computation, beside the program's own. */
  private static Set<Integer> common(Scale one, Scale other) {
    Set<Integer> both = chromas(one.notes());
    both.retainAll(chromas(other.notes()));
    return both;
  }

  private static Set<Integer> chromas(List<NoteName> notes) {
    Set<Integer> chromas = new HashSet<>();
    notes.forEach(n -> chromas.add(n.chroma()));
    return chromas;
  }

  @Test
  void all_of_b_minor_pentatonic_lies_inside_a_dorian() {
    // Common practice; A's sixth, F#, is B's fifth.
    Scale dorian = Scale.parse("A dorian").orElseThrow();
    Scale pentatonic = Key.parse("B minor").orElseThrow().pentatonic();
    assertThat(pentatonic.commonTones(dorian)).hasSize(5);
    assertThat(Degrees.in(Key.parse("A minor").orElseThrow(), NoteName.parse("F#").orElseThrow()))
        .hasToString("6");
    assertThat(Degrees.in(Key.parse("B minor").orElseThrow(), NoteName.parse("F#").orElseThrow()))
        .hasToString("5");
  }

  @Test
  void over_e7_sharp_nine_the_two_pentatonics_are_these_degrees() {
    // Common practice, the reference file.
    assertThat(over("E minor pentatonic")).containsExactly("1", "#9", "11", "5", "b7");
    assertThat(over("A minor pentatonic")).containsExactly("11", "#9", "b13", "b7", "1");
  }

  /** In the order the reference gives: A C D E G as 4, (G) #9, b13, b7, 1. */
  private static List<String> over(String scale) {
    hingetone.theory.Chord chord = hingetone.theory.Chord.parse("E7#9").orElseThrow();
    List<NoteName> notes = new ArrayList<>(Scale.parse(scale).orElseThrow().notes());
    if (scale.startsWith("A")) {
      notes = List.of(notes.get(0), notes.get(4), notes.get(1), notes.get(2), notes.get(3));
    }
    return notes.stream().map(n -> Degrees.over(chord, n)).toList();
  }
}
