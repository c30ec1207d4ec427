package hingetone.print;

import hingetone.print.NeckPicture.Mark;
import hingetone.print.NeckPicture.Meaning;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Draws a neck as text, lying, string 1 on top, the nut on the left (on the right for a left-handed
 * player). The map and the screen both draw with it.
 *
 * <p>Each meaning has a shape of its own: circles are here, diamonds stay over the next crossing,
 * triangles come with it; a filled one is a note of the chord, a square one sounds. Ink repeats
 * that, it never says anything alone.
 */
public final class NeckDrawing {
  private static final int LABEL = 3;
  private static final int SHORT_NECK = 6;
  private static final List<Integer> INLAYS = List.of(3, 5, 7, 9, 12, 15, 17, 19, 21, 24);

  /**
   * How to draw.
   *
   * @param unicode whether signs beyond ASCII may be used
   * @param cell columns that a fret takes, its wire included, 4 or more
   */
  public record Look(boolean unicode, int cell) {}

  /** What a piece of a row is. */
  public enum Kind {
    NAME,
    WIRE,
    NUMBER,
    MARK
  }

  /**
   * A stretch of one row.
   *
   * @param text what it says
   * @param kind what it is
   * @param mark the mark it shows, for {@link Kind#MARK}
   */
  public record Piece(String text, Kind kind, Optional<Mark> mark) {}

  private final NeckPicture picture;
  private final Look look;

  private NeckDrawing(NeckPicture picture, Look look) {
    this.picture = picture;
    this.look = look;
  }

  /** The rows from left to right: one for each string, then one of fret numbers. */
  public static List<List<Piece>> rows(NeckPicture picture, Look look) {
    NeckDrawing drawing = new NeckDrawing(picture, look);
    List<List<Piece>> rows = new ArrayList<>();
    for (int string = 1; string <= picture.strings().size(); string++) {
      rows.add(drawing.string(string));
    }
    rows.add(drawing.numbers());
    return rows;
  }

  /** The rows as lines with ink. */
  public static List<InkedLine> lines(NeckPicture picture, Look look) {
    return rows(picture, look).stream()
        .map(row -> new InkedLine(row.stream().map(NeckDrawing::inked).toList()))
        .toList();
  }

  private static InkedLine.Piece inked(Piece piece) {
    TextInk ink =
        switch (piece.kind()) {
          case NAME -> TextInk.STRONG;
          case WIRE, NUMBER -> TextInk.FAINT;
          case MARK -> ink(piece.mark().orElseThrow());
        };
    return new InkedLine.Piece(piece.text(), ink);
  }

  private static TextInk ink(Mark mark) {
    return mark.is(Meaning.STAYS)
        ? TextInk.COMMON
        : mark.is(Meaning.OF_CHORD) ? TextInk.CHORD : TextInk.PLAIN;
  }

  /**
   * What the signs mean, in a line.
   *
   * @param there what is drawn, besides notes of the scale and the chord
   */
  public static String legend(boolean unicode, Set<Meaning> there) {
    StringBuilder legend = new StringBuilder();
    legend.append(sign(unicode, Set.of())).append(" scale  ");
    legend.append(sign(unicode, Set.of(Meaning.OF_CHORD))).append(" chord");
    if (there.contains(Meaning.STAYS)) {
      legend.append("  ").append(sign(unicode, Set.of(Meaning.STAYS))).append(" stays");
    }
    if (there.contains(Meaning.COMES)) {
      legend.append("  ").append(sign(unicode, Set.of(Meaning.COMES))).append(" comes");
    }
    if (there.contains(Meaning.CURLED)) {
      legend.append("  ").append(curl(unicode)).append(" curl it up");
    }
    if (there.contains(Meaning.SOUNDS)) {
      legend.append("  ").append(sign(unicode, Set.of(Meaning.SOUNDS))).append(" you");
    }
    return legend.toString();
  }

  /** Columns of the string's name beside the frets. */
  public static int labelWidth() {
    return LABEL;
  }

