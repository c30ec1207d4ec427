package hingetone.theory;

import hingetone.text.Page;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The page on names with its tables made from the code. Run it to write them anew. */
final class NamesPage {
  static final Path FILE = Path.of("src/docs/names.md");

  private static final Map<String, List<List<String>>> TABLES =
      Map.of(
          "readable", readable(),
          "twelve", twelve(),
          "symbols", symbols(),
          "words", words(),
          "qualities", qualities(),
          "alterations", alterations(),
          "scales", scales(),
          "keys", keys());

  private NamesPage() {}

  public static void main(String[] arguments) throws IOException {
    Files.writeString(FILE, withTables(Files.readString(FILE)));
  }

  /** The page with all its tables as the code has them now. */
  static String withTables(String page) {
    for (Map.Entry<String, List<List<String>>> table : TABLES.entrySet()) {
      page = Page.withTable(page, table.getKey(), markdown(table.getValue()));
    }
    return page;
  }

  private static List<List<String>> readable() {
    List<String> strict = List.of("F##", "E#", "B#", "Cb", "Fb", "Bbb", "B##", "Ebb", "A#", "Gb");
    List<List<String>> rows = new ArrayList<>(List.of(List.of("strict", "for people")));
    strict.forEach(n -> rows.add(List.of(code(n), code(Spellings.name(n).simplified()))));
    return rows;
  }

  private static List<List<String>> twelve() {
    List<List<String>> rows = new ArrayList<>(List.of(List.of("key", "its names for the twelve")));
    for (String text :
        List.of("D minor", "G blues", "Bb minor", "F# minor", "C major", "Eb major")) {
      Key key = Key.parse(text).orElseThrow();
      int tonic = key.tonic().chroma();
      rows.add(
          List.of(
              text, spaced(IntStream.range(0, 12).mapToObj(i -> named(key, tonic + i)).toList())));
    }
    return rows;
  }

  private static NoteName named(Key key, int chroma) {
    return key.spellChroma(chroma % 12);
  }

  private static List<List<String>> symbols() {
    String written =
        "Dm7 DMin7 D-7 CΔ Cmaj7 CM7 Cm7 C° Cø Caug C+7 D7#9 C7♯9 C7(#9,b13) C7#11b9 Calt C9sus Cm(maj7)"
            + " C2 C6/9 C6/9/E Bb13 D/F# C(b5) Cb5 F#m7-5 C7no3";
    List<List<String>> rows =
        new ArrayList<>(List.of(List.of("written", "read as", "notes", "lowest")));
    for (String symbol : written.split(" ")) {
      Chord chord = Chord.parse(symbol).orElseThrow();
      rows.add(
          List.of(code(symbol), code(chord), spaced(chord.notes()), chord.lowest().toString()));
    }
    return rows;
  }

  private static List<List<String>> words() {
    List<List<String>> rows = new ArrayList<>(List.of(List.of("word", "also")));
    ChordSpelling.WORDS.forEach(
        w -> rows.add(List.of(code(w.get(0)), codes(w.subList(1, w.size())))));
    return rows;
  }

  private static List<List<String>> qualities() {
    List<List<String>> rows =
        new ArrayList<>(List.of(List.of("suffix", "degrees", "on C", "also")));
    for (ChordQuality quality : ChordQuality.ALL) {
      Chord chord = new Chord(Spellings.name("C"), quality, Optional.empty());
      rows.add(
          List.of(
              quality.suffix().isEmpty() ? "(none)" : code(quality),
              spaced(quality.intervals()),
              spaced(chord.notes()),
              codes(quality.aliases())));
    }
    return rows;
  }

  private static List<List<String>> alterations() {
    List<List<String>> rows =
        new ArrayList<>(List.of(List.of("alteration", "brings", "in place of the", "also")));
    for (Alteration alteration : Alteration.ALL) {
      rows.add(
          List.of(
              code(alteration.name()),
              alteration.adds().map(Interval::toString).orElse(""),
              alteration.replaces() == 0 ? "" : "" + alteration.replaces(),
              codes(alteration.aliases())));
    }
    return rows;
  }

  private static List<List<String>> scales() {
    List<List<String>> rows = new ArrayList<>(List.of(List.of("name", "degrees", "on C", "also")));
    for (ScaleType type : ScaleType.ALL) {
      Scale scale = new Scale(Spellings.name("C"), type);
      rows.add(
          List.of(
              type.name(),
              spaced(type.intervals()),
              spaced(scale.notes()),
              String.join(", ", type.aliases())));
    }
    return rows;
  }

  private static List<List<String>> keys() {
    List<String> modes = Key.MODES.stream().map(ScaleType::name).toList();
    List<List<String>> rows = new ArrayList<>();
    rows.add(Stream.concat(Stream.of("signature"), modes.stream()).toList());
    for (int signature = -7; signature <= 7; signature++) {
      int sharps = signature;
      Stream<String> tonics = Key.MODES.stream().map(mode -> tonic(mode, sharps).toString());
      rows.add(Stream.concat(Stream.of(signature(sharps)), tonics).toList());
    }
    return rows;
  }

  private static NoteName tonic(ScaleType mode, int signature) {
    Key onC = new Key(Spellings.name("C"), mode);
    return NoteName.ofFifths(signature - onC.signature());
  }

  private static String signature(int sharps) {
    return sharps == 0 ? "none" : Math.abs(sharps) + (sharps < 0 ? " flat" : " sharp");
  }

  private static String markdown(List<List<String>> rows) {
    StringBuilder text = new StringBuilder();
    for (List<String> row : rows) {
      text.append("| ").append(String.join(" | ", row)).append(" |\n");
      if (row == rows.get(0)) {
        text.append("|").append("---|".repeat(row.size())).append('\n');
      }
    }
    return text.toString();
  }

  private static String code(Object name) {
    return "`" + name + "`";
  }

  private static String codes(List<String> names) {
    return names.stream().map(NamesPage::code).collect(Collectors.joining(" "));
  }

  private static String spaced(List<?> things) {
    return things.stream().map(Object::toString).collect(Collectors.joining(" "));
  }
}
