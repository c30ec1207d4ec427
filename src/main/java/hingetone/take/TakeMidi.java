package hingetone.take;

import hingetone.chart.ChartBar;
import hingetone.chart.Form;
import hingetone.midi.BentLine;
import hingetone.score.Mark;
import hingetone.score.Score;
import hingetone.take.PlayedBars.Place;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Tempo;
import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A take as a MIDI file of format 1: the bars as they were really played, with their tempos, keys,
 * chords and sections, then the notes with their bends. Where the form was not followed (the first
 * bar, a jump, other keys) a cue point says which bar it is: {@code bar 5, keys +2}.
 */
public final class TakeMidi {
  private final Form form;
  private final Take take;
  private final List<PlayedBars.Bar> bars;

  /** Where each bar played begins, in quarter notes from the first that is no count-in. */
  private final List<Beats> starts = new ArrayList<>();

  private final Beats countIn;
  private final Beats length;

  private TakeMidi(Form form, Take take) {
    this.form = form;
    this.take = take;
    this.bars = take.bars().bars();
    this.countIn =
        bars.stream()
            .takeWhile(bar -> bar.number() < 1)
            .map(bar -> meter(bar).barLength())
            .reduce(Beats.ZERO, Beats::plus);
    Beats at = countIn.negated();
    for (PlayedBars.Bar bar : bars) {
      starts.add(at);
      at = at.plus(meter(bar).barLength());
    }
    this.length = at;
  }

  /** Writes a take of a form to a stream, which stays open. */
  public static void write(String title, Form form, Take take, OutputStream out)
      throws IOException {
    TakeMidi file = new TakeMidi(form, take);
    BentLine.write(
        new Score(title, file.countIn, file.length, file.marks(), List.of()), file.notes(), out);
  }

  private Meter meter(PlayedBars.Bar bar) {
    return form.bar(bar.number()).meter();
  }

  private List<Mark> marks() {
    List<Mark> marks = new ArrayList<>();
    for (int i = 0; i < bars.size(); i++) {
      PlayedBars.Bar played = bars.get(i);
      Form.Bar bar = form.bar(played.number());
      Beats at = starts.get(i);
      tempo(i).ifPresent(tempo -> marks.add(new Mark.OfTempo(at, tempo)));
      boolean leads = i == 0 || !follows(i);
      if (i == 0 || !meter(bars.get(i - 1)).equals(bar.meter())) {
        marks.add(new Mark.OfMeter(at, bar.meter()));
      }
      Key key = bar.key().shifted(played.keyShift());
      if (i == 0 || !key.equals(key(i - 1))) {
        marks.add(new Mark.OfKey(at, key));
      }
      if (played.number() >= 1) {
        if (leads || bar.isFirstOfSection()) {
          marks.add(new Mark.OfSection(at, bar.section().name()));
        }
        for (ChartBar.Slot slot : bar.chords().chords()) {
          Beats inBar = bar.meter().toQuarters(slot.beat().minus(Beats.ONE));
          marks.add(new Mark.OfChord(at.plus(inBar), slot.chord()));
        }
      }
      if (leads) {
        marks.add(new Mark.OfCue(at, played.cue()));
      }
    }
    return marks;
  }

  private Key key(int index) {
    PlayedBars.Bar bar = bars.get(index);
    return form.bar(bar.number()).key().shifted(bar.keyShift());
  }

  /** Whether a bar is the one after the bar before, in the same keys. */
  private boolean follows(int index) {
    PlayedBars.Bar before = bars.get(index - 1);
    PlayedBars.Bar bar = bars.get(index);
    return bar.number() == before.number() + 1 && bar.keyShift() == before.keyShift();
  }

  /** The tempo of a bar, from the beats heard in it; empty where none were. */
  private Optional<Tempo> tempo(int index) {
    Meter meter = meter(bars.get(index));
    return take.bars()
        .nanosPerBeat(index)
        .map(
            nanos -> {
              double quarters = 60e9 / nanos * meter.beatLength().toDouble();
              double counted = quarters / meter.tempoNote().toDouble();
              return Tempo.nearest(BigDecimal.valueOf(counted).setScale(3, RoundingMode.HALF_UP));
            });
  }

  private List<BentLine.Note> notes() {
    List<BentLine.Note> notes = new ArrayList<>();
    for (PlayedNote note : take.notes()) {
      Optional<Double> on = quarters(note.on());
      Optional<Double> off = quarters(note.off());
      if (on.isPresent()) {
        double end = off.orElse(on.get());
        List<BentLine.Bend> bends = new ArrayList<>();
        for (PlayedNote.Bend bend : note.bends()) {
          quarters(bend.at()).ifPresent(at -> bends.add(new BentLine.Bend(at, bend.semitones())));
        }
        notes.add(
            new BentLine.Note(on.get(), end, note.channel(), note.key(), note.velocity(), bends));
      }
    }
    return notes;
  }

  private Optional<Double> quarters(long nanos) {
    return take.bars().at(nanos).map(this::quarters);
  }

  private double quarters(Place place) {
    double beat = meter(place.bar()).beatLength().toDouble();
    return starts.get(place.index()).toDouble() + (place.beat() - 1) * beat;
  }
}
