package hingetone.reviewing;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.hearing.Alignment;
import hingetone.hearing.HeardNote;
import hingetone.hearing.Technique;
import hingetone.hearing.Transcription;
import hingetone.hearing.Transcription.Placed;
import hingetone.neck.Fretboard;
import hingetone.output.CommandFailure;
import hingetone.review.Played;
import hingetone.take.Handling;
import hingetone.take.LineWanted;
import hingetone.take.MusicXmlReader;
import hingetone.take.PlacedNote;
import hingetone.take.PlayedBars;
import hingetone.take.TakeReader;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.TempoMap;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;

/**
 * A file of any kind that is read, laid into the bars of a chart: a take of ours or another
 * program's MIDI file, MusicXML, or a recording.
 *
 * @param file the file
 * @param chart what was played over
 * @param wanted which line of it
 * @param offset how many beats after its start the count-in begins; empty to go by the file, or to
 *     find out
 * @param tell told what people should know of the reading
 */
public record ForeignTake(
    Path file, Chart chart, LineWanted wanted, Optional<Double> offset, Consumer<String> tell) {
  /** A file whose tempo is so near to the chart's is meant to be in its bars. */
  private static final double SAME_TEMPO = 0.01;

  /** Three times the spread of one note's nearness to a grid that it does not keep to; our own. */
  private static final double BY_CHANCE = 1;

  /**
   * Reads it.
   *
   * @param progress told how much of a recording is heard, 0 to 1
   * @throws CommandFailure with a sentence where it cannot be read, or not be laid into the bars
   */
  public ReadTake read(DoubleConsumer progress) {
    try {
      String start = start();
      if (start.startsWith("RIFF") || start.startsWith("FORM") || start.startsWith("fLaC")) {
        return heard(progress);
      }
      boolean notation = start.replace("\u00EF\u00BB\u00BF", "").stripLeading().startsWith("<");
      TakeReader read =
          notation
              ? MusicXmlReader.read(file, wanted)
              : TakeReader.read(checked(start).toFile(), wanted);
      read.told().ifPresent(tell);
      return new ReadTake(inBars(read), Optional.empty());
    } catch (IOException e) {
      throw CommandFailure.wrongInput(e.getMessage());
    }
  }

  private String start() throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return new String(in.readNBytes(16), StandardCharsets.ISO_8859_1);
    }
  }

  private Path checked(String start) throws IOException {
    if (start.startsWith("PK")) {
      throw new IOException(file + " is packed; unpack the MusicXML file in it first.");
    }
    if (!start.isEmpty() && !start.startsWith("MThd")) {
      throw new IOException(
          file + " is nothing I can read: I know MIDI, MusicXML, WAV, AIFF and FLAC.");
    }
    return file;
  }

  /** In the bars that the file says, or its quarter notes are; else where its notes fit. */
  private Played inBars(TakeReader read) {
    double bar = meter().barLength().toDouble();
    if (read.bar().filter(other -> Math.abs(other - bar) > 1e-6).isPresent()) {
      throw CommandFailure.wrongInput(
          String.format(
              Locale.ROOT,
              "%s begins with bars of %.4s quarter notes, the chart with bars of %.4s: is it the right"
                  + " chart?",
              file,
              read.bar().get(),
              bar));
    }
    boolean ours = !read.cues().isEmpty() || read.notes().isEmpty();
    if (ours || isInTempo(read) || keepsItsOwnBeat(read)) {
      return Played.of(read, chart, chart.countIn(), offset.orElse(0.0) * beat());
    }
    List<HeardNote> notes = read.notes().stream().map(n -> heard(n, read)).toList();
    double seconds = notes.stream().mapToDouble(HeardNote::end).max().orElseThrow();
    Alignment alignment = aligned(notes, seconds);
    return played(alignment, read.notes(), notes);
  }

  private double beat() {
    return meter().beatLength().toDouble();
  }

  private Meter meter() {
    return chart.form().get(0).meter();
  }

  private boolean isInTempo(TakeReader read) {
    double microsPerQuarter = 60e6 / quartersPerMinute().toDouble();
    double first = read.notes().get(0).at();
    double there =
        read.tempos().stream()
            .filter(t -> t.at() <= first)
            .reduce((before, after) -> after)
            .map(TakeReader.TempoFrom::microsPerQuarter)
            .orElse(microsPerQuarter);
    return Math.abs(there / microsPerQuarter - 1) < SAME_TEMPO;
  }

  private Beats quartersPerMinute() {
    return chart.form().get(0).tempo().quartersPerMinute(meter());
  }

  /** Whether the notes lie on the file's own beats, at whatever tempo. */
  private boolean keepsItsOwnBeat(TakeReader read) {
    double each = 60 / quartersPerMinute().toDouble();
    List<HeardNote> notes =
        read.notes().stream().map(n -> heard(n, n.at() * each, n.end() * each)).toList();
    Alignment own = Alignment.at(0, TempoMap.of(quartersPerMinute()), notes);
    return own.closeness() >= leastCloseness(notes.size());
  }

  /** What notes at random reach by chance only: about a half, the less beyond it the more notes. */
  private static double leastCloseness(int notes) {
    return Math.max(Alignment.LEAST_CLOSENESS, 0.5 + BY_CHANCE / Math.sqrt(notes));
  }

  private static HeardNote heard(PlacedNote note, TakeReader read) {
    return heard(note, read.secondsAt(note.at()), read.secondsAt(note.end()));
  }

  private static HeardNote heard(PlacedNote note, double at, double end) {
    return new HeardNote(
        at, end, -20, note.struck(), note.reached(), Technique.PLAIN, false, List.of(), 1);
  }

  private Alignment aligned(List<HeardNote> notes, double seconds) {
    double countIn = chart.countIn() * meter().barLength().toDouble();
    double each = 60 / quartersPerMinute().toDouble();
    Optional<Double> bar1 = offset.map(beats -> (beats * beat() + countIn) * each);
    Alignment found =
        ChartPlaces.alignment(
            chart,
            notes,
            seconds,
            bar1,
            "how many beats after its start the count-in begins: --offset 2");
    if (bar1.isEmpty() && found.closeness() < leastCloseness(notes.size())) {
      throw CommandFailure.wrongInput(
          "I cannot tell where this lies in the chart: its "
              + notes.size()
              + " notes keep to no beat near the chart's tempo. Say how many beats after its start the"
              + " count-in begins: --offset 2");
    }
    TempoMap tempos = taken(ChartPlaces.tempos(Form.of(chart), seconds), found.ratio());
    double place =
        bar1.isPresent() ? bar1.get() : BarLines.of(chart, tempos, notes, found.offset());
    tell.accept(
        String.format(
            Locale.ROOT,
            "Laid into the chart: bar 1 at %.2f s, %.1f %% of its tempo.",
            place,
            100 * found.ratio()));
    return Alignment.at(place, tempos, notes);
  }

  /** Tempos as fast as they were taken. */
  private static TempoMap taken(TempoMap tempos, double ratio) {
    Beats faster = Beats.of(Math.round(ratio * 10_000), 10_000);
    return new TempoMap(
        tempos.steps().stream()
            .map(s -> new TempoMap.Step(s.at(), s.quartersPerMinute().times(faster)))
            .toList());
  }

  private ReadTake heard(DoubleConsumer progress) {
    Fretboard neck = Fretboard.of(chart.tuning(), chart.capo());
    SoundTake sound = new SoundTake(file, wanted.channel());
    Transcription written = sound.written(neck, progress, tell);
    written.doubts().forEach(tell);
    List<HeardNote> notes = written.notes().stream().map(Placed::note).toList();
    Alignment alignment = aligned(notes, written.seconds());
    List<PlacedNote> placed = notes.stream().map(n -> placed(n, alignment)).toList();
    Played played = played(alignment, placed, notes);
    double ratio = 60_000 / quartersPerMinute().toDouble() / played.msPerQuarter(0);
    return new ReadTake(played, Optional.of(new ReadTake.Recording(sound, notes, ratio)));
  }

  private static PlacedNote placed(HeardNote note, Alignment alignment) {
    List<Handling.Point> curve =
        note.curve().stream()
            .map(p -> new Handling.Point(alignment.quarters(p.at()), p.midi()))
            .toList();
    int velocity = (int) Math.max(1, Math.min(127, Math.round(127 + 2 * note.level())));
    return new PlacedNote(
        alignment.quarters(note.at()),
        alignment.quarters(note.end()),
        note.struck(),
        note.reached(),
        velocity,
        new Handling(note.technique(), note.vibrato(), Optional.empty(), curve));
  }

  /** Notes where an alignment puts them, the file beginning with the bar before the first. */
  private Played played(Alignment alignment, List<PlacedNote> notes, List<HeardNote> heard) {
    Form form = Form.of(chart);
    double first = heard.isEmpty() ? 0 : alignment.quarters(heard.get(0).at());
    int begins =
        Math.min(1 - chart.countIn(), form.position(Beats.of((long) Math.floor(first))).bar());
    double start = form.startOf(begins).toDouble();
    List<PlacedNote> moved = new ArrayList<>();
    for (int i = 0; i < notes.size(); i++) {
      double at = alignment.quarters(heard.get(i).at()) - start;
      double end = alignment.quarters(heard.get(i).end()) - start;
      moved.add(notes.get(i).movedTo(at, end));
    }
    double length = moved.stream().mapToDouble(PlacedNote::end).max().orElse(1);
    double place = alignment.offset();
    double micros = 1e6 / (alignment.quarters(place + 1) - alignment.quarters(place));
    TakeReader file =
        new TakeReader(
            List.of(new TakeReader.Cue(0, new PlayedBars.Bar(begins, 0))),
            List.of(new TakeReader.TempoFrom(0, micros)),
            moved,
            length,
            Optional.empty(),
            Optional.empty());
    return Played.of(file, chart, chart.countIn(), 0);
  }
}
