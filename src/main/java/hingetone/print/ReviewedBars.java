package hingetone.print;

import hingetone.chart.Form;
import hingetone.hearing.Alignment;
import hingetone.hearing.HeardNote;
import hingetone.hearing.Transcription;
import hingetone.hearing.Transcription.Placed;
import hingetone.neck.Spot;
import hingetone.review.Played;
import hingetone.review.PlayedNeck;
import hingetone.review.Review;
import hingetone.review.ReviewedPhrase;
import hingetone.take.Handling;
import hingetone.take.PlacedNote;
import hingetone.time.Beats;
import hingetone.time.TempoMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A reviewed take as a recording in its bars, so that it is written down as recordings are. Bars
 * have the numbers they were played under; where some were jumped over or played again, they are
 * numbered in the order in which they were played.
 *
 * @param written its notes, in seconds at {@value HeardBars#TEMPO} quarters a minute from bar 1
 * @param bars the same in bars
 * @param review the review
 */
public record ReviewedBars(Transcription written, HeardBars bars, Review review) {
  private static final double SECONDS_A_QUARTER = 60.0 / HeardBars.TEMPO;

  /** Writes a review down. */
  public static ReviewedBars of(Review review) {
    Played played = review.played();
    boolean follows = follows(played.bars());
    Form form = follows ? review.form() : asPlayed(played.bars());
    double origin = origin(played.bars(), follows, form);
    List<Placed> placed = new ArrayList<>();
    for (List<PlacedNote> moment : PlayedNeck.moments(played)) {
      double struck = moment.get(0).at();
      for (PlacedNote note : moment) {
        Optional<Spot> spot = review.neck().spots().get(placed.size());
        placed.add(new Placed(heard(note, struck, origin), spot));
      }
    }
    double seconds = placed.stream().mapToDouble(p -> p.note().end()).max().orElse(0);
    Transcription written = new Transcription(Math.max(0, seconds), 0, placed, List.of());
    List<HeardNote> notes = placed.stream().map(Placed::note).toList();
    Alignment alignment = Alignment.at(0, TempoMap.of(Beats.of(HeardBars.TEMPO)), notes);
    return new ReviewedBars(written, HeardBars.of(form, alignment, written), review);
  }

  /** Whether the form was simply followed, in the same keys. */
  private static boolean follows(List<Played.Bar> bars) {
    for (int i = 1; i < bars.size(); i++) {
      Played.Bar before = bars.get(i - 1);
      Played.Bar bar = bars.get(i);
      if (bar.number() != before.number() + 1 || bar.keyShift() != before.keyShift()) {
        return false;
      }
    }
    return true;
  }

  /** Where bar 1 lies, in quarter notes of what was played. */
  private static double origin(List<Played.Bar> bars, boolean follows, Form form) {
    if (follows) {
      Played.Bar first = bars.get(0);
      return first.start() - form.startOf(first.number()).toDouble();
    }
    return bars.stream().filter(bar -> bar.number() >= 1).findFirst().orElse(bars.get(0)).start();
  }

  private static Form asPlayed(List<Played.Bar> played) {
    List<Form.Bar> bars = new ArrayList<>();
    Beats start = Beats.ZERO;
    for (Played.Bar bar : played) {
      if (bar.number() >= 1 || !bars.isEmpty()) {
        Form.Bar of = bar.of();
        bars.add(
            new Form.Bar(
                bars.size() + 1, of.section(), of.place(), of.inSection(), start, of.chords()));
        start = start.plus(of.meter().barLength());
      }
    }
    if (bars.isEmpty()) {
      bars.add(played.get(0).of());
      start = bars.get(0).meter().barLength();
    }
    return new Form(bars, start);
  }

  private static HeardNote heard(PlacedNote note, double struckAt, double origin) {
    Handling handling = note.handling();
    List<HeardNote.Point> curve =
        handling.curve().stream()
            .map(p -> new HeardNote.Point(seconds(p.at(), origin), p.midi()))
            .toList();
    return new HeardNote(
        seconds(struckAt, origin),
        seconds(Math.max(note.end(), struckAt), origin),
        (note.velocity() - 127) / 2.0,
        note.struck(),
        note.reached(),
        handling.technique(),
        handling.vibrato(),
        curve,
        1);
  }

  private static double seconds(double quarters, double origin) {
    return (quarters - origin) * SECONDS_A_QUARTER;
  }

  /**
   * The notes of a phrase as tab, with bars, beats and lengths above.
   *
   * @param width characters in a row
   */
  public List<String> tab(ReviewedPhrase phrase, int width) {
    int from = phrase.span().from();
    int to = phrase.span().to();
    Transcription some =
        new Transcription(written.seconds(), 0, written.notes().subList(from, to), List.of());
    HeardBars inBars =
        new HeardBars(
            bars.form(), bars.charted(), bars.alignment(), bars.notes().subList(from, to));
    return HeardTab.of(some, review.neck().neck(), Optional.of(inBars), width);
  }
}