  private List<Piece> string(int string) {
    List<Piece> pieces = new ArrayList<>();
    String name = picture.strings().get(string - 1);
    boolean mirrored = picture.leftHanded();
    String label = mirrored ? padBefore(name) : padAfter(name);
    pieces.add(new Piece(label, Kind.NAME, Optional.empty()));
    for (int fret = picture.low(); fret <= picture.high(); fret++) {
      pieces.addAll(cell(string, fret));
    }
    return handed(pieces);
  }

  /** A fret's cell, the wire towards the body at its end. */
  private List<Piece> cell(int string, int fret) {
    String line = fret == 0 ? " " : look.unicode ? "─" : "-";
    String wire = fret == 0 ? (look.unicode ? "║" : "H") : look.unicode ? "┼" : "|";
    int room = look.cell - 1;
    Optional<Mark> mark = picture.at(string, fret);
    String text = mark.map(m -> cut(text(m), room)).orElse("");
    // Centred in the cell as the player sees it, so a mirrored one has its odd column elsewhere.
    int before = (room - text.length()) / 2;
    int after = room - text.length() - before;
    List<Piece> pieces = new ArrayList<>();
    pieces.add(wires(line.repeat(picture.leftHanded() ? after : before)));
    pieces.add(new Piece(text, mark.isPresent() ? Kind.MARK : Kind.WIRE, mark));
    pieces.add(wires(line.repeat(picture.leftHanded() ? before : after) + wire));
    return pieces;
  }

  private String text(Mark mark) {
    String after = mark.is(Meaning.CURLED) ? curl(look.unicode) : "";
    return sign(look.unicode, mark.meanings()) + mark.label() + after;
  }

  private static String curl(boolean unicode) {
    return unicode ? "↑" : "^";
  }

  private static Piece wires(String text) {
    return new Piece(text, Kind.WIRE, Optional.empty());
  }

  private List<Piece> numbers() {
    List<Piece> pieces = new ArrayList<>();
    pieces.add(new Piece(" ".repeat(LABEL), Kind.NUMBER, Optional.empty()));
    boolean all = picture.high() - picture.low() < SHORT_NECK;
    for (int fret = picture.low(); fret <= picture.high(); fret++) {
      boolean shown = all || fret == picture.low() || INLAYS.contains(fret);
      String number = shown ? Integer.toString(fret) : "";
      int before = (look.cell - 1 - number.length()) / 2;
      int after = look.cell - number.length() - before;
      String text =
          picture.leftHanded()
              ? " ".repeat(after) + number + " ".repeat(before)
              : " ".repeat(before) + number + " ".repeat(after);
      pieces.add(new Piece(text, Kind.NUMBER, Optional.empty()));
    }
    return handed(pieces);
  }

  /** The pieces in the order of the player's hand. */
  private List<Piece> handed(List<Piece> pieces) {
    if (picture.leftHanded()) {
      Collections.reverse(pieces);
      pieces.replaceAll(
          p -> p.kind() == Kind.WIRE ? wires(new StringBuilder(p.text()).reverse().toString()) : p);
    }
    return pieces;
  }

  private static String sign(boolean unicode, Set<Meaning> meanings) {
    if (meanings.contains(Meaning.SOUNDS)) {
      return unicode ? "■" : "*";
    }
    boolean ofChord = meanings.contains(Meaning.OF_CHORD);
    if (meanings.contains(Meaning.STAYS)) {
      return ofChord ? (unicode ? "◆" : "X") : unicode ? "◇" : "x";
    }
    if (meanings.contains(Meaning.COMES)) {
      return ofChord ? (unicode ? "▲" : "V") : unicode ? "△" : "v";
    }
    return ofChord ? (unicode ? "●" : "@") : unicode ? "○" : "o";
  }

  private static String cut(String text, int room) {
    return text.substring(0, Math.min(text.length(), room));
  }

  private static String padAfter(String text) {
    return text + " ".repeat(Math.max(0, LABEL - text.length()));
  }

  private static String padBefore(String text) {
    return " ".repeat(Math.max(0, LABEL - text.length())) + text;
  }
}
