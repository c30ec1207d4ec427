package hingetone.print;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A line of text in pieces, each in its ink.
 *
 * @param pieces the pieces from left to right
 */
public record InkedLine(List<Piece> pieces) {

  /**
   * A stretch of one line.
   *
   * @param text what it says
   * @param ink how it stands out
   */
  public record Piece(String text, TextInk ink) {}

  public InkedLine {
    pieces = List.copyOf(pieces);
  }

  public static InkedLine of(String text) {
    return of(text, TextInk.PLAIN);
  }

  public static InkedLine of(String text, TextInk ink) {
    return new InkedLine(List.of(new Piece(text, ink)));
  }

  /** The same line with a piece added at its end. */
  public InkedLine plus(String text, TextInk ink) {
    List<Piece> longer = new ArrayList<>(pieces);
    longer.add(new Piece(text, ink));
    return new InkedLine(longer);
  }

  /**
   * The line broken at blanks so that no part is wider than a page; a word that is wider itself
   * stays whole.
   *
   * @param width columns of the page
   * @param indent columns that every line but the first is set in
   */
  public List<InkedLine> wrapped(int width, int indent) {
    String text = plain();
    int at = text.length() <= width ? -1 : text.lastIndexOf(' ', width);
    if (at <= indent) {
      return List.of(this);
    }
    List<InkedLine> lines = new ArrayList<>(List.of(part(0, at)));
    InkedLine rest = of(" ".repeat(indent));
    for (Piece piece : part(at + 1, text.length()).pieces) {
      rest = rest.plus(piece.text, piece.ink);
    }
    lines.addAll(rest.wrapped(width, indent));
    return lines;
  }

  /** The columns from one, included, to another, excluded. */
  private InkedLine part(int from, int to) {
    List<Piece> kept = new ArrayList<>();
    int start = 0;
    for (Piece piece : pieces) {
      int first = Math.max(from - start, 0);
      int last = Math.min(to - start, piece.text.length());
      if (first < last) {
        kept.add(new Piece(piece.text.substring(first, last), piece.ink));
      }
      start += piece.text.length();
    }
    return new InkedLine(kept);
  }

  /** The line without ink and without blanks at its end. */
  public String plain() {
    return pieces.stream().map(Piece::text).collect(Collectors.joining()).stripTrailing();
  }

  /** The line for a terminal with colour. */
  public String onTerminal() {
    return pieces.stream().map(p -> p.ink.onTerminal(p.text)).collect(Collectors.joining());
  }
}
