package hingetone.hostile;

import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import hingetone.neck.Tuning;
import hingetone.theory.ChordQuality;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * A chart drawn by lot: every key of the format with any of its values beside any others, in any
 * order. What is drawn is right; {@link #flawed} makes one thing in it nearly right.
 */
final class ChartDrawing {
  private static final List<String> TONICS =
      List.of("C", "C#", "Db", "D", "D#", "Eb", "E", "F", "F#", "Gb", "G", "G#", "Ab", "A", "Bb");
  private static final List<String> MORE_TONICS =
      List.of("B", "Cb", "Fb", "E#", "B#", "A#", "F♯", "e", "b♭");
  private static final List<String> ROOTS =
      List.of("C", "Db", "D#", "E", "Fb", "F##", "Gb", "A", "Bbb", "B#", "Cb", "F♯", "G");
  private static final List<String> SUFFIXES = ChordQuality.suffixes();

  /** For roots that have two accidentals already. */
  private static final List<String> LETTER_SUFFIXES =
      SUFFIXES.stream().filter(suffix -> !suffix.matches("[b#♭♯].*")).toList();

  private static final List<Groove> GROOVES = Grooves.builtIn().all();
  private static final List<String> NAMES =
      List.of("low", "high", "tor", "Größe", "x3", "2", "a-b", "yes");
  private static final String LETTERS = "whqist";

  private final Random random;
  private final Map<String, String> top = new LinkedHashMap<>();
  private final Map<String, Map<String, String>> sections = new LinkedHashMap<>();
  private final Map<String, Meter> meters = new LinkedHashMap<>();
  private Meter usualMeter = Meter.COMMON;

  private ChartDrawing(Random random) {
    this.random = random;
  }

  /** The chart with a number; the same number gives the same chart. */
  static ChartDrawing of(long number) {
    ChartDrawing drawing = new ChartDrawing(new Random(number));
    drawing.drawTop();
    drawing.drawSections();
    drawing.drawRiffsOf();
    drawing.drawForm();
    return drawing;
  }

  private void drawTop() {
    sometimes(
        top, "title", pick(List.of("Copper stair", "\"Zwölf: # 'Türen'\"", "17", "'~'", "x")));
    sometimes(top, "tempo", tempo());
    meter(top);
    usualMeter = meterOf(top, Meter.COMMON);
    shared(top);
    sometimes(top, "count-in", "" + random.nextInt(5));
    sometimes(top, "instrument", pick(List.of("guitar", "bass", "Guitar")));
    sometimes(top, "tuning", tuning());
    sometimes(top, "capo", "" + random.nextInt(13));
    sometimes(top, "position", "" + (1 + random.nextInt(20)));
    sometimes(top, "seed", pick(List.of("1", "7", "-3", "0", "999999999999999999")));
  }

  /** What may stand at the top and in a section. */
  private void shared(Map<String, String> into) {
    sometimes(into, "band", pick(List.of("light", "normal", "full", "Full")));
    sometimes(into, "swing", 50 + random.nextInt(26) + "%");
    sometimes(into, "pickup", pick(List.of("1", "2", "3/2", "1/2", "0", "8")));
  }

  private void meter(Map<String, String> into) {
    if (random.nextInt(3) > 0) {
      return;
    }
    int denominator = pick(List.of(2, 4, 4, 4, 8, 8, 8, 16));
    Meter meter = Meter.of(1 + random.nextInt(random.nextInt(9) == 0 ? 32 : 12), denominator);
    into.put("meter", meter.numerator() + "/" + meter.denominator());
    if (random.nextBoolean()) {
      List<Integer> groups = new ArrayList<>();
      int left = meter.beatsPerBar();
      while (left > 0) {
        groups.add(Math.min(left, 1 + random.nextInt(4)));
        left -= groups.get(groups.size() - 1);
      }
      into.put("grouping", joined(groups, "+"));
    }
  }

  private static Meter meterOf(Map<String, String> keys, Meter usual) {
    return keys.containsKey("meter") ? Meter.parse(keys.get("meter")).orElseThrow() : usual;
  }

  private String tempo() {
    return pick(List.of("20", "400", "112", "96.5", "132.25", "" + (20 + random.nextInt(381))));
  }

  private String tuning() {
    if (random.nextBoolean()) {
      return pick(Tuning.NAMED).name();
    }
    int strings = Tuning.FEWEST_STRINGS + random.nextInt(6);
    List<String> notes = new ArrayList<>();
    for (int i = 0; i < strings; i++) {
      notes.add(pick(List.of("C", "D", "Eb", "F#", "G", "A", "Bb")) + (1 + (i + 2) / 2));
    }
    return random.nextBoolean() ? joined(notes, " ") : "[" + joined(notes, ", ") + "]";
  }

  private void drawSections() {
    List<String> names = new ArrayList<>(NAMES);
    Collections.shuffle(names, random);
    for (String name : names.subList(0, 1 + random.nextInt(3))) {
      Map<String, String> keys = new LinkedHashMap<>();
      keys.put("key", key());
      sometimes(keys, "tempo", tempo());
      meter(keys);
      Meter meter = meterOf(keys, usualMeter);
      sometimes(keys, "groove", pick(GROOVES.stream().filter(g -> g.fits(meter)).toList()).name());
      shared(keys);
      int bars = 1 + random.nextInt(random.nextInt(40) == 0 ? 24 : 4);
      keys.put("bars", bars(meter, bars));
      sometimes(keys, "phrases", phrases());
      sometimes(keys, "leave", joined(some(3, List.of("run", "hold", "either", "Run")), ", "));
      if (random.nextInt(4) == 0) {
        keys.put("riff", riff(meter, bars));
      }
      meters.put(name, meter);
      sections.put(name, shuffled(keys));
    }
  }

  private String key() {
    String tonic = random.nextInt(4) == 0 ? pick(MORE_TONICS) : pick(TONICS);
    return tonic + " " + pick(Key.MODES).name();
  }

  private String phrases() {
    List<String> turns = new ArrayList<>();
    for (int i = 0; i <= random.nextInt(5); i++) {
      String role = pick(List.of("statement", "statement", "reply", "reply", "rest", "Statement"));
      String again = role.endsWith("tatement") && random.nextInt(3) == 0 ? " again" : "";
      turns.add(role + " " + (1 + random.nextInt(random.nextInt(9) == 0 ? 12 : 3)) + again);
    }
    return random.nextBoolean() ? joined(turns, ", ") : "[" + joined(turns, ", ") + "]";
  }

  private String bars(Meter meter, int count) {
    StringBuilder text = new StringBuilder("|\n      ");
    boolean repeats = random.nextInt(5) == 0;
    text.append(repeats ? "|:" : "|");
    for (int i = 0; i < count; i++) {
      String bar = i > 0 && random.nextInt(6) == 0 ? "%" : bar(meter);
      boolean turns = i > 0 && i % 4 == 0 && !repeats;
      text.append(turns ? "\n      |" : "").append(' ').append(bar);
      text.append(i + 1 < count ? " |" : repeats ? " :|" : " |");
    }
    if (repeats && random.nextBoolean()) {
      text.append(" x").append(2 + random.nextInt(3));
    }
    return text + (random.nextInt(9) == 0 ? " # home" : "");
  }

  private String bar(Meter meter) {
    int beats = meter.beatsPerBar();
    if (random.nextInt(3) == 0) {
      List<String> marks = new ArrayList<>(List.of(chord()));
      for (int beat = 1; beat < beats; beat++) {
        marks.add(random.nextInt(4) == 0 ? chord() : "/");
      }
      return joined(marks, " ");
    }
    List<Integer> shares =
        IntStream.rangeClosed(1, beats).filter(n -> beats % n == 0).boxed().toList();
    int chords = random.nextInt(3) == 0 ? pick(shares) : 1;
    return IntStream.range(0, chords).mapToObj(i -> chord()).collect(Collectors.joining(" "));
  }

  private String chord() {
    if (random.nextInt(25) == 0) {
      return "N.C.";
    }
    String bass = random.nextInt(8) == 0 ? "/" + pick(ROOTS) : "";
    String root = pick(ROOTS);
    boolean full = root.length() > 2;
    return root + pick(full ? LETTER_SUFFIXES : SUFFIXES) + bass;
  }

  /** One line or both, each of whole bars, not longer than the section. */
  private String riff(Meter meter, int bars) {
    int which = random.nextInt(3);
    String bass = which == 1 ? "" : "\n      bass: " + line(meter, bars, 1);
    String chords = which == 0 ? "" : "\n      chords: " + line(meter, bars, 1 + random.nextInt(3));
    return bass + chords;
  }

  private String line(Meter meter, int bars, int together) {
    Beats left = meter.barLength().times(1 + random.nextInt(Math.min(3, bars)));
    List<String> notes = new ArrayList<>();
    while (left.isPositive()) {
      NoteValue value = fitting(left);
      notes.add(value.written.equals("3") ? triplet(together) : note(value.written, together));
      left = left.minus(value.length);
      if (random.nextInt(7) == 0) {
        notes.add("|");
      }
    }
    return joined(notes, " ");
  }

  /** How a length is written in note text; {@code 3} stands for a triplet of eighths. */
  private record NoteValue(String written, Beats length) {}

  private NoteValue fitting(Beats left) {
    List<NoteValue> values = new ArrayList<>();
    for (int i = 0; i < LETTERS.length(); i++) {
      Beats plain = Beats.of(4, 1L << i);
      String letter = LETTERS.substring(i, i + 1);
      values.add(new NoteValue(letter, plain));
      if (i + 1 < LETTERS.length()) {
        values.add(new NoteValue(letter + ".", plain.times(Beats.of(3, 2))));
      }
    }
    values.add(new NoteValue("qi", Beats.of(3, 2)));
    values.add(new NoteValue("3", Beats.ONE));
    return pick(values.stream().filter(v -> !v.length.isAfter(left)).toList());
  }

  private String triplet(int together) {
    return joined(List.of(note("i*", together), note("i*", 1), note("i*", together)), " ");
  }

  private String note(String length, int together) {
    if (random.nextInt(6) == 0) {
      return "R" + length;
    }
    if (random.nextInt(12) == 0 && length.equals("h")) {
      String tied = pitch(0);
      return tied + "q- " + tied + "-q";
    }
    String loud = random.nextInt(5) == 0 ? "a" + (1 + random.nextInt(127)) : "";
    return IntStream.range(0, 1 + random.nextInt(together))
        .mapToObj(i -> pitch(i) + length + loud)
        .collect(Collectors.joining("+"));
  }

  private String pitch(int higher) {
    String octave = "" + (random.nextInt(9) == 0 ? random.nextInt(9) : 2 + higher);
    return pick(List.of("C", "D", "Eb", "F#", "G", "a", "Bb", "b", "Cb", "E#", "Abb")) + octave;
  }

  /** A section without a riff may play that of another whose riff is whole bars in its meter. */
  private void drawRiffsOf() {
    for (String to : sections.keySet()) {
      List<String> from =
          sections.keySet().stream()
              .filter(name -> !name.equals(to) && sections.get(name).containsKey("riff"))
              .filter(name -> meters.get(name).barLength().equals(meters.get(to).barLength()))
              .toList();
      if (!from.isEmpty() && !sections.get(to).containsKey("riff") && random.nextInt(3) > 0) {
        sections.get(to).put("riff-of", pick(from) + (random.nextInt(3) == 0 ? " exactly" : ""));
      }
    }
  }

  private void drawForm() {
    List<String> names = List.copyOf(sections.keySet());
    if (random.nextBoolean()) {
      List<String> form = some(random.nextInt(9) == 0 ? 9 : 3, names);
      top.put("form", random.nextBoolean() ? joined(form, " ") : "[" + joined(form, ", ") + "]");
    }
  }

  /** The chart as text. */
  String text() {
    StringBuilder text = new StringBuilder();
    Map<String, String> all = new LinkedHashMap<>(top);
    all.put("sections", "");
    shuffled(all)
        .forEach(
            (key, value) -> {
              text.append(key).append(": ").append(value).append('\n');
              if (key.equals("sections")) {
                sections.forEach((name, keys) -> section(text, name, keys));
              }
            });
    return text.toString();
  }

  private static void section(StringBuilder text, String name, Map<String, String> keys) {
    text.append("  \"").append(name).append("\":\n");
    keys.forEach((k, v) -> text.append("    ").append(k).append(": ").append(v).append('\n'));
  }

  /** The same chart with one thing wrong, or unusual: another one for another turn. */
  String flawed(int turn) {
    IntStream.range(0, 1 + turn).forEach(i -> random.nextLong());
    List<Map<String, String>> places = new ArrayList<>(sections.values());
    places.add(top);
    Map<String, String> place = pick(places.stream().filter(keys -> !keys.isEmpty()).toList());
    String key = pick(List.copyOf(place.keySet()));
    switch (random.nextInt(9)) {
      case 0 -> place.remove(key);
      case 1 -> place.put(key.toUpperCase(Locale.ROOT), place.remove(key));
      case 2 ->
          place.put(key, pick(pick(places.stream().filter(k -> !k.isEmpty()).toList()).values()));
      case 3 ->
          place.put(key, pick(List.of("", "[]", "{}", "~", "-1", "[1, [2]]", "{key: C minor}")));
      case 4 -> place.put(key, pick(List.of("1e3", "0x1F", "1/0", "999", "\"\"", "'\"'", "50")));
      case 5 -> place.put(key, doubled(place.get(key)));
      case 6 -> place.put(key, cut(place.get(key)));
      case 7 -> place.put(key.substring(1) + key.charAt(0), place.get(key));
      default -> place.put(pick(List.of("riff-of", "form", "capo", "bars", "key")), place.get(key));
    }
    return text();
  }

  private static String doubled(String value) {
    return value + " " + value.replace("|\n", "");
  }

  private String cut(String value) {
    int at = random.nextInt(value.length() + 1);
    return value.substring(0, at) + value.substring(Math.min(value.length(), at + 1));
  }

  private void sometimes(Map<String, String> into, String key, String value) {
    if (random.nextInt(3) == 0) {
      into.put(key, value);
    }
  }

  private List<String> some(int most, List<String> from) {
    return IntStream.rangeClosed(0, random.nextInt(most)).mapToObj(i -> pick(from)).toList();
  }

  private Map<String, String> shuffled(Map<String, String> keys) {
    List<String> order = new ArrayList<>(keys.keySet());
    Collections.shuffle(order, random);
    Map<String, String> other = new LinkedHashMap<>();
    order.forEach(key -> other.put(key, keys.get(key)));
    return other;
  }

  private <T> T pick(Collection<T> from) {
    return List.copyOf(from).get(random.nextInt(from.size()));
  }

  private static String joined(List<?> parts, String between) {
    return parts.stream().map(Object::toString).collect(Collectors.joining(between));
  }
}
