package hingetone.theory;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * The vocabulary against an outside table: the scale and chord types of the npm package tonal 6.4.3
 * (MIT, its licence beside the file), spelled on 35 roots.
 */
class ReferenceTableTest {
  private static final Path TABLE =
      Path.of("src/test/resources/reference/tonal-6.4.3-scales-chords.tsv");

  private static final Optional<String> NINE_SUS = Optional.of("9sus4");

  /** One line of the table. */
  private record Row(String name, List<Interval> intervals, List<String> aliases) {
    /** The symbols that must mean to us what they mean in the table. */
    Stream<String> chordSymbols() {
      return aliases.stream()
          .filter(s -> !CHORDS_LEFT_OUT.containsKey(s) && !CHORDS_READ_OTHERWISE.containsKey(s));
    }

    Stream<String> allNames() {
      return Stream.concat(Stream.of(name), aliases.stream());
    }

    Stream<String> scaleNames() {
      return allNames().filter(name -> !SCALES_LEFT_OUT.containsKey(name));
    }

    List<NoteName> on(NoteName root) {
      return intervals.stream().map(root::plus).toList();
    }
  }

  /** Chord symbols of the table that we do not read, each with the reason. */
  private static final Map<String, String> CHORDS_LEFT_OUT =
      Map.of(
          "4", "C4 is a pitch, and players have no symbol for a pile of fourths",
          "quartal", "as 4",
          "m11A", "nobody writes A for augmented in a symbol; m11#5 is read",
          "mb6M7", "nobody writes it; the same notes are Ab(#5)/C",
          "b9sus", "after a root the b belongs to it: Cb9sus stands on C flat; 7b9sus is read",
          "phryg", "a mode, not a suffix; 7b9sus is read",
          "h", "a letter H is a note in some countries; ø and m7b5 are read",
          "h7", "as h");

  /** Chord symbols that we read otherwise: the degrees we give them, then the reason. */
  private static final Map<String, String> CHORDS_READ_OTHERWISE =
      Map.ofEntries(
          Map.entry("^", "1 3 5 7: like Δ, a bare triangle is the major seventh"),
          Map.entry("^#5", "1 3 #5 7: as ^"),
          Map.entry("maj#4", "1 3 5 #11: there is no seventh in the symbol"),
          Map.entry("M7add13", "1 3 5 7 13: only what is written is added, not a ninth too"),
          Map.entry("alt7", "1 3 #5 b7 #9: the same chord as 7alt, in the table's own voicing"),
          Map.entry("6b5", "1 3 b5 6: a flat fifth takes the fifth's place"),
          Map.entry("M6b5", "1 3 b5 6: as 6b5"),
          Map.entry("7b5b13", "1 3 b5 b7 b13: as 6b5"),
          Map.entry("7b5#9", "1 3 b5 b7 #9: as 6b5"),
          Map.entry("7#9b5", "1 3 b5 b7 #9: as 6b5"),
          Map.entry("7b5b9", "1 3 b5 b7 b9: as 6b5"),
          Map.entry("7b9b5", "1 3 b5 b7 b9: as 6b5"),
          Map.entry("9b5b13", "1 3 b5 b7 9 b13: as 6b5"),
          Map.entry("7b5b9b13", "1 3 b5 b7 b9 b13: as 6b5"));

  /** Scale names of the table that we do not read, each with the reason. */
  private static final Map<String, String> SCALES_LEFT_OUT =
      Map.ofEntries(
          Map.entry("messiaen's mode #1", "a composer's numbering; whole tone is read"),
          Map.entry("messiaen's mode #2", "a composer's numbering; half-whole diminished is read"),
          Map.entry("messiaen's mode #3", "a composer's numbering, not used over changes"),
          Map.entry("messiaen's mode #4", "as mode 3"),
          Map.entry("messiaen's mode #5", "as mode 3"),
          Map.entry("messiaen's mode #6", "as mode 3"),
          Map.entry("messiaen's mode #7", "as mode 3"),
          Map.entry("pomeroy", "a teacher's name; altered is read"),
          Map.entry("scriabin", "a composer's set, not used over changes"),
          Map.entry("mystery #1", "as scriabin"),
          Map.entry(
              "superlocrian diminished", "too easily taken for altered; ultralocrian is read"),
          Map.entry("augmented heptatonic", "two fifths and no sixth: no usage found"),
          Map.entry("piongio", "no usage found"),
          Map.entry("ichikosucho", "court music with its own theory, not twelve equal steps"),
          Map.entry("malkos raga", "a raga is more than its notes"),
          Map.entry("todi raga", "as malkos raga"),
          Map.entry("purvi raga", "as malkos raga"),
          Map.entry("kafi raga", "as malkos raga"),
          Map.entry("hindu", "a people's name says nothing; mixolydian b6 is read"),
          Map.entry("indian", "as hindu; mixolydian pentatonic is read"),
          Map.entry("chinese", "as hindu; lydian pentatonic is read"),
          Map.entry("arabian", "as hindu; locrian major is read"),
          Map.entry("oriental", "as hindu"),
          Map.entry("gypsy", "as hindu; double harmonic major is read"),
          Map.entry("vietnamese 1", "as hindu"),
          Map.entry("vietnamese 2", "as hindu; minor pentatonic is read"));

