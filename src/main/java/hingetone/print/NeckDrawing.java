package hingetone.print;

import hingetone.print.InkedLine.Piece;
import hingetone.print.NeckPicture.Mark;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * Draws a neck as text, lying, string 1 on top, the nut on the left (on the right for a left-handed
 * player).
 *
 * <p>A note of the chord stands in square brackets, any other in round ones; a star says that both
 * keys at the next crossing have it. Ink repeats that, it never says anything alone.
 */
public final class NeckDrawing {
  private static final int LABEL = 3;

  /**
   * How to draw.
   *
   * @param unicode whether lines may be drawn with box characters, else with ASCII
   * @param wide whether there is room for seven columns a fret, else six without string lines
   */
  public record Look(boolean unicode, boolean wide) {}

  private final NeckPicture picture;
  private final Look look;

  private NeckDrawing(NeckPicture picture, Look look) {
    this.picture = picture;
    this.look = look;
  }

  /** The drawing: a line of fret numbers, then one for each string. */
  public static List<InkedLine> lines(NeckPicture picture, Look look) {
    NeckDrawing drawing = new NeckDrawing(picture, look);
    List<InkedLine> lines = new ArrayList<>();
    lines.add(drawing.numbers());
    for (int string = 1; string <= picture.neck().strings(); string++) {
      lines.add(drawing.string(string));
    }
    return lines;
  }

  /** Columns that the drawing takes. */
  public static int width(NeckPicture picture, Look look) {
    int frets = picture.high() - picture.low() + 1;
    return LABEL + 1 + frets * (look.wide ? 8 : 7);
  }

  private InkedLine numbers() {
    List<Piece> pieces = new ArrayList<>();
    pieces.add(new Piece(" ".repeat(LABEL + (picture.low() == 0 ? 0 : 1)), Ink.PLAIN));
    for (int fret = picture.low(); fret <= picture.high(); fret++) {
      pieces.add(new Piece(centred(Integer.toString(fret), cell() + 1), Ink.FAINT));
    }
    return handed(pieces);
  }

  private InkedLine string(int string) {
    List<Piece> pieces = new ArrayList<>();
    String name = picture.neck().tuning().string(string).name().simplified().toString();
    boolean mirrored = picture.neck().leftHanded();
    pieces.add(new Piece(mirrored ? " " + pad(name, LABEL - 1) : pad(name, LABEL), Ink.STRONG));
    if (picture.low() > 0) {
      pieces.add(new Piece(look.unicode ? "┊" : ":", Ink.FAINT));
    }
    for (int fret = picture.low(); fret <= picture.high(); fret++) {
      pieces.add(cell(string, fret));
      pieces.add(new Piece(fret == 0 ? nut() : look.unicode ? "│" : "|", Ink.FAINT));
    }
    return handed(pieces);
  }

  private String nut() {
    return look.unicode ? "║" : "#";
  }

  private int cell() {
    return look.wide ? 7 : 6;
  }

  private Piece cell(int string, int fret) {
    Optional<Mark> mark = picture.at(string, fret);
    String line = fret == 0 || !look.wide ? " " : look.unicode ? "─" : "-";
    if (mark.isEmpty()) {
      String empty = fret > 0 && look.unicode ? "─" : fret > 0 ? "-" : " ";
      return new Piece(empty.repeat(cell()), Ink.FAINT);
    }
    Mark m = mark.get();
    String star = m.common() ? "*" : "";
    String text = (m.ofChord() ? "[" + m.label() + "]" : "(" + m.label() + ")") + star;
    Ink ink = m.common() ? Ink.COMMON : m.ofChord() ? Ink.CHORD : Ink.PLAIN;
    return new Piece(filled(text, cell(), line), ink);
  }

  /** The pieces in the order of the player's hand. */
  private InkedLine handed(List<Piece> pieces) {
    if (picture.neck().leftHanded()) {
      Collections.reverse(pieces);
    }
    return new InkedLine(pieces);
  }

  private static String pad(String text, int width) {
    return text + " ".repeat(Math.max(0, width - text.length()));
  }

  private static String centred(String text, int width) {
    return filled(text, width, " ");
  }

  private static String filled(String text, int width, String with) {
    int left = Math.max(0, (width - text.length()) / 2);
    int right = Math.max(0, width - text.length() - left);
    return with.repeat(left) + text + with.repeat(right);
  }
}
