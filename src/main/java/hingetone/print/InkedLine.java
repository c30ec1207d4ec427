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
  public record Piece(String text, Ink ink) {}

  public InkedLine {
    pieces = List.copyOf(pieces);
  }

  public static InkedLine of(String text) {
    return of(text, Ink.PLAIN);
  }

  public static InkedLine of(String text, Ink ink) {
    return new InkedLine(List.of(new Piece(text, ink)));
  }

  /** The same line with a piece added at its end. */
  public InkedLine plus(String text, Ink ink) {
    List<Piece> longer = new ArrayList<>(pieces);
    longer.add(new Piece(text, ink));
    return new InkedLine(longer);
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
