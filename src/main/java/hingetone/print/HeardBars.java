package hingetone.print;

import hingetone.chart.ChartBar;
import hingetone.chart.Form;
import hingetone.chart.Section;
import hingetone.hearing.Alignment;
import hingetone.hearing.HeardKey;
import hingetone.hearing.HeardNote;
import hingetone.hearing.Transcription;
import hingetone.hearing.Transcription.Placed;
import hingetone.score.Fullness;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Tempo;
import hingetone.time.TempoMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A recording in bars.
 *
 * @param form the bars
 * @param charted whether they are a chart's
 * @param alignment where the recording lies in them
 * @param notes its notes, in order, those that begin together with the same places
 */
public record HeardBars(Form form, boolean charted, Alignment alignment, List<Barred> notes) {
  /** The tempo of bars that no chart gives, in quarter notes a minute. */
  public static final int TEMPO = 120;

  /** A silence shorter than this is no rest: the note before it is written up to the next. */
  private static final Beats LEAST_REST = Beats.of(1, 2);

  private static final Beats LEAST_LENGTH = Beats.of(1, 4);

  /**
   * A note and the places between which it is written.
   *
   * @param placed the note
   * @param start in quarter notes from bar 1
   * @param end after that
   */
  public record Barred(Placed placed, Beats start, Beats end) {}

  public HeardBars {
    notes = List.copyOf(notes);
  }

  /** In the bars of a chart. */
  public static HeardBars of(Form form, Alignment alignment, Transcription written) {
    return new HeardBars(form, true, alignment, barred(alignment, written));
  }

  /** In bars of 4/4 at {@value #TEMPO} quarters a minute; the first note begins bar 1. */
  public static HeardBars withoutChart(Transcription written) {
    List<HeardNote> notes = written.notes().stream().map(Placed::note).toList();
    double offset = notes.isEmpty() ? 0 : notes.get(0).at();
    Alignment alignment = Alignment.at(offset, TempoMap.of(Beats.of(TEMPO)), notes);
    Form form = emptyBar(HeardKey.of(notes));
    return new HeardBars(form, false, alignment, barred(alignment, written));
  }

  /** One bar without a chord, which comes round again and again. */
  private static Form emptyBar(Key key) {
    ChartBar.Slot none = new ChartBar.Slot(Beats.ONE, Beats.of(4), Optional.empty());
    ChartBar bar = new ChartBar(List.of(none));
    Section section =
        new Section(
            "",
            key,
            Meter.COMMON,
            Tempo.of(TEMPO),
            Optional.empty(),
            Fullness.NORMAL,
            Optional.empty(),
            List.of(bar),
            List.of(),
            Beats.ZERO,
            List.of(),
            Optional.empty());
    Form.Bar only = new Form.Bar(1, section, 0, 1, Beats.ZERO, bar);
    return new Form(List.of(only), Meter.COMMON.barLength());
  }

  private static List<Barred> barred(Alignment alignment, Transcription written) {
    List<List<Placed>> moments = written.moments();
    List<Beats> starts =
        alignment.places(moments.stream().map(moment -> moment.get(0).note().at()).toList());
    List<Barred> barred = new ArrayList<>();
    for (int i = 0; i < starts.size(); i++) {
      Beats start = starts.get(i);
      Optional<Beats> next =
          i + 1 < starts.size() ? Optional.of(starts.get(i + 1)) : Optional.empty();
      for (Placed placed : moments.get(i)) {
        Beats free = end(start, alignment.place(placed.note().end()));
        Beats end = next.filter(n -> n.minus(free).isBefore(LEAST_REST)).orElse(free);
        barred.add(new Barred(placed, start, end));
      }
    }
    return barred;
  }

  /** The nearest eighth, of a triplet's note the nearest triplet, so that rests are simple. */
  private static Beats end(Beats start, Beats heard) {
    boolean triplet = start.denominator() % 3 == 0;
    Beats unit = triplet ? Beats.of(1, 3) : LEAST_REST;
    Beats nearest = unit.times(heard.dividedBy(unit).plus(Beats.of(1, 2)).floor());
    return nearest.max(start.plus(triplet ? unit : LEAST_LENGTH));
  }

  /** The first bar that has a note, and the last in which one sounds; both 1 without notes. */
  public int firstBar() {
    return notes.isEmpty() ? 1 : Math.min(1, form.position(notes.get(0).start()).bar());
  }

  /** The last bar in which a note sounds, 1 at least. */
  public int lastBar() {
    Beats end = notes.stream().map(Barred::end).reduce(Beats.ZERO, Beats::max);
    int bar = form.position(end).bar();
    return Math.max(1, form.startOf(bar).equals(end) ? bar - 1 : bar);
  }

  /** The key that holds where a note begins. */
  public Key key(Barred note) {
    return form.bar(form.position(note.start()).bar()).key();
  }

  /** For people: where bar 1 is, and the tempo. */
  public String summary() {
    if (!charted) {
      return "written in 4/4 at " + TEMPO + " quarter notes a minute, for there is no --chart";
    }
    return String.format(
        Locale.ROOT,
        "bar 1 at %.2f s, %.1f %% of the chart's tempo",
        alignment.offset(),
        100 * alignment.ratio());
  }
}
