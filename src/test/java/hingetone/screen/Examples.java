package hingetone.screen;

import hingetone.chart.Chart;
import hingetone.chart.ChartBar.Slot;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.chart.Form.Bar;
import hingetone.neck.Dot;
import hingetone.neck.Spot;
import hingetone.plan.Plan;
import hingetone.screen.ChartFacts.Crossing;
import hingetone.screen.ChartFacts.Fit;
import hingetone.screen.ChartFacts.Neck;
import hingetone.screen.ChartFacts.OverChord;
import hingetone.screen.ChartFacts.ShapeNote;
import hingetone.screen.picture.Size;
import hingetone.screen.view.View;
import hingetone.sequencer.Status;
import hingetone.sequencer.Status.Motion;
import hingetone.text.reading.Source;
import hingetone.theory.Chord;
import hingetone.theory.Interval;
import hingetone.theory.Key;
import hingetone.theory.NoteName;
import hingetone.theory.Pitch;
import hingetone.theory.Scale;
import hingetone.time.Beats;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** States to draw: a chart in E minor and G minor with facts written down by hand. */
public final class Examples {
  static final String CHART =
      """
      title: Harbour wall
      tempo: 112
      sections:
        low:
          key: E minor
          bars: |
            | Em7 | Em7 / A7 / | Em7 | % |
            | C7 | Em7 | Em7 / / D | D7b9 |
          phrases: statement 2, reply 2, statement 2 again, reply 2
          leave: hold, run
        high:
          key: G minor
          bars: |
            |: Gm7 | Gm7 / C7 / :|
            | Cm7 | Gm7 | Eb7 | B7b9 |
          phrases: statement 2, reply 2, reply 2, rest 2
          leave: run
      form: low high
      """;

  /** E minor pentatonic from G, two notes a string: the handbooks' frets for that shape. */
  private static final int[][] FROM_THE_MINOR_THIRD = {
    {3, 5}, {3, 5}, {2, 4}, {2, 5}, {2, 5}, {3, 5}
  };

  private static final int[] OPEN = {64, 59, 55, 50, 45, 40};

  private Examples() {}

  static Form form(String text) {
    return Form.of(chart(text));
  }

  public static Chart chart(String text) {
    return ChartReader.read(new Source("test.yaml", text)).value().orElseThrow();
  }

  private static final ChartFacts FACTS = written();

  static ChartFacts facts() {
    return FACTS;
  }

  private static ChartFacts written() {
    Chart chart = chart(CHART);
    Form form = Form.of(chart);
    return new ChartFacts(
        chart.title(),
        "straight rock",
        form,
        form.bars().stream().map(Examples::fits).toList(),
        List.of(
            crossing(9, "E minor", "G minor", "G4, string 1 fret 3: b3 becomes 1", 3),
            crossing(17, "G minor", "E minor", "G4, string 1 fret 3: 1 becomes b3", 0)),
        List.of(),
        List.of(8, 16),
        Plan.of(chart, form),
        new Neck(List.of("E", "B", "G", "D", "A", "E"), 22, 2, 8, false),
        Optional.empty());
  }

  /** The same with a hand that stays around a fret. */
  static ChartFacts stayingAround(int fret) {
    return new ChartFacts(
        FACTS.title(),
        FACTS.groove(),
        FACTS.form(),
        FACTS.fits(),
        FACTS.crossings(),
        FACTS.waysHome(),
        FACTS.turnarounds(),
        FACTS.plan(),
        FACTS.neck(),
        Optional.of(fret));
  }

  private static List<Fit> fits(Bar bar) {
    return bar.chords().chords().stream().map(slot -> fit(bar.key(), slot)).toList();
  }

  private static Fit fit(Key key, Slot slot) {
    Scale scale = key.pentatonic();
    List<String> notes = scale.notes().stream().map(NoteName::toString).toList();
    int shift = key.tonic().chroma() == 4 ? 0 : 3;
    return new Fit(
        scale.toString(),
        notes,
        List.of(key.tonic() + " dorian"),
        scale.toString(),
        shape(scale, slot.chord(), shift));
  }

  static List<ShapeNote> shape(Scale scale, Optional<Chord> chord, int shift) {
    List<ShapeNote> shape = new ArrayList<>();
    for (int string = 1; string <= 6; string++) {
      for (int fret : FROM_THE_MINOR_THIRD[string - 1]) {
        int chroma = (OPEN[string - 1] + fret + shift) % 12;
        Interval degree = scale.degreeOf(chroma).orElseThrow();
        Pitch pitch = new Pitch(scale.tonic().plus(degree), 4);
        boolean ofChord = chord.filter(c -> c.degreeOf(chroma).isPresent()).isPresent();
        OverChord over = ofChord ? OverChord.TONE : OverChord.OTHER;
        shape.add(new ShapeNote(new Dot(new Spot(string, fret + shift), degree, pitch), over));
      }
    }
    return shape;
  }

  private static Crossing crossing(int at, String from, String to, String hold, int shift) {
    Scale scale = Key.parse(to).orElseThrow().pentatonic();
    return new Crossing(
        at,
        from,
        to,
        List.of("D", "G"),
        List.of(hold),
        List.of("strings 3 and 2 from frets 4 and 5 up by single frets"),
        Optional.of("G"),
        Optional.of("Bb"),
        List.of(2, 7),
        shape(scale, Chord.parse(shift == 0 ? "Em7" : "Gm7"), shift));
  }

  /** Before anything has happened. */
  public static State stopped() {
    ChartFacts facts = facts();
    State.Terminal terminal = new State.Terminal(new Size(24, 80), false);
    Status status = Statuses.moving(Motion.STOPPED);
    return State.of(facts, status, ViewSettings.USUAL, terminal);
  }

  /** Playing at a bar and beat. */
  public static State playing(int bar, String beat) {
    State stopped = stopped();
    Beats inBar = Beats.parse(beat).orElseThrow();
    return stopped
        .withStatus(Statuses.moving(Motion.PLAYING))
        .withNow(stopped.facts().form().quarters(new Position(bar, inBar)));
  }

  public static String picture(State state, int rows, int columns) {
    return View.render(state, new Size(rows, columns)).text();
  }
}
