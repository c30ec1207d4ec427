package hingetone.notation;

import hingetone.text.reading.Span;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One note or rest of a note text, already known to be safe for JFugue.
 *
 * @param span its place in the source
 * @param text as JFugue reads it: upper case, octaves one higher than scientific
 * @param length in quarter notes
 * @param key MIDI number; -1 for a rest
 * @param tieFrom whether it continues a note before it
 * @param tieOn whether it continues in a note after it
 */
record Token(Span span, String text, Beats length, int key, boolean tieFrom, boolean tieOn) {
  private static final int REST = -1;
  private static final Pattern SHAPE =
      Pattern.compile(
          "(?<head>R|[A-G](?:#{1,2}|B{1,2})?[0-9])(?<from>-?)(?<length>[WHQISTXO]\\.|[WHQISTXO]{1,6})"
              + "(?<tuplet>\\*(?:[0-9]{1,2}:[0-9]{1,2})?)?(?<on>-?)(?<attack>A[0-9]{1,3})?");
  private static final String LENGTHS = "WHQISTXO";

  /** A word that is not a note: what is wrong with it and what would be right. */
  static final class NotANote extends Exception {
    private final String expected;

    NotANote(String message, String expected) {
      super(message);
      this.expected = expected;
    }

    String expected() {
      return expected;
    }
  }

  /** Reads one note or rest; the word is as the writer wrote it. */
  static Token read(String word, Span span) throws NotANote {
    Matcher m = SHAPE.matcher(upperCase(word));
    if (!m.matches()) {
      throw Complaint.about(word);
    }
    int key = keyOf(m.group("head"));
    Beats length = lengthOf(m.group("length")).times(tuplet(m.group("tuplet")));
    boolean tieFrom = !m.group("from").isEmpty();
    boolean tieOn = !m.group("on").isEmpty();
    if (key == REST && (tieFrom || tieOn || m.group("attack") != null)) {
      throw new NotANote(
          "a rest has no tie and no loudness", "Write a rest with its length alone: Rq.");
    }
    if (key > 127) {
      throw new NotANote("\"" + word + "\" is too high", "The highest note is G9.");
    }
    if (m.group("attack") != null) {
      checkAttack(m.group("attack"));
    }
    return new Token(span, jfugueText(m), length, key, tieFrom, tieOn);
  }

  /** Only ASCII letters change: dotless i and its like stay and are no notes. */
  private static String upperCase(String word) {
    return word.chars().allMatch(c -> c < 128) ? word.toUpperCase(Locale.ROOT) : word;
  }

  private static String jfugueText(Matcher m) {
    String head = m.group("head");
    if (!head.equals("R")) {
      int octave = head.charAt(head.length() - 1) - '0';
      head = head.substring(0, head.length() - 1) + (octave + 1);
    }
    String attack = m.group("attack") == null ? "" : m.group("attack");
    String tuplet = m.group("tuplet") == null ? "" : m.group("tuplet");
    // JFugue wants the tie before the tuplet.
    return head + m.group("from") + m.group("length") + m.group("on") + tuplet + attack;
  }

  private static int keyOf(String head) {
    if (head.equals("R")) {
      return REST;
    }
    int key = "C D EF G A B".indexOf(head.charAt(0)) + 12 * (head.charAt(head.length() - 1) - '/');
    int sharps = (int) head.chars().filter(c -> c == '#').count();
    int flats = (int) head.chars().skip(1).filter(c -> c == 'B').count();
    return key + sharps - flats;
  }

  /** One letter with a dot, or the sum of several letters, in quarter notes. */
  private static Beats lengthOf(String letters) {
    if (letters.endsWith(".")) {
      return lengthOf(letters.substring(0, 1)).times(Beats.of(3, 2));
    }
    return letters
        .chars()
        .mapToObj(letter -> Beats.of(4, 1L << LENGTHS.indexOf(letter)))
        .reduce(Beats.ZERO, Beats::plus);
  }

  private static Beats tuplet(String tuplet) throws NotANote {
    if (tuplet == null) {
      return Beats.ONE;
    }
    if (tuplet.equals("*")) {
      return Beats.of(2, 3);
    }
    String[] parts = tuplet.substring(1).split(":");
    int time = Integer.parseInt(parts[0]);
    int notes = Integer.parseInt(parts[1]);
    if (time < 1 || notes <= time) {
      throw new NotANote(
          "\"" + tuplet + "\" is no tuplet",
          "A tuplet is *2:3, in the time of two three notes; * alone means that.");
    }
    return Beats.of(time, notes);
  }

  private static void checkAttack(String attack) throws NotANote {
    int velocity = Integer.parseInt(attack.substring(1));
    if (velocity < 1 || velocity > 127) {
      throw new NotANote("no such loudness: " + velocity, "Loudness is a1 to a127, as in C4qa90.");
    }
  }

  boolean isRest() {
    return key == REST;
  }

  /** The names of the notes in a text where they are joined by {@code +}, each with its place. */
  static List<Span> split(String group, Span span) {
    List<Span> parts = new ArrayList<>();
    int start = 0;
    for (int plus = group.indexOf('+'); plus >= 0; plus = group.indexOf('+', start)) {
      parts.add(span.part(start, plus));
      start = plus + 1;
    }
    parts.add(span.part(start, group.length()));
    return parts;
  }
}
