package hingetone.print;

import hingetone.neck.Bend;
import hingetone.neck.DoubleStop;
import hingetone.neck.Figure;
import hingetone.neck.Fretboard;
import hingetone.neck.HeldBend;
import hingetone.neck.PatternNumbers;
import hingetone.neck.Shape;
import hingetone.theory.Chord;
import hingetone.theory.Pitch;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** A shape for people: its drawing and, where asked for, what can be bent and struck in it. */
final class ShapeText {
  /** Columns before a drawing. */
  static final int INDENT = 2;

  private final Fretboard neck;
  private final Shape shape;
  private final List<InkedLine> lines = new ArrayList<>();

  private ShapeText(Fretboard neck, Shape shape) {
    this.neck = neck;
    this.shape = shape;
  }

  /**
   * The drawing under its name.
   *
   * @param patterns how shapes are numbered
   * @param common pitch classes that both keys at the next crossing have
   */
  static List<InkedLine> drawing(
      Fretboard neck,
      Shape shape,
      PatternNumbers patterns,
      Optional<Chord> chord,
      Set<Integer> common,
      NeckDrawing.Look look) {
    ShapeText text = new ShapeText(neck, shape);
    text.heading(patterns, chord);
    for (InkedLine line : NeckDrawing.lines(NeckPicture.of(neck, shape, chord, common), look)) {
      List<InkedLine.Piece> pieces = new ArrayList<>();
      pieces.add(new InkedLine.Piece(" ".repeat(INDENT), TextInk.PLAIN));
      pieces.addAll(line.pieces());
      text.lines.add(new InkedLine(pieces));
    }
    return text.lines;
  }

  /** Bends, bends under a held note with their fingering an octave away, and double stops. */
  static List<InkedLine> touches(Fretboard neck, Shape shape) {
    ShapeText text = new ShapeText(neck, shape);
    Bend.all(shape).forEach(text::bend);
    HeldBend.all(shape).forEach(text::heldBend);
    DoubleStop.all(shape).stream()
        .collect(Collectors.groupingBy(ShapeText::strings, LinkedHashMap::new, Collectors.toList()))
        .forEach(text::doubleStops);
    return text.lines;
  }

  private void heading(PatternNumbers patterns, Optional<Chord> chord) {
    String stretch =
        switch (shape.stretch()) {
          case NONE -> "";
          case WIDE -> ", a stretch of five frets";
          case TOO_WIDE -> ", more than one hand covers: the tuning allows no better";
          case BROKEN ->
              ": no whole shape fits on the "
                  + neck.lastFret()
                  + (neck.capo() == 0 ? " frets of this neck" : " frets above the capo")
                  + "; these are the notes they have";
        };
    lines.add(
        InkedLine.of("  " + shape.scale(), TextInk.STRONG)
            .plus(" " + patterns.name(shape), TextInk.PLAIN)
            .plus(chord.map(c -> " over " + c.symbol()).orElse("") + stretch, TextInk.FAINT));
  }

  private void bend(Bend bend) {
    String from = note(bend.from().pitch());
    String how =
        bend.size() == Bend.Size.CURL
            ? from + " curled a quarter tone"
            : from + " to " + note(bend.to()) + ", " + size(bend.size());
    String released = bend.release().map(p -> ", released to " + note(p)).orElse("");
    add("bend", bend.from().spot() + ": " + how + released);
  }

  private void heldBend(HeldBend pair) {
    Bend bend = pair.bend();
    String text =
        bend.from().spot()
            + ": "
            + note(bend.from().pitch())
            + " to "
            + note(bend.to())
            + " under "
            + note(pair.held().pitch())
            + " on "
            + pair.held().spot();
    Figure figure = Figure.of(pair);
    add("bend", text + octave(figure, -1, "lower") + octave(figure, 1, "higher"));
  }

  private String octave(Figure figure, int octaves, String where) {
    return figure
        .octaves(neck, octaves)
        .map(Figure::touches)
        .map(t -> "; an octave " + where + " " + t.get(0).spot() + " under " + t.get(1).spot())
        .orElse("");
  }

  private static String strings(DoubleStop stop) {
    return "strings " + stop.low().string() + " and " + stop.high().string();
  }

  /** The double stops of one pair of strings: their frets, and the interval as a degree. */
  private void doubleStops(String strings, List<DoubleStop> stops) {
    String frets =
        stops.stream()
            .map(s -> s.low().fret() + "/" + s.high().fret() + " (" + s.interval() + ")")
            .collect(Collectors.joining(", "));
    add("pair", strings + ", frets " + frets);
  }

  private void add(String label, String text) {
    lines.add(InkedLine.of("  " + label + "  ", TextInk.COMMON).plus(text, TextInk.PLAIN));
  }

  private static String size(Bend.Size size) {
    return switch (size) {
      case CURL -> "a quarter tone";
      case HALF -> "a half tone";
      case WHOLE -> "a whole tone";
      case TONE_AND_A_HALF -> "a tone and a half";
    };
  }

  /** A pitch under the name people read most easily. */
  static String note(Pitch pitch) {
    return Pitch.at(pitch.name().simplified(), pitch.midi()).toString();
  }
}
