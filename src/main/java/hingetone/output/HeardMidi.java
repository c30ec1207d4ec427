package hingetone.output;

import hingetone.chart.ChartBar;
import hingetone.chart.Form;
import hingetone.chart.Section;
import hingetone.hearing.HeardNote;
import hingetone.hearing.Transcription;
import hingetone.hearing.Transcription.Placed;
import hingetone.midi.BentLine;
import hingetone.print.HeardBars;
import hingetone.score.Mark;
import hingetone.score.Score;
import hingetone.time.Beats;
import hingetone.time.Tempo;
import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/**
 * A recording as a MIDI file: a channel for each string where two sound at once, else one. Its
 * notes play as they were played; with a chart they do so in the chart's bars, at its tempos as
 * fast as they were taken.
 */
public final class HeardMidi {
  private static final int PERCUSSION = 9;

  /** Bends smaller than this are not written, in semitones. */
  private static final double LEAST_BEND = 0.03;

  private final Transcription written;
  private final DoubleUnaryOperator quarters;

  /**
   * @param quarters the place of a moment of the recording
   */
  private HeardMidi(Transcription written, DoubleUnaryOperator quarters) {
    this.written = written;
    this.quarters = quarters;
  }

  /** Writes a recording to a stream, which stays open. */
  public static void write(
      Path file, Transcription written, Optional<HeardBars> bars, OutputStream output)
      throws IOException {
    String title = file.getFileName().toString();
    DoubleUnaryOperator quarters =
        bars.<DoubleUnaryOperator>map(b -> b.alignment()::quarters)
            .orElse(seconds -> seconds * HeardBars.TEMPO / 60);
    HeardMidi midi = new HeardMidi(written, quarters);
    Score head = bars.map(b -> midi.head(title, b, List.of())).orElse(withoutBars(title));
    BentLine.write(head, midi.line(), output);
  }

  /**
   * Writes notes in bars to a stream, which stays open.
   *
   * @param more marks beside those of the bars
   */
  public static void write(
      String title, Transcription written, HeardBars bars, List<Mark> more, OutputStream output)
      throws IOException {
    HeardMidi midi = new HeardMidi(written, bars.alignment()::quarters);
    BentLine.write(midi.head(title, bars, more), midi.line(), output);
  }

  private static Score withoutBars(String title) {
    List<Mark> tempo = List.of(new Mark.OfTempo(Beats.ZERO, Tempo.of(HeardBars.TEMPO)));
    return new Score(title, Beats.ZERO, Beats.ZERO, tempo, List.of());
  }

  /** What the chart says of the bars from the first note to the last. */
  private Score head(String title, HeardBars bars, List<Mark> more) {
    Form form = bars.form();
    List<Mark> marks = new ArrayList<>(more);
    for (int number = 1; number <= bars.lastBar(); number++) {
      Form.Bar bar = form.bar(number);
      Beats start = form.startOf(number);
      if (bar.isFirstOfSection()) {
        addSection(marks, bar.section(), start, bars.alignment().ratio());
      }
      for (ChartBar.Slot slot : bar.chords().chords()) {
        Beats inBar = bar.meter().toQuarters(slot.beat().minus(Beats.ONE));
        marks.add(new Mark.OfChord(start.plus(inBar), slot.chord()));
      }
    }
    Beats countIn = form.startOf(firstBar(bars)).negated();
    return new Score(title, countIn, form.startOf(bars.lastBar() + 1), marks, List.of());
  }

  /** The bar that a file begins with, which may lie before that of the first note as written. */
  public static int firstBar(HeardBars bars) {
    double first =
        bars.notes().stream()
            .mapToDouble(n -> bars.alignment().quarters(n.placed().note().at()))
            .findFirst()
            .orElse(0);
    Beats floor = Beats.of((long) Math.floor(first));
    return Math.min(bars.firstBar(), bars.form().position(floor).bar());
  }

  private static void addSection(List<Mark> marks, Section section, Beats at, double ratio) {
    BigDecimal played = section.tempo().bpm().multiply(BigDecimal.valueOf(ratio));
    marks.add(new Mark.OfSection(at, section.name()));
    marks.add(new Mark.OfKey(at, section.key()));
    marks.add(new Mark.OfMeter(at, section.meter()));
    marks.add(new Mark.OfTempo(at, Tempo.nearest(played.setScale(3, RoundingMode.HALF_UP))));
  }

  private List<BentLine.Note> line() {
    List<Placed> notes = written.notes();
    boolean together = false;
    for (int i = 1; i < notes.size(); i++) {
      together |= notes.get(i).note().at() < notes.get(i - 1).note().end();
    }
    List<BentLine.Note> line = new ArrayList<>();
    for (Placed placed : notes) {
      line.add(note(placed, together));
    }
    return line;
  }

  private BentLine.Note note(Placed placed, boolean together) {
    HeardNote note = placed.note();
    int string = placed.spot().map(spot -> spot.string() - 1).orElse(0);
    int channel = !together ? 0 : string >= PERCUSSION ? string + 1 : string;
    int key = Math.max(0, Math.min(127, note.fretted()));
    return new BentLine.Note(
        quarters.applyAsDouble(note.at()),
        quarters.applyAsDouble(note.end()),
        channel,
        key,
        velocity(note),
        bends(note, key));
  }

  /** A full-scale note is 127; each dB below takes two. */
  private static int velocity(HeardNote note) {
    return (int) Math.max(1, Math.min(127, Math.round(127 + 2 * note.level())));
  }

  private List<BentLine.Bend> bends(HeardNote note, int key) {
    List<BentLine.Bend> bends = new ArrayList<>();
    double last = 0;
    for (HeardNote.Point point : note.curve()) {
      double bend = point.midi() - key;
      if (Math.abs(bend - last) >= LEAST_BEND) {
        bends.add(new BentLine.Bend(quarters.applyAsDouble(point.at()), bend));
        last = bend;
      }
    }
    return bends;
  }
}
