package hingetone.backing;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.chart.Section;
import hingetone.groove.Feel;
import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import hingetone.groove.Human;
import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.text.reading.Diagnostic;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * The band behind a chart: it makes one lap's score after another, the same for the same seed.
 *
 * <p>Onsets are quarter notes from the start of the lap. Lap 1 also has the chart's count-in, as
 * clicks before 0. A last lap is a bar longer than the others: that bar is the ending.
 */
public final class Backing {
  private final Chart chart;
  private final Form form;
  private final ChordChanges harmony;
  private final Map<String, Groove> grooves;
  private final Arc arc;
  private final List<List<Integer>> voicings;
  private final boolean exact;

  private Backing(Chart chart, Map<String, Groove> grooves) {
    this.chart = chart;
    this.grooves = grooves;
    this.exact = false;
    this.form = Form.of(chart);
    this.harmony = ChordChanges.of(form);
    this.arc = Arc.of(chart, form);
    this.voicings = VoiceLeading.of(harmony, change -> groove(change.bar().section()).chords());
  }

  private Backing(Backing other, Arc arc, boolean exact) {
    this.chart = other.chart;
    this.grooves = other.grooves;
    this.exact = exact;
    this.form = other.form;
    this.harmony = other.harmony;
    this.arc = arc;
    this.voicings = other.voicings;
  }

  /**
   * The band for a chart, or what is wrong with the grooves the chart names: none of that name, a
   * file with problems, or a meter it is not drawn for.
   *
   * @param source the text where the names stand, for the places
   */
  public static Reading<Backing> read(Chart chart, Grooves grooves, Source source) {
    return GrooveChoice.read(chart, grooves, source).map(found -> new Backing(chart, found));
  }

  /**
   * The band for a chart whose grooves are known to be there.
   *
   * @throws IllegalArgumentException if one is missing or does not fit
   */
  public static Backing of(Chart chart, Grooves grooves) {
    Reading<Backing> reading = read(chart, grooves, new Source(chart.title(), ""));
    return reading
        .value()
        .orElseThrow(() -> new IllegalArgumentException(reading.problems().get(0).message()));
  }

  /** What {@link #read} would find wrong, without the band. */
  public static List<Diagnostic> problems(Chart chart, Grooves grooves, Source source) {
    return GrooveChoice.read(chart, grooves, source).problems();
  }

  /** The same band playing exactly in place, every stroke as loud as it is drawn. */
  public Backing exact() {
    return new Backing(this, arc, true);
  }

  /** The same band that knows after how many laps it ends, and climbs to a high point near it. */
  public Backing over(int laps) {
    return new Backing(this, arc.over(laps), exact);
  }

  /** The form that a lap goes through. */
  public Form form() {
    return form;
  }

  /** The groove a section is played in. */
  public Groove groove(Section section) {
    return grooves.get(section.name());
  }

  /**
   * Where a place drawn straight is played, the swing of its section included.
   *
   * @param place quarter notes from the start of the lap, at least 0, below the lap's length
   */
  public Beats played(Beats place) {
    Form.Bar bar = form.bar(form.position(place).bar());
    Feel own = groove(bar.section()).feel();
    Feel feel = bar.section().swing().map(own::withPercent).orElse(own);
    return bar.start().plus(feel.place(place.minus(bar.start()), bar.meter()));
  }

  /** The score of a lap, counted from 1. */
  public Score lap(int number) {
    return score(number, false);
  }

  /** The score of a lap with which the playing ends: a bar longer, for the last chord. */
  public Score lastLap(int number) {
    return score(number, true);
  }

  /**
   * A lap of a piece that ends after so many laps, each with the same bars: the last one leads into
   * the ending, which is bar 1 of one more lap that is otherwise empty.
   *
   * @param number 1 to {@code laps + 1}
   */
  public Score lapOf(int number, int laps) {
    Backing knowing = over(laps);
    if (number < laps) {
      return knowing.lap(number);
    }
    Score last = knowing.lastLap(laps);
    Beats from = number == laps ? Beats.ZERO : form.length();
    List<Part> parts =
        last.parts().stream().map(part -> part.stretch(from, from.plus(form.length()))).toList();
    Score whole = lap(number);
    return new Score(whole.title(), whole.countIn(), whole.length(), whole.marks(), parts);
  }

  /** What the band has agreed on for each bar of a lap with which the playing does not end. */
  List<BarPlan> plan(int number) {
    return leader().plan(number, false);
  }

  private BandLeader leader() {
    return new BandLeader(form, this::groove, chart.seed(), arc);
  }

  private Score score(int number, boolean last) {
    if (number < 1) {
      throw new IllegalArgumentException("laps are counted from 1, not " + number);
    }
    Dice dice = new Dice(chart.seed(), number);
    List<BarPlan> plans = leader().plan(number, last);
    LapPlan lap = new LapPlan(plans, harmony, form.length());
    List<Part> parts = new ArrayList<>();
    parts.add(part(Role.DRUMS, new Drummer(dice).play(plans), lap, dice, last));
    List<Note> bass = new ArrayList<>(new Bassist(lap, dice).play());
    bass.addAll(Riffs.bass(lap));
    parts.add(part(Role.BASS, bass, lap, dice, last));
    List<Note> chords = new ArrayList<>(new ChordPlayer(lap, dice, voicings).play());
    chords.addAll(Riffs.chords(lap));
    parts.add(part(Role.CHORDS, chords, lap, dice, last));
    Beats countIn = number == 1 ? CountIn.length(chart, form) : Beats.ZERO;
    if (countIn.isPositive()) {
      parts.add(new Part(Role.CLICK, Sound.CLICK, CountIn.clicks(chart, form)));
    }
    Beats length = last ? form.length().plus(FinalBar.length(lap)) : form.length();
    return new Score(chart.title(), countIn, length, LapMarks.of(lap, last), parts);
  }

  private Part part(Role role, List<Note> notes, LapPlan lap, Dice dice, boolean last) {
    List<Note> sorted = new ArrayList<>(notes.stream().sorted().toList());
    if (last) {
      sorted.addAll(FinalBar.notes(role, lap, List.copyOf(sorted)));
    }
    List<Note> played =
        exact
            ? sorted.stream().map(note -> note.withOffsetMicros(0)).toList()
            : new Humanizer(dice).played(role, sorted, note -> human(lap, note));
    return new Part(role, first().sound(role), played);
  }

  private static Human human(LapPlan lap, Note note) {
    return lap.planAt(note.onset()).groove().human();
  }

  private Groove first() {
    return groove(form.bars().get(0).section());
  }
}
