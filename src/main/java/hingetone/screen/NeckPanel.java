package hingetone.screen;

import hingetone.screen.Facts.Crossing;
import hingetone.screen.Facts.Dot;
import hingetone.screen.Facts.Neck;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The neck as the player looks down on it, with the shape for now; before a crossing the shape to
 * come appears on the same neck, first faint, then plain, then strong, while what it leaves behind
 * fades. Circles leave, diamonds stay, triangles come; filled ones are notes of the chord.
 */
final class NeckPanel {
  private static final int NAME_COLUMNS = 3;
  private static final int LEAST_CELL = 4;
  private static final int MOST_CELL = 7;
  private static final List<Integer> INLAYS = List.of(3, 5, 7, 9, 12, 15, 17, 19, 21, 24);

  private final Canvas canvas;
  private final State state;
  private final Neck neck;
  private final Signs signs;
  private final List<Dot> dots;
  private final Optional<Crossing> crossing;
  private final long barsLeft;
  private final int cell;
  private final int first;
  private final int last;

  private NeckPanel(Canvas canvas, State state, Moment moment) {
    this.canvas = canvas;
    this.state = state;
    this.neck = state.facts().neck();
    this.signs = Signs.of(state);
    this.dots = moment.fit().dots();
    Optional<Moment.Nearing> near =
        moment.nearing().filter(n -> moment.bars(n.until()) <= CrossingPanel.NEAR_BARS);
    this.crossing = near.map(Moment.Nearing::crossing);
    this.barsLeft = near.map(n -> moment.bars(n.until())).orElse(Long.MAX_VALUE);
    int room = canvas.columns() - NAME_COLUMNS;
    int span = neck.high() - neck.low() + 1;
    this.cell = Math.max(LEAST_CELL, Math.min(MOST_CELL, room / span));
    int shown = Math.min(neck.frets() + 1, Math.max(1, room / cell));
    this.first = firstFret(shown);
    this.last = first + shown - 1;
  }

  static void draw(Canvas canvas, State state, Moment moment) {
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
    for (int string = 1; string <= neck.strings().size(); string++) {
      canvas.put(string - 1, 0, neck.strings().get(string - 1), Style.PLAIN);
      for (int fret = first; fret <= last; fret++) {
        bare(string, fret);
      }
    }
    Map<String, Dot> coming = new HashMap<>();
    crossing.ifPresent(c -> c.dots().forEach(dot -> coming.put(place(dot), dot)));
    for (Dot dot : dots) {
      now(dot, Optional.ofNullable(coming.remove(place(dot))));
    }
    coming.values().forEach(this::comes);
    frets(neck.strings().size());
    legend(neck.strings().size() + 1);
  }

  private static String place(Dot dot) {
    return dot.string() + ":" + dot.fret();
  }

  private int column(int fret) {
    int place = neck.leftHanded() ? last - fret : fret - first;
    return NAME_COLUMNS + place * cell;
  }

  private void bare(int string, int fret) {
    int at = column(fret);
    String wire = fret == 0 ? signs.nut() : signs.fret();
    int wireAt = neck.leftHanded() ? at : at + cell - 1;
    canvas.fill(string - 1, at, at + cell, fret == 0 ? " " : signs.string(), Style.QUIET);
    canvas.put(string - 1, wireAt, wire, Style.QUIET);
  }

  private void comes(Dot dot) {
    boolean stays = stays(dot);
    Style ink = Style.of(stays ? Ink.STAYS : Ink.COMES);
    Style style = barsLeft > 2 ? ink.asFaint() : barsLeft > 1 ? ink : ink.asBold();
    String open = stays ? signs.stays() : signs.comes();
    String full = stays ? signs.staysInChord() : signs.comesInChord();
    put(dot, dot.ofChord() ? full : open, name(dot), style);
  }

  private void now(Dot dot, Optional<Dot> after) {
    boolean stays = stays(dot);
    boolean leaves = crossing.isPresent() && !stays && after.isEmpty();
    Style ink = Style.of(stays ? Ink.STAYS : Ink.PLAIN).asBold();
    Style style = leaves && barsLeft <= 2 ? Style.PLAIN : ink;
    String open = stays ? signs.stays() : signs.scaleTone();
    String full = stays ? signs.staysInChord() : signs.chordTone();
    String name = name(dot);
    if (after.isPresent() && cell >= MOST_CELL && !state.settings().noteNames()) {
      name += signs.to() + name(after.get());
    }
    put(dot, dot.ofChord() ? full : open, name, dot.ofChord() ? style.asReverse() : style);
  }

  private boolean stays(Dot dot) {
    return crossing.filter(c -> c.chromas().contains(dot.chroma())).isPresent();
  }

  private String name(Dot dot) {
    return state.settings().noteNames() ? dot.note() : dot.degree();
  }

  private void put(Dot dot, String sign, String name, Style style) {
    if (dot.fret() >= first && dot.fret() <= last) {
      String text = sign + name;
      String shown = text.substring(0, Math.min(text.length(), cell - 1));
      int from = column(dot.fret()) + (neck.leftHanded() ? 1 : 0);
      canvas.put(dot.string() - 1, from + (cell - 1 - shown.length()) / 2, shown, style);
    }
  }

  private void frets(int row) {
    for (int fret = first; fret <= last; fret++) {
      if (fret == 0 || INLAYS.contains(fret) || fret == first) {
        canvas.put(row, column(fret) + (cell - 2) / 2, Integer.toString(fret), Style.QUIET);
      }
    }
  }

  private void legend(int row) {
    String now = signs.scaleTone() + " scale  " + signs.chordTone() + " chord";
    String later = "  " + signs.stays() + " stays  " + signs.comes() + " comes";
    canvas.put(row, NAME_COLUMNS, now + (crossing.isPresent() ? later : ""), Style.QUIET);
  }
}
