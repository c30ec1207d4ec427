package hingetone.reviewing;

import hingetone.backing.Backing;
import hingetone.chart.Form;
import hingetone.print.HeardBars;
import hingetone.print.ReviewedBars;
import hingetone.review.Review;
import hingetone.review.ReviewedPhrase;
import hingetone.score.Mark;
import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.time.Beats;
import hingetone.time.Tempo;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A phrase of a take as music to be heard: its whole bars, as it was played, with the band or
 * alone. A bent note is two, the one that is struck, then the one it reaches.
 *
 * @param review the take
 * @param band the band; empty to leave it out
 * @param percent how fast, 100 being the chart's tempo
 */
public record PhraseScore(Review review, Optional<Backing> band, double percent) {
  /** A clean electric guitar of General MIDI, before the band. */
  private static final Sound SOUND = new Sound(27, 104, 64, 35);

  private static final int PARTS = 960;
  private static final Beats SHORTEST = Beats.of(1, 32);
  private static final Beats RISE = Beats.of(1, 8);

  /**
   * The music of a phrase.
   *
   * @param number the phrase's number, from 1
   */
  public Score of(int number) {
    ReviewedPhrase phrase = review.phrases().get(number - 1);
    HeardBars bars = ReviewedBars.of(review).bars();
    List<HeardBars.Barred> notes = bars.notes().subList(phrase.span().from(), phrase.span().to());
    Form form = bars.form();
    Beats ends = notes.stream().map(HeardBars.Barred::end).reduce(Beats::max).orElseThrow();
    int first = form.position(notes.get(0).start()).bar();
    int after = form.position(ends).bar();
    int last = form.startOf(after).equals(ends) ? after - 1 : after;
    Beats start = form.startOf(first);
    List<Note> lead = new ArrayList<>();
    notes.forEach(note -> add(lead, note, bars, start));
    List<Mark> marks = new ArrayList<>();
    Map<Role, Part> parts = new LinkedHashMap<>();
    for (int barNumber = first; barNumber <= last; barNumber++) {
      Form.Bar bar = form.bar(barNumber);
      Beats at = form.startOf(barNumber).minus(start);
      marks.add(new Mark.OfMeter(at, bar.meter()));
      marks.add(new Mark.OfTempo(at, tempo(bar)));
      if (barNumber >= 1) {
        int lap = form.lapOf(barNumber);
        band.ifPresent(b -> addBand(parts, b.lap(lap), bar, at));
      }
    }
    List<Part> all = new ArrayList<>(parts.values());
    all.add(new Part(Role.LEAD, SOUND, lead));
    Beats length = form.startOf(last + 1).minus(start);
    return new Score("phrase " + number, Beats.ZERO, length, marks, all);
  }

  /** The same music without the solo. */
  static Score withoutLead(Score score) {
    List<Part> parts = score.parts().stream().filter(p -> p.role() != Role.LEAD).toList();
    return new Score(score.title(), score.countIn(), score.length(), score.marks(), parts);
  }

  private Tempo tempo(Form.Bar bar) {
    BigDecimal share = BigDecimal.valueOf(percent).movePointLeft(2);
    BigDecimal slower = bar.section().tempo().bpm().multiply(share);
    return Tempo.nearest(slower.setScale(3, RoundingMode.HALF_UP));
  }

  private static void addBand(Map<Role, Part> parts, Score lap, Form.Bar bar, Beats at) {
    for (Part part : lap.parts()) {
      List<Note> inBar =
          part.notes().stream()
              .filter(n -> !n.onset().isBefore(bar.start()) && n.onset().isBefore(bar.end()))
              .map(n -> n.withOnset(n.onset().minus(bar.start()).plus(at)))
              .toList();
      Part more = new Part(part.role(), part.sound(), inBar);
      parts.merge(part.role(), more, (before, next) -> before.plus(next.notes()));
    }
  }

  private static void add(List<Note> lead, HeardBars.Barred note, HeardBars bars, Beats start) {
    Beats onset = place(bars, note.placed().note().at()).minus(start).max(Beats.ZERO);
    Beats end = place(bars, note.placed().note().end()).minus(start).max(onset.plus(SHORTEST));
    int velocity = (int) Math.max(1, Math.min(127, 127 + 2 * note.placed().note().level()));
    int struck = key(note.placed().note().struck());
    int reached = key(note.placed().note().reached());
    Beats rise = struck == reached ? Beats.ZERO : RISE.min(end.minus(onset).dividedBy(2));
    if (rise.isPositive()) {
      lead.add(new Note(onset, rise, struck, velocity));
    }
    lead.add(new Note(onset.plus(rise), end.minus(onset).minus(rise), reached, velocity));
  }

  private static Beats place(HeardBars bars, double seconds) {
    return Beats.of(Math.round(bars.alignment().quarters(seconds) * PARTS), PARTS);
  }

  private static int key(double midi) {
    return (int) Math.max(0, Math.min(127, Math.round(midi)));
  }
}
