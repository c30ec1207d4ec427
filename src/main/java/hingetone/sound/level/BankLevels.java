package hingetone.sound.level;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * How loud the sounds of a bank are, each measured with a phrase of its kind: integrated loudness
 * in LUFS, negative infinity for silence. What is not measured is not there.
 *
 * @param programs by General MIDI program, 0 to 127
 * @param drums by key of the standard drum kit, 0 to 127
 */
public record BankLevels(Map<Integer, Double> programs, Map<Integer, Double> drums) {
  /** Nothing measured. */
  public static final BankLevels NONE = new BankLevels(Map.of(), Map.of());

  /** By how much a sound may be raised and lowered, in dB; what lies further off is a noise. */
  static final double MOST_RAISED = 12;

  private static final double MOST_LOWERED = -24;

  private static final String PROGRAM = "program";
  private static final String DRUM = "drum";

  /** The drums that carry: bass drum 1 and acoustic snare. */
  private static final int[] CARRYING = {36, 38};

  public BankLevels {
    programs = Map.copyOf(programs);
    drums = Map.copyOf(drums);
  }

  /** Read when it is first wanted. */
  private static final class Usual {
    static final BankLevels LEVELS = shipped("usual").read();
  }

  /** Figures that come with the program, where they do. */
  private record Shipped(InputStream stream) {
    BankLevels read() {
      try (stream) {
        return parse(new String(stream.readAllBytes(), StandardCharsets.UTF_8));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  private static Shipped shipped(String name) {
    return new Shipped(BankLevels.class.getResourceAsStream("/levels/" + name + ".txt"));
  }

  /** What the levels written in grooves and parts reckon with. */
  public static BankLevels usual() {
    return Usual.LEVELS;
  }

  /** The figures that the program brings of a bank; none where it does not know the bank. */
  public static BankLevels shippedOf(String checksum) {
    Shipped shipped = shipped(checksum);
    return shipped.stream() == null ? NONE : shipped.read();
  }

  /**
   * Reads what {@link #text} wrote.
   *
   * @throws IllegalArgumentException when it is something else
   */
  public static BankLevels parse(String text) {
    Map<Integer, Double> programs = new TreeMap<>();
    Map<Integer, Double> drums = new TreeMap<>();
    for (String line : text.lines().toList()) {
      String[] words = line.split(" ");
      if (words.length != 3 || !(words[0].equals(PROGRAM) || words[0].equals(DRUM))) {
        throw new IllegalArgumentException("no figure: " + line);
      }
      (words[0].equals(DRUM) ? drums : programs)
          .put(Integer.valueOf(words[1]), Double.valueOf(words[2]));
    }
    return new BankLevels(programs, drums);
  }

  /** A line for each sound: its kind, its number, its loudness to a tenth of a dB. */
  public String text() {
    return Stream.concat(lines(PROGRAM, programs), lines(DRUM, drums))
        .map(line -> line + "\n")
        .reduce("", String::concat);
  }

  private static Stream<String> lines(String kind, Map<Integer, Double> figures) {
    return new TreeMap<>(figures)
        .entrySet().stream()
            .map(
                figure ->
                    String.format(
                        Locale.ROOT, "%s %d %s", kind, figure.getKey(), number(figure.getValue())));
  }

  private static String number(double value) {
    return Double.isInfinite(value)
        ? Double.toString(value)
        : String.format(Locale.ROOT, "%.1f", value);
  }

  /** These and more; what is in both is taken from the others. */
  public BankLevels with(BankLevels others) {
    return new BankLevels(both(programs, others.programs), both(drums, others.drums));
  }

  private static Map<Integer, Double> both(Map<Integer, Double> one, Map<Integer, Double> other) {
    Map<Integer, Double> both = new TreeMap<>(one);
    both.putAll(other);
    return both;
  }

  /** What brings a program to the loudness reckoned with, in dB; 0 where it is not known. */
  public double trim(int program) {
    return trim(programs, Usual.LEVELS.programs, program).orElse(0);
  }

  /** What brings the drums that carry to the loudness reckoned with, on average, in dB. */
  public double kitTrim() {
    return IntStream.of(CARRYING)
        .mapToObj(key -> trim(drums, Usual.LEVELS.drums, key))
        .flatMapToDouble(OptionalDouble::stream)
        .average()
        .orElse(0);
  }

  /** What a drum needs more than the whole kit, in dB. */
  public double drumTrim(int key) {
    double kit = kitTrim();
    return trim(drums, Usual.LEVELS.drums, key).orElse(kit) - kit;
  }

  private static OptionalDouble trim(
      Map<Integer, Double> measured, Map<Integer, Double> usual, int number) {
    double trim =
        usual.getOrDefault(number, Double.NaN) - measured.getOrDefault(number, Double.NaN);
    return Double.isFinite(trim)
        ? OptionalDouble.of(Math.max(MOST_LOWERED, Math.min(MOST_RAISED, trim)))
        : OptionalDouble.empty();
  }
}
