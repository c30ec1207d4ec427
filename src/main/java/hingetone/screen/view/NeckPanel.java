package hingetone.screen.view;

import hingetone.neck.Dot;
import hingetone.neck.Spot;
import hingetone.print.NeckDrawing;
import hingetone.print.NeckPicture;
import hingetone.print.NeckPicture.Mark;
import hingetone.print.NeckPicture.Meaning;
import hingetone.print.NeckPicture.Weight;
import hingetone.screen.ChartFacts.Crossing;
import hingetone.screen.ChartFacts.Neck;
import hingetone.screen.ChartFacts.OverChord;
import hingetone.screen.ChartFacts.ShapeNote;
import hingetone.screen.State;
import hingetone.screen.ViewSettings.Panel;
import hingetone.screen.picture.Canvas;
import hingetone.screen.picture.Ink;
import hingetone.screen.picture.Style;
import hingetone.theory.Key;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

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
  private final List<ShapeNote> shape;
  private final Optional<Crossing> crossing;
  private final long barsLeft;
  private final int cell;
  private final int first;
  private final int last;

  private NeckPanel(Canvas canvas, State state, Outlook moment) {
    this.canvas = canvas;
    this.state = state;
    this.neck = state.facts().neck();
    this.shape = moment.fit().shape();
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
      low = shape.stream().mapToInt(note -> note.dot().fret()).min().orElse(low);
      high = shape.stream().mapToInt(note -> note.dot().fret()).max().orElse(high);
    }
    int wanted = low - Math.max(0, shown - (high - low + 1)) / 2;
    return Math.max(0, Math.min(wanted, neck.frets() + 1 - shown));
  }

  private void draw() {
    NeckPicture picture = new NeckPicture(neck.strings(), neck.leftHanded(), first, last, marks());
    NeckDrawing.Look look = new NeckDrawing.Look(!state.terminal().ascii(), cell);
    int row = 0;
    for (List<NeckDrawing.Piece> pieces : NeckDrawing.rows(picture, look)) {
      int column = 0;
      for (NeckDrawing.Piece piece : pieces) {
        canvas.put(row, column, piece.text(), style(piece));
        column += piece.text().length();
      }
      row++;
    }
    String legend = NeckDrawing.legend(!state.terminal().ascii(), there());
    canvas.put(row, NeckDrawing.labelWidth(), legend, Style.QUIET);
  }

  private Set<Meaning> there() {
    Set<Meaning> there =
        crossing.isPresent()
            ? EnumSet.of(Meaning.STAYS, Meaning.COMES)
            : EnumSet.noneOf(Meaning.class);
    if (shape.stream().anyMatch(note -> note.over() == OverChord.BLUE_THIRD)) {
      there.add(Meaning.CURLED);
    }
    if (!sounding().isEmpty()) {
      there.add(Meaning.SOUNDS);
    }
    return there;
  }

  private static Style style(NeckDrawing.Piece piece) {
    return switch (piece.kind()) {
      case NAME -> Style.PLAIN;
      case WIRE, NUMBER -> Style.QUIET;
      case MARK -> style(piece.mark().orElseThrow());
    };
  }

  private static Style style(Mark mark) {
    if (mark.is(Meaning.SOUNDS)) {
      return Style.LIT;
    }
    Style ink = Style.of(ink(mark));
    Style weighed =
        switch (mark.weight()) {
          case FAINT -> ink.asFaint();
          case PLAIN -> ink;
          case STRONG -> ink.asBold();
        };
    return mark.is(Meaning.OF_CHORD) && !mark.is(Meaning.COMES) ? weighed.asReverse() : weighed;
  }

  private static Ink ink(Mark mark) {
    return mark.is(Meaning.STAYS) ? Ink.STAYS : mark.is(Meaning.COMES) ? Ink.COMES : Ink.PLAIN;
  }

  private List<Mark> marks() {
    Map<Spot, ShapeNote> coming = new HashMap<>();
    crossing.ifPresent(c -> c.shape().forEach(note -> coming.put(note.dot().spot(), note)));
    List<Mark> marks = new ArrayList<>();
    for (ShapeNote note : shape) {
      marks.add(here(note, Optional.ofNullable(coming.remove(note.dot().spot()))));
    }
    Weight weight = barsLeft > 2 ? Weight.FAINT : barsLeft > 1 ? Weight.PLAIN : Weight.STRONG;
    coming.values().forEach(note -> marks.add(comes(note, weight)));
    sounding().forEach(midi -> sound(midi, marks));
    return marks;
  }

  private Set<Integer> sounding() {
    return state.settings().shows(Panel.HEARD) ? state.heard().sounding() : Set.of();
  }

  /**
   * Lights a note that sounds: where the shape has it, else on the fret nearest to the shape's
   * middle.
   */
  private void sound(int midi, List<Mark> marks) {
    double middle = shape.stream().mapToInt(n -> n.dot().fret()).average().orElse(first);
    Optional<Spot> ofShape =
        shape.stream()
            .filter(n -> n.dot().pitch().midi() == midi)
            .map(n -> n.dot().spot())
            .findFirst();
    Optional<Spot> nearest =
        openStrings().entrySet().stream()
            .map(open -> new Spot(open.getKey(), midi - open.getValue()))
            .filter(spot -> spot.fret() >= first && spot.fret() <= last)
            .min(Comparator.comparingDouble(spot -> Math.abs(spot.fret() - middle)));
    ofShape
        .or(() -> nearest)
        .ifPresent(
            spot -> {
              marks.removeIf(m -> m.string() == spot.string() && m.fret() == spot.fret());
              Set<Meaning> sounds = EnumSet.of(Meaning.SOUNDS);
              marks.add(new Mark(spot.string(), spot.fret(), name(midi), sounds, Weight.STRONG));
            });
  }

  /** The open strings' MIDI numbers, as far as the shape tells them. */
  private Map<Integer, Integer> openStrings() {
    Map<Integer, Integer> open = new HashMap<>();
    shape.forEach(n -> open.put(n.dot().string(), n.dot().pitch().midi() - n.dot().fret()));
    return open;
  }

  private String name(int midi) {
    Key key = state.facts().form().bar(state.position().bar()).key();
    int chroma = Math.floorMod(midi, 12);
    return state.settings().noteNames()
        ? key.readable(key.spellChroma(chroma)).toString()
        : key.degreeOf(chroma).toString();
  }

  private Mark here(ShapeNote note, Optional<ShapeNote> after) {
    boolean leaves = crossing.isPresent() && !stays(note) && after.isEmpty();
    String name = name(note.dot());
    if (after.isPresent() && cell >= MOST_CELL && !state.settings().noteNames()) {
      name += Signs.of(state).to() + name(after.get().dot());
    }
    return mark(note, name, meanings(note), leaves && barsLeft <= 2 ? Weight.PLAIN : Weight.STRONG);
  }

  private Mark comes(ShapeNote note, Weight weight) {
    Set<Meaning> meanings = meanings(note);
    meanings.add(Meaning.COMES);
    return mark(note, name(note.dot()), meanings, weight);
  }

  private static Mark mark(ShapeNote note, String name, Set<Meaning> meanings, Weight weight) {
    return new Mark(note.dot().string(), note.dot().fret(), name, meanings, weight);
  }

  private Set<Meaning> meanings(ShapeNote note) {
    Set<Meaning> meanings = EnumSet.noneOf(Meaning.class);
    if (note.ofChord()) {
      meanings.add(Meaning.OF_CHORD);
    }
    if (note.over() == OverChord.BLUE_THIRD) {
      meanings.add(Meaning.CURLED);
    }
    if (stays(note)) {
      meanings.add(Meaning.STAYS);
    }
    return meanings;
  }

  private boolean stays(ShapeNote note) {
    int chroma = note.dot().pitch().name().chroma();
    return crossing.filter(c -> c.chromas().contains(chroma)).isPresent();
  }

  private String name(Dot dot) {
    return state.settings().noteNames()
        ? dot.pitch().name().simplified().toString()
        : dot.degree().toString();
  }
}