  @Test
  void every_chord_symbol_of_the_table_gives_its_notes_on_35_roots() throws IOException {
    assertThat(Spellings.NAMES).hasSize(35).doesNotHaveDuplicates();
    for (Row row : rows("chord")) {
      for (String symbol : row.chordSymbols().toList()) {
        for (NoteName root : Spellings.NAMES) {
          List<NoteName> notes = Chord.parse(root + symbol).orElseThrow(() -> no(symbol)).notes();
          assertThat(notes).as(root + symbol).doesNotHaveDuplicates();
          assertThat(notes).as(root + symbol).containsExactlyInAnyOrderElementsOf(row.on(root));
        }
      }
    }
  }

  @Test
  void at_least_95_of_100_chord_rows_are_taken() throws IOException {
    List<Row> rows = rows("chord");
    List<Row> taken =
        rows.stream().filter(row -> row.chordSymbols().findAny().isPresent()).toList();

    assertThat(rows).hasSize(106);
    assertThat(taken).hasSize(101);
    assertThat(100.0 * taken.size() / rows.size()).isGreaterThanOrEqualTo(95);
  }

  @Test
  void the_chord_symbols_left_out_are_not_read() throws IOException {
    assertThat(rows("chord").stream().flatMap(row -> row.aliases().stream()))
        .containsAll(CHORDS_LEFT_OUT.keySet())
        .containsAll(CHORDS_READ_OTHERWISE.keySet());
    for (String symbol : CHORDS_LEFT_OUT.keySet()) {
      Optional<ChordQuality> quality = Chord.parse("C" + symbol).map(Chord::quality);
      assertThat(quality.map(ChordQuality::suffix)).as(symbol).isIn(Optional.empty(), NINE_SUS);
    }
  }

  @Test
  void the_chord_symbols_read_otherwise_have_the_degrees_stated() {
    CHORDS_READ_OTHERWISE.forEach(
        (symbol, why) ->
            assertThat(ChordQuality.parse(symbol).orElseThrow(() -> no(symbol)).intervals())
                .as(symbol)
                .hasToString("[" + why.substring(0, why.indexOf(':')).replace(" ", ", ") + "]"));
  }

  @Test
  void every_scale_of_the_table_gives_its_notes_on_35_roots() throws IOException {
    for (Row row : rows("scale")) {
      for (String name : row.scaleNames().toList()) {
        for (NoteName tonic : Spellings.NAMES) {
          String text = tonic + " " + name;
          assertThat(Scale.parse(text).orElseThrow(() -> no(text)).notes())
              .as(text)
              .isEqualTo(row.on(tonic));
        }
      }
    }
  }

  @Test
  void of_92_scales_76_are_taken_and_there_are_no_others() throws IOException {
    List<Row> rows = rows("scale");
    List<Row> taken = rows.stream().filter(row -> row.scaleNames().findAny().isPresent()).toList();

    assertThat(rows).hasSize(92);
    assertThat(taken).hasSize(76);
    assertThat(rows.stream().flatMap(Row::allNames)).containsAll(SCALES_LEFT_OUT.keySet());
    SCALES_LEFT_OUT.keySet().forEach(n -> assertThat(ScaleType.parse(n)).as(n).isEmpty());
    assertThat(ScaleType.ALL.stream().map(ScaleType::intervals))
        .containsExactlyInAnyOrderElementsOf(taken.stream().map(Row::intervals).toList());
  }

  private static AssertionError no(String name) {
    return new AssertionError(name + " is not read");
  }

  private static List<Row> rows(String kind) throws IOException {
    List<Row> rows = new ArrayList<>();
    for (String line : Files.readAllLines(TABLE)) {
      String[] columns = line.split("\t", -1);
      if (columns[0].equals(kind)) {
        rows.add(
            new Row(
                columns[1],
                Arrays.stream(columns[3].split(" ")).map(ReferenceTableTest::interval).toList(),
                columns[4].isEmpty() ? List.of() : List.of(columns[4].split("\\|"))));
      }
    }
    return rows;
  }

  /** An interval as the table writes it: number and quality, 3m a minor third, 4A augmented. */
  private static Interval interval(String text) {
    int number = Integer.parseInt(text.substring(0, text.length() - 1));
    boolean perfect = Set.of(1, 4, 5).contains((number - 1) % 7 + 1);
    int alteration =
        switch (text.charAt(text.length() - 1)) {
          case 'P', 'M' -> 0;
          case 'm' -> -1;
          case 'A' -> 1;
          default -> perfect ? -1 : -2;
        };
    return Interval.ofNumber(number, alteration);
  }
}
