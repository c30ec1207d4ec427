package hingetone.screen;

import hingetone.chart.Form;
import hingetone.neck.Dot;
import hingetone.plan.Plan;
import hingetone.time.Beats;
import hingetone.time.Position;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Everything about a chart that the picture needs, worked out beforehand so that drawing only looks
 * things up.
 *
 * @param title the chart's title
 * @param groove what the band plays: the groove's name
 * @param form the bars, in the keys that sound
 * @param fits for each bar of the form, for each of its chords, what fits
 * @param crossings the places of the form where the key changes, by bar
 * @param waysHome the places where a dominant leads home and the key stays, by bar
 * @param turnarounds the bars of the form that lead back to their section's tonic
 * @param plan who speaks when
 * @param neck the instrument's neck
 * @param position the fret that the hand stays around; empty where it is free
 */
public record ChartFacts(
    String title,
    String groove,
    Form form,
    List<List<Fit>> fits,
    List<Crossing> crossings,
    List<Crossing> waysHome,
    List<Integer> turnarounds,
    Plan plan,
    Neck neck,
    Optional<Integer> position) {

  /**
   * What fits over one chord.
   *
   * @param scale the name of the first choice; empty over no chord
   * @param notes its notes
   * @param also the other choices, best first
   * @param neck the name of the scale whose shape is under the hand
   * @param shape that shape, with the chord's other notes on its frets
   */
  public record Fit(
      String scale, List<String> notes, List<String> also, String neck, List<ShapeNote> shape) {
    public Fit {
      notes = List.copyOf(notes);
      also = List.copyOf(also);
      shape = List.copyOf(shape);
    }
  }

  /**
   * A note of a shape under a chord.
   *
   * @param dot where it lies and what it is
   * @param over what it is to the chord
   */
  public record ShapeNote(Dot dot, OverChord over) {
    public boolean ofChord() {
      return over == OverChord.TONE;
    }
  }

  /** What a note of a shape is to a chord. */
  public enum OverChord {
    /** The chord has it. */
    TONE,
    /** It stands for the chord's major third and is curled up towards it. */
    BLUE_THIRD,
    /** The scale has it. */
    OTHER
  }

  /**
   * A line to be crossed: a change of key, or a dominant that leads home.
   *
   * @param atBar the first bar in the new key, form length + 1 for the seam between laps
   * @param from the key before; on a way home the dominant
   * @param to the key after
   * @param common the notes of the pentatonics that stay; on a way home those of the dominant's
   *     scale
   * @param hold how to hold one of them over the line, in a few words; empty where none stays
   * @param run how to run into the new key, in a few words; empty where there is nothing between
   * @param held the note that the first hold leaves ringing; empty where there is none
   * @param reached the note that the first run lands on, its highest; empty where there is none
   * @param chromas the pitch classes that stay
   * @param shape the new key's shape that lies nearest
   */
  public record Crossing(
      int atBar,
      String from,
      String to,
      List<String> common,
      List<String> hold,
      List<String> run,
      Optional<String> held,
      Optional<String> reached,
      List<Integer> chromas,
      List<ShapeNote> shape) {
    public Crossing {
      common = List.copyOf(common);
      hold = List.copyOf(hold);
      run = List.copyOf(run);
      chromas = List.copyOf(chromas);
      shape = List.copyOf(shape);
    }
  }

  /**
   * The neck as it is drawn.
   *
   * @param strings the open strings' names, from the highest
   * @param frets how many frets can be played
   * @param low the lowest fret of all shapes
   * @param high the highest fret of all shapes
   * @param leftHanded whether the nut is on the right
   */
  public record Neck(List<String> strings, int frets, int low, int high, boolean leftHanded) {
    public Neck {
      strings = List.copyOf(strings);
    }
  }

  public ChartFacts {
    fits = fits.stream().map(List::copyOf).toList();
    crossings = List.copyOf(crossings);
    waysHome = List.copyOf(waysHome);
    turnarounds = List.copyOf(turnarounds);
  }

  /** What fits over the chord at a place. */
  public Fit fitAt(Position place) {
    Form.Bar bar = form.bar(place.bar());
    Beats beat = place.bar() < 1 ? Beats.ONE : place.beat();
    return fits.get(bar.number() - 1).get(bar.chords().chords().indexOf(bar.slotAt(beat)));
  }

  /** The lowest fret of the shape at a place, 1 at least; empty while no shape is known. */
  Optional<Integer> lowestFretAt(Position place) {
    return fitAt(place).shape().stream()
        .map(note -> Math.max(1, note.dot().fret()))
        .min(Comparator.naturalOrder());
  }

  /** The crossing whose new key starts with a bar of the form, the seam included. */
  public Optional<Crossing> crossingInto(int bar) {
    return into(crossings, bar);
  }

  /** The crossing or, where the key stays, the way home that ends with a bar's line. */
  public Optional<Crossing> lineInto(int bar) {
    return crossingInto(bar).or(() -> into(waysHome, bar));
  }

  private Optional<Crossing> into(List<Crossing> lines, int bar) {
    int inLap = inLap(bar);
    int length = form.bars().size();
    return lines.stream().filter(c -> (c.atBar() - 1) % length + 1 == inLap).findFirst();
  }

  /** The number in the lap of a bar that counts on through the laps. */
  public int inLap(int bar) {
    return form.bar(bar).number();
  }
}
