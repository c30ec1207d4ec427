package hingetone.screen.view;

import hingetone.print.NeckDrawing;
import hingetone.print.NeckPicture;
import hingetone.print.NeckPicture.Mark;
import hingetone.print.NeckPicture.Weight;
import hingetone.screen.ChartFacts.Crossing;
import hingetone.screen.ChartFacts.Dot;
import hingetone.screen.ChartFacts.Neck;
import hingetone.screen.State;
import hingetone.screen.picture.Canvas;
import hingetone.screen.picture.Ink;
import hingetone.screen.picture.Style;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The neck as the player looks down on it, with the shape for now; before a crossing the shape to
 * come appears on the same neck, first faint, then plain, then strong, while what it leaves behind
 * fades.
 */
final class NeckPanel {
  private static final int LEAST_CELL = 4;
  private static final int MOST_CELL = 7;

  private final Canvas canvas;
  private final State state;
  private final Neck neck;
  private final List<Dot> dots;
  private final Optional<Crossing> crossing;
  private final long barsLeft;
  private final int cell;
  private final int first;
  private final int last;

  private NeckPanel(Canvas canvas, State state, Outlook moment) {
    this.canvas = canvas;
    this.state = state;
    this.neck = state.facts().neck();
    this.dots = moment.fit().dots();
    Optional<Outlook.Nearing> near =
        moment.nearing().filter(n -> moment.bars(n.until()) <= CrossingPanel.NEAR_BARS);
    this.crossing = near.map(Outlook.Nearing::crossing);
    this.barsLeft = near.map(n -> moment.bars(n.until())).orElse(Long.MAX_VALUE);
    int room = canvas.columns() - NeckDrawing.labelWidth();
    int span = neck.high() - neck.low() + 1;
    this.cell = Math.max(LEAST_CELL, Math.min(MOST_CELL, room / span));
    int shown = Math.min(neck.frets() + 1, Math.max(1, room / cell));
    this.first = firstFret(shown);
    this.last = first + shown - 1;
  }

  static void draw(Canvas canvas, State state, Outlook moment) {
    if (canvas.rows() > state.facts().neck().strings().size()) {
      new NeckPanel(canvas, state, moment).draw();
    }
  }

  /** The window holds all shapes of the form where they fit, so that it stands still. */
  private int firstFret(int shown) {
    int span = neck.high() - neck.low() + 1;
    int low = neck.low();
    int high = neck.high();
    if (shown < span) {
      low = dots.stream().mapToInt(Dot::fret).min().orElse(low);
      high = dots.stream().mapToInt(Dot::fret).max().orElse(high);
    }
    int wanted = low - Math.max(0, shown - (high - low + 1)) / 2;
    return Math.max(0, Math.min(wanted, neck.frets() + 1 - shown));
  }

  private void draw() {
    NeckPicture picture = new NeckPicture(neck.strings(), neck.leftHanded(), first, last, marks());
    NeckDrawing.Look look = new NeckDrawing.Look(!state.ascii(), cell);
    int row = 0;
    for (List<NeckDrawing.Piece> pieces : NeckDrawing.rows(picture, look)) {
      int column = 0;
      for (NeckDrawing.Piece piece : pieces) {
        canvas.put(row, column, piece.text(), style(piece));
        column += piece.text().length();
      }
      row++;
    }
    String legend = NeckDrawing.legend(!state.ascii(), crossing.isPresent(), crossing.isPresent());
    canvas.put(row, NeckDrawing.labelWidth(), legend, Style.QUIET);
  }

  private static Style style(NeckDrawing.Piece piece) {
    return switch (piece.kind()) {
      case NAME -> Style.PLAIN;
      case WIRE, NUMBER -> Style.QUIET;
      case MARK -> style(piece.mark().orElseThrow());
    };
  }

  private static Style style(Mark mark) {
    Style ink = Style.of(mark.stays() ? Ink.STAYS : mark.coming() ? Ink.COMES : Ink.PLAIN);
    Style weighed =
        switch (mark.weight()) {
          case FAINT -> ink.asFaint();
          case PLAIN -> ink;
          case STRONG -> ink.asBold();
        };
    return mark.ofChord() && !mark.coming() ? weighed.asReverse() : weighed;
  }

  private List<Mark> marks() {
    Map<String, Dot> coming = new HashMap<>();
    crossing.ifPresent(c -> c.dots().forEach(dot -> coming.put(place(dot), dot)));
    List<Mark> marks = new ArrayList<>();
    for (Dot dot : dots) {
      marks.add(here(dot, Optional.ofNullable(coming.remove(place(dot)))));
    }
    Weight weight = barsLeft > 2 ? Weight.FAINT : barsLeft > 1 ? Weight.PLAIN : Weight.STRONG;
    coming.values().forEach(dot -> marks.add(mark(dot, name(dot), true, weight)));
    return marks;
  }

  private static String place(Dot dot) {
    return dot.string() + ":" + dot.fret();
  }

  private Mark here(Dot dot, Optional<Dot> after) {
    boolean leaves = crossing.isPresent() && !stays(dot) && after.isEmpty();
    String name = name(dot);
    if (after.isPresent() && cell >= MOST_CELL && !state.settings().noteNames()) {
      name += Signs.of(state).to() + name(after.get());
    }
    return mark(dot, name, false, leaves && barsLeft <= 2 ? Weight.PLAIN : Weight.STRONG);
  }

  private Mark mark(Dot dot, String name, boolean coming, Weight weight) {
    return new Mark(dot.string(), dot.fret(), name, dot.ofChord(), stays(dot), coming, weight);
  }

  private boolean stays(Dot dot) {
    return crossing.filter(c -> c.chromas().contains(dot.chroma())).isPresent();
  }

  private String name(Dot dot) {
    return state.settings().noteNames() ? dot.note() : dot.degree();
  }
}
