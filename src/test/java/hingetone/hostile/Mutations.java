package hingetone.hostile;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import java.util.function.BiConsumer;

/**
 * Texts that were right once, damaged: cut, doubled, mixed with each other, sprinkled with signs
 * and words that mean something elsewhere. The same seed and number give the same text.
 */
final class Mutations {
  private static final int LONGEST = 20_000;
  private static final String SIGNS =
      "|:/%#-.,'\"[]{}()&*!?>@`\\\t \n\r\0b♯♭Δ°ø+0123456789xXABCDEFGHNRqhistw~^$=é中🎸\u0301\uFEFF\u2028";
  private static final List<String> WORDS =
      List.of(
          "sections:",
          "bars: |",
          "key:",
          "form:",
          "riff:",
          "riff-of:",
          "bass: |",
          "phrases:",
          "leave:",
          "tempo:",
          "meter:",
          "grouping:",
          "swing:",
          "pickup:",
          "capo:",
          "tuning:",
          "seed:",
          "title:",
          "C minor",
          "Fbb locrian",
          "B## lydian",
          "12/8",
          "7/8",
          "0/4",
          "99/4",
          "4/0",
          "2+2+3",
          "-1",
          "999999999999999999999",
          "1e9",
          "0x10",
          "NaN",
          "null",
          "~",
          "true",
          "50%",
          "3/2",
          "1/0",
          "2147483648",
          "-9223372036854775808",
          "|: Cm7 :| x3",
          "x999999999",
          ":|",
          "|:",
          "||",
          "N.C.",
          "G7(b9,#11)/B",
          "C6/9/E",
          "Cmj7",
          "C###",
          "Cm7 / / / / / / / /",
          "statement 2 again",
          "reply 99",
          "rest 0",
          "run, hold",
          "C4h+E4h",
          "Bb9w",
          "Rq",
          "C2q*5:4",
          "C-1q",
          "G9wwwwww",
          "C4q- C4-q",
          "I[Piano]",
          "$A=B",
          "&a",
          "*a",
          "!!binary",
          "<<: *a",
          "--- ",
          "...",
          "? ",
          "- ",
          "drums:",
          "steps:",
          "lanes:",
          "feel:",
          "fills:",
          "meters:",
          "program:",
          "X.g.x...",
          "statements:",
          "notes: |",
          "E4i G4i A4i- | A4-q",
          "20-400",
          "\r\n",
          "    ",
          "\t",
          "# ");

  private final List<String> texts;
  private final long seed;
  private final List<BiConsumer<StringBuilder, Random>> damages =
      List.of(
          this::deleteSign,
          this::insertSign,
          this::replaceSign,
          this::insertSign,
          this::insertWord,
          this::insertWord,
          this::replaceWord,
          this::replaceWord,
          this::changeNumber,
          this::deleteStretch,
          this::repeatStretch,
          this::deleteLine,
          this::doubleLine,
          this::indentLine,
          this::insertOther,
          this::truncate);

  Mutations(List<String> texts, long seed) {
    this.texts = List.copyOf(texts);
    this.seed = seed;
  }

  /** One damaged text, in bytes: UTF-8 but in one case of sixteen, where bytes change too. */
  byte[] text(long number) {
    Random random = new Random(seed * 1_000_003 + number);
    random.nextInt();
    StringBuilder text = new StringBuilder(any(texts, random));
    for (int left = 1 + random.nextInt(6); left > 0; left--) {
      any(damages, random).accept(text, random);
      text.setLength(Math.min(text.length(), LONGEST));
    }
    byte[] bytes = text.toString().getBytes(StandardCharsets.UTF_8);
    if (bytes.length > 0 && random.nextInt(16) == 0) {
      bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
    }
    return bytes;
  }

  private void deleteSign(StringBuilder text, Random random) {
    int at = place(text, random);
    text.delete(at, Math.min(at + 1, text.length()));
  }

  private void insertSign(StringBuilder text, Random random) {
    text.insert(place(text, random), sign(random));
  }

  private void replaceSign(StringBuilder text, Random random) {
    int at = place(text, random);
    text.replace(at, Math.min(at + 1, text.length()), "" + sign(random));
  }

  private void insertWord(StringBuilder text, Random random) {
    text.insert(place(text, random), " " + any(WORDS, random) + " ");
  }

  private void replaceWord(StringBuilder text, Random random) {
    int start = place(text, random);
    while (start > 0 && !Character.isWhitespace(text.charAt(start - 1))) {
      start--;
    }
    int end = start;
    while (end < text.length() && !Character.isWhitespace(text.charAt(end))) {
      end++;
    }
    text.replace(start, end, any(WORDS, random));
  }

  private void changeNumber(StringBuilder text, Random random) {
    int at = place(text, random);
    while (at < text.length() && !Character.isDigit(text.charAt(at))) {
      at++;
    }
    text.replace(at, Math.min(at + 1, text.length()), "" + random.nextInt(1 << random.nextInt(31)));
  }

  private void deleteStretch(StringBuilder text, Random random) {
    int at = place(text, random);
    text.delete(at, Math.min(text.length(), at + random.nextInt(40)));
  }

  private void repeatStretch(StringBuilder text, Random random) {
    int at = place(text, random);
    String stretch = text.substring(at, Math.min(text.length(), at + 1 + random.nextInt(30)));
    text.insert(at, stretch.repeat(1 + random.nextInt(1 << random.nextInt(8))));
  }

  private void deleteLine(StringBuilder text, Random random) {
    int start = lineStart(text, random);
    text.delete(start, lineEnd(text, start));
  }

  private void doubleLine(StringBuilder text, Random random) {
    int start = lineStart(text, random);
    text.insert(lineStart(text, random), text.substring(start, lineEnd(text, start)));
  }

  private void indentLine(StringBuilder text, Random random) {
    int start = lineStart(text, random);
    if (random.nextBoolean()) {
      text.insert(start, " ".repeat(1 + random.nextInt(4)));
    } else {
      text.delete(start, Math.min(text.length(), start + 1 + random.nextInt(4)));
    }
  }

  private void insertOther(StringBuilder text, Random random) {
    String other = any(texts, random);
    int from = random.nextInt(other.length());
    int to = Math.min(other.length(), from + random.nextInt(300));
    text.insert(place(text, random), other, from, to);
  }

  private void truncate(StringBuilder text, Random random) {
    if (random.nextInt(4) == 0) {
      text.setLength(place(text, random));
    }
  }

  private static int place(StringBuilder text, Random random) {
    return random.nextInt(text.length() + 1);
  }

  private static int lineStart(StringBuilder text, Random random) {
    return text.lastIndexOf("\n", place(text, random) - 1) + 1;
  }

  private static int lineEnd(StringBuilder text, int start) {
    int end = text.indexOf("\n", start);
    return end < 0 ? text.length() : end + 1;
  }

  private static char sign(Random random) {
    return SIGNS.charAt(random.nextInt(SIGNS.length()));
  }

  private static <T> T any(List<T> things, Random random) {
    return things.get(random.nextInt(things.size()));
  }
}
