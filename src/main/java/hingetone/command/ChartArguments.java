package hingetone.command;

import hingetone.backing.Backing;
import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Fluency;
import hingetone.groove.Grooves;
import hingetone.neck.Tuning;
import hingetone.output.CommandFailure;
import hingetone.text.Choice;
import hingetone.text.FileNames;
import hingetone.text.Suggestion;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import hingetone.text.reading.TextFile;
import hingetone.time.Tempo;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.TypeConversionException;

/** The chart a command works on, and the options that change what it says. */
final class ChartArguments {
  @Parameters(paramLabel = "CHART", description = "The chart; - reads standard input.")
  String file;

  @Option(
      names = "--tempo",
      paramLabel = "BPM",
      converter = ToTempo.class,
      description = "Counted notes a minute, for all sections.")
  Optional<Tempo> tempo = Optional.empty();

  @Option(
      names = "--key-shift",
      paramLabel = "SEMITONES",
      converter = ToShift.class,
      description = "Move everything by semitones, -11 to 11.")
  int keyShift;

  @Option(
      names = "--groove",
      paramLabel = "NAME",
      description = "A groove for all sections: a name or a path.")
  Optional<String> groove = Optional.empty();

  @Option(
      names = "--seed",
      paramLabel = "N",
      converter = ToSeed.class,
      description = "What varies follows this number; the same seed gives the same notes.")
  Optional<Long> seed = Optional.empty();

  @Option(
      names = "--tuning",
      paramLabel = "TUNING",
      converter = ToTuning.class,
      description = "A name, or the open strings from low to high: \"D A D G A D\".")
  Optional<Tuning> tuning = Optional.empty();

  @Option(
      names = "--capo",
      paramLabel = "FRET",
      converter = ToCapo.class,
      description = "The fret of the capo, 0 to 12.")
  Optional<Integer> capo = Optional.empty();

  @Option(
      names = "--position",
      paramLabel = "FRET",
      converter = ToPosition.class,
      description = "The fret that your hand stays around, 1 to 20.")
  Optional<Integer> position = Optional.empty();

  @Option(
      names = "--fluency",
      paramLabel = "WORD",
      converter = ToFluency.class,
      description = "How fast you get: easy, normal or fast. Example phrases keep to it.")
  Optional<Fluency> fluency = Optional.empty();

  @Option(names = "--left-handed", description = "Draw necks for the left hand.")
  boolean leftHanded;

  private Source source;

  /**
   * The chart as the file and the options say it.
   *
   * @throws CommandFailure with the reports when the chart has problems
   */
  Chart read() {
    Reading<Source> text = TextFile.read(file);
    source = text.value().orElseThrow(() -> CommandFailure.problems(text.problems()));
    Reading<Chart> reading = ChartReader.read(source);
    Chart chart = reading.value().orElseThrow(() -> CommandFailure.problems(reading.problems()));
    chart = tempo.map(chart::withTempo).orElse(chart);
    chart = groove.map(chart::withGroove).orElse(chart);
    chart = seed.map(chart::withSeed).orElse(chart);
    chart = tuning.map(chart::withTuning).orElse(chart);
    chart = capo.map(chart::withCapo).orElse(chart);
    chart = position.isPresent() ? chart.withPosition(position) : chart;
    chart = fluency.map(chart::withFluency).orElse(chart);
    return keyShift == 0 ? chart : chart.shifted(keyShift);
  }

  /** The text of the chart that {@link #read} gave. */
  String text() {
    return source.text();
  }

  /** The grooves there are, paths counted from the chart's folder. */
  Grooves grooves() {
    return Folders.grooves().beside(folder(file));
  }

  /**
   * The band for a chart that {@link #read} gave.
   *
   * @throws CommandFailure with the reports when a groove is missing or does not fit
   */
  Backing backing(Chart chart) {
    Reading<Backing> reading = Backing.read(chart, grooves(), source);
    return reading.value().orElseThrow(() -> CommandFailure.problems(reading.problems()));
  }

  /** Every file that a command with this chart reads. */
  List<Path> inputs(Chart chart) {
    Grooves grooves = grooves();
    List<Path> inputs = new ArrayList<>();
    inputs.add(FileNames.path(file.equals("-") ? "/dev/stdin" : file));
    inputs.addAll(grooves.files().own().values());
    inputs.addAll(Folders.bank().files().own().values());
    chart.sections().stream()
        .flatMap(section -> section.groove().stream())
        .flatMap(name -> grooves.file(name).stream())
        .forEach(inputs::add);
    return inputs;
  }

  /** The folder a file lies in; the working folder for standard input. */
  static Path folder(String file) {
    Path parent = file.equals("-") ? null : FileNames.path(file).getParent();
    return parent == null ? Path.of("") : parent;
  }

  /** Reads a tempo. */
  static final class ToTempo implements ITypeConverter<Tempo> {
    @Override
    public Tempo convert(String text) {
      return Tempo.parse(text)
          .orElseThrow(
              () ->
                  new TypeConversionException(
                      "\""
                          + text
                          + "\" is no tempo: I expected a number from "
                          + Tempo.SLOWEST
                          + " to "
                          + Tempo.FASTEST));
    }
  }

  /** Reads a shift in semitones. */
  static final class ToShift extends WholeNumber {
    ToShift() {
      super(-11, 11, "semitones");
    }
  }

  /** Reads a seed. */
  static final class ToSeed implements ITypeConverter<Long> {
    @Override
    public Long convert(String text) {
      return Chart.parseSeed(text)
          .orElseThrow(
              () ->
                  new TypeConversionException(
                      "\""
                          + text
                          + "\" is no seed: I expected a whole number of at most 18 digits"));
    }
  }

  /** Reads the fret of a capo. */
  static final class ToCapo extends WholeNumber {
    ToCapo() {
      super(0, 12, "frets");
    }
  }

  /** Reads the fret of a position. */
  static final class ToPosition extends WholeNumber {
    ToPosition() {
      super(1, Chart.HIGHEST_POSITION, "frets");
    }
  }

  /** Reads how fast a player gets. */
  static final class ToFluency implements ITypeConverter<Fluency> {
    @Override
    public Fluency convert(String text) {
      return Choice.named(Fluency.values(), text)
          .orElseThrow(
              () ->
                  new TypeConversionException("\"" + text + "\": I expected easy, normal or fast"));
    }
  }

  /** Reads a tuning. */
  static final class ToTuning implements ITypeConverter<Tuning> {
    @Override
    public Tuning convert(String text) {
      List<String> known = Tuning.NAMED.stream().map(Tuning::name).toList();
      return Tuning.parse(text)
          .orElseThrow(
              () ->
                  new TypeConversionException(
                      "\""
                          + text
                          + "\" is no tuning: I expected open strings from low to high, or "
                          + String.join(", ", known)
                          + Suggestion.nearest(text, known)
                              .map(name -> ". Did you mean " + name + "?")
                              .orElse("")));
    }
  }

  /** Reads a number of laps. */
  static final class ToLaps extends WholeNumber {
    ToLaps() {
      super(1, 1000, "laps");
    }
  }
}
