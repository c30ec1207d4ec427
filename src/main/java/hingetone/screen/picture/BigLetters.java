package hingetone.screen.picture;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/**
 * Block letters for chord symbols and counts, readable from across a room.
 *
 * <p>A letter is six dots high and at most five wide. Where half blocks can be drawn, a cell holds
 * two dots one above the other, which makes a dot square; in ASCII a dot is a cell.
 */
public final class BigLetters {
  private static final int DOTS_HIGH = 6;
  private static final Map<Integer, String[]> LETTERS = new HashMap<>();

  static {
    letter("A", ".##. #..# #..# #### #..# #..#");
    letter("B", "###. #..# ###. #..# #..# ###.");
    letter("C", ".### #... #... #... #... .###");
    letter("D", "###. #..# #..# #..# #..# ###.");
    letter("E", "#### #... ###. #... #... ####");
    letter("F", "#### #... ###. #... #... #...");
    letter("G", ".### #... #.## #..# #..# .###");
    letter("M", "#...# ##.## #.#.# #...# #...# #...#");
    letter("N", "#..# ##.# ##.# #.## #.## #..#");
    letter("a", ".... .... .### #..# #..# .###");
    letter("b", "#... #... ###. #..# #..# ###.");
    letter("d", "...# ...# .### #..# #..# .###");
    letter("g", ".... .### #..# .### ...# ###.");
    letter("i", "# . # # # #");
    letter("j", "..# ... ..# ..# ..# ##.");
    letter("l", "# # # # # #");
    letter("m", "..... ..... ##.#. #.#.# #.#.# #.#.#");
    letter("o", ".... .... .##. #..# #..# .##.");
    letter("s", ".... .... .### ##.. ..## ###.");
    letter("t", ".#. ### .#. .#. .#. .##");
    letter("u", ".... .... #..# #..# #..# .###");
    letter("0", ".##. #..# #..# #..# #..# .##.");
    letter("1", ".#. ##. .#. .#. .#. ###");
    letter("2", "###. ...# ..#. .#.. #... ####");
    letter("3", "###. ...# .##. ...# ...# ###.");
    letter("4", "..#. .##. #.#. #### ..#. ..#.");
    letter("5", "#### #... ###. ...# ...# ###.");
    letter("6", ".##. #... ###. #..# #..# .##.");
    letter("7", "#### ...# ..#. ..#. .#.. .#..");
    letter("8", ".##. #..# .##. #..# #..# .##.");
    letter("9", ".##. #..# .### ...# ...# .##.");
    letter("#", ".#.#. ##### .#.#. .#.#. ##### .#.#.");
    letter("/", "...# ...# ..#. .#.. #... #...");
    letter("+", "... ... .#. ### .#. ...");
    letter("-", "... ... ... ### ... ...");
    letter(".", ". . . . . #");
    letter("(", ".# #. #. #. #. .#");
    letter(")", "#. .# .# .# .# #.");
    letter("°", ".#. #.# .#. ... ... ...");
    letter("Δ", "..... ..#.. .#.#. .#.#. #...# #####");
    letter("ø", ".... .... .### #.## ##.# ###.");
    letter(" ", ".. .. .. .. .. ..");
  }

  private BigLetters() {}

  private static void letter(String letter, String rows) {
    LETTERS.put(letter.codePointAt(0), rows.split(" "));
  }

  /** Whether every character of a text has a letter. */
  static boolean has(String text) {
    return text.codePoints().allMatch(LETTERS::containsKey);
  }

  /** Columns a text takes at a scale of 1 and up. */
  public static int width(String text, int scale) {
    int dots = text.codePoints().map(c -> LETTERS.get(c)[0].length() + 1).sum();
    return Math.max(0, dots - 1) * scale;
  }

  /** Rows a text takes at a scale of 1 and up. */
  public static int height(int scale, boolean ascii) {
    return ascii ? DOTS_HIGH * scale : DOTS_HIGH * scale / 2;
  }

  /** The largest scale at which a text fits; 0 where none does or a letter is missing. */
  public static int scaleFor(String text, int rows, int columns, boolean ascii) {
    if (!has(text) || text.isEmpty()) {
      return 0;
    }
    return Math.min(rows / height(1, ascii), columns / Math.max(1, width(text, 1)));
  }

  /** Draws a text with its upper left corner on a cell. */
  public static void draw(Canvas canvas, int row, int column, String text, int scale, Style style) {
    int at = column;
    for (int c : text.codePoints().toArray()) {
      String[] dots = enlarged(LETTERS.get(c), scale);
      for (int y = 0; y < height(scale, canvas.isAscii()); y++) {
        canvas.put(row + y, at, canvas.isAscii() ? full(dots[y]) : halves(dots, 2 * y), style);
      }
      at += dots[0].length() + scale;
    }
  }

  private static String[] enlarged(String[] dots, int scale) {
    return Arrays.stream(dots)
        .map(row -> row.replaceAll("(.)", "$1".repeat(scale)))
        .flatMap(row -> java.util.Collections.nCopies(scale, row).stream())
        .toArray(String[]::new);
  }

  private static String full(String dots) {
    return dots.replace('.', ' ');
  }

  private static String halves(String[] dots, int row) {
    StringBuilder text = new StringBuilder();
    for (int x = 0; x < dots[row].length(); x++) {
      boolean upper = dots[row].charAt(x) == '#';
      boolean lower = dots[row + 1].charAt(x) == '#';
      text.append(upper ? (lower ? '█' : '▀') : (lower ? '▄' : ' '));
    }
    return text.toString();
  }
}
