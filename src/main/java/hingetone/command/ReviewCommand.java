package hingetone.command;

import hingetone.backing.Backing;
import hingetone.chart.Chart;
import hingetone.neck.PatternNumbers;
import hingetone.output.CommandFailure;
import hingetone.output.FileKind;
import hingetone.output.Overwriting;
import hingetone.output.Progress;
import hingetone.print.ReviewJson;
import hingetone.print.ReviewText;
import hingetone.review.Marks;
import hingetone.review.Played;
import hingetone.review.Review;
import hingetone.review.TakeChanges;
import hingetone.review.marks.MarksReader;
import hingetone.review.marks.MarksText;
import hingetone.reviewing.ForeignTake;
import hingetone.reviewing.KeptPhrases;
import hingetone.reviewing.PhrasePlayer;
import hingetone.reviewing.PhraseSound;
import hingetone.reviewing.ReadTake;
import hingetone.reviewing.TakeComparison;
import hingetone.reviewing.TakeFinder;
import hingetone.reviewing.WrittenReview;
import hingetone.sequencer.PlaySetup;
import hingetone.take.LineWanted;
import hingetone.take.TakeFiles;
import hingetone.text.FileNames;
import hingetone.text.reading.TextFile;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Tells what was played, bar by bar, and why it worked. */
@Command(
    name = "review",
    description = {
      "Tell what was played, bar by bar, and why it worked.",
      "Without a name the last take; a file of another program, MIDI, MusicXML or a recording,",
      "goes with --chart."
    })
final class ReviewCommand implements Runnable {
  /** Instead of a phrase's number: one after another. */
  private static final int EACH = 0;

  @Spec CommandSpec spec;

  @Parameters(
      paramLabel = "TAKE",
      arity = "0..2",
      description = {
        "A take's name, or a file: MIDI, MusicXML, WAV, AIFF or FLAC.",
        "Two are compared: what changed from the first to the second."
      })
  List<String> takes = List.of();

  @Option(
      names = "--chart",
      paramLabel = "CHART",
      description = "The chart it was played over; a take has its own.")
  Optional<String> chart = Optional.empty();

  @Option(
      names = "--offset",
      paramLabel = "BEATS",
      converter = ToBeats.class,
      description = {
        "How many beats after the file's start the count-in begins, as a backing begins with it;",
        "before it when negative. Our own takes know."
      })
  Optional<Double> offset = Optional.empty();

  @Option(
      names = "--track",
      paramLabel = "N",
      converter = ToTrack.class,
      description = "The track or part with the solo, from 1; the most melody-like unless stated.")
  Optional<Integer> track = Optional.empty();

  @Option(
      names = "--channel",
      paramLabel = "N",
      converter = TranscribeCommand.ToChannel.class,
      description = "The MIDI channel with the solo, or the channel of a recording, from 1.")
  Optional<Integer> channel = Optional.empty();

  @Option(
      names = "--marks",
      paramLabel = "FILE",
      description = "A teacher's marks: where phrases begin, their roles, remarks.")
  Optional<String> marks = Optional.empty();

  @Option(
      names = "--marks-out",
      paramLabel = "FILE",
      description = "Write what the program takes for phrases as such a file, to go on from.")
  Optional<Path> marksOut = Optional.empty();

  @Option(
      names = "--keep",
      paramLabel = "N=NAME",
      description = {
        "Write phrase N into your file of phrases under a name, and those that have its opening",
        "with another ending; map, plan and play then know it."
      })
  Map<Integer, String> keep = Map.of();

  @Option(
      names = "--play",
      paramLabel = "N",
      arity = "0..1",
      fallbackValue = "" + EACH,
      converter = ToPhrase.class,
      description = "Play phrase N over the band, or each in turn.")
  Optional<Integer> play = Optional.empty();

  @Option(
      names = "--speed",
      paramLabel = "PERCENT",
      converter = ToSpeed.class,
      description = "With --play: slower, the pitch kept, 25 to 100 (${DEFAULT-VALUE}).",
      defaultValue = "100")
  int speed;

  @Option(names = "--alone", description = "With --play: without the band.")
  boolean alone;

  @Option(
      names = "--loop",
      paramLabel = "TIMES",
      converter = ToTimes.class,
      description = "With --play: each so many times, 1 to 1000 (${DEFAULT-VALUE}).",
      defaultValue = "1")
  int loop;

  @Option(
      names = "--volume",
      paramLabel = "0..100",
      converter = OutputOptions.ToVolume.class,
      description = "With --play: how loud (${DEFAULT-VALUE}): start low, then come up.",
      defaultValue = "" + PlaySetup.MODERATE_VOLUME)
  int volume;

  @Mixin SoundFontOption soundFont;

  @Mixin OutputFile output;

  @Option(
      names = "--pattern-one",
      paramLabel = "DEGREES",
      defaultValue = "${env:HINGETONE_PATTERN_ONE:-1}",
      converter = MapCommand.ToPatterns.class,
      description = "The degree that pattern 1 starts on, as for map.")
  PatternNumbers patterns;

  @Option(names = "--json", description = "Print JSON.")
  boolean json;

  @Override
  public void run() {
    if (takes.size() == 2) {
      compare(takes.get(0), takes.get(1));
      return;
    }
    Path notes = notes(takes.stream().findFirst());
    Chart over = chart(notes);
    ReadTake read = read(notes, over);
    Review review = review(read.played(), over);
    if (play.isPresent()) {
      play(play.get(), read, review, over);
      return;
    }
    marksOut.ifPresent(file -> writeMarks(file, review, notes));
    keep.forEach((number, name) -> print(List.of(keep(review, number, name))));
    if (output.file.isPresent()) {
      write(new WrittenReview(over.title(), review), notes);
    }
    if (json) {
      print(List.of(ReviewJson.of(review).stripTrailing()));
    } else if (marksOut.isEmpty() && output.file.isEmpty() && keep.isEmpty()) {
      print(ReviewText.of(review));
    }
  }

  private Review review(Played played, Chart over) {
    return Review.of(played, over, marks(played), patterns);
  }

  private Review review(Path notes) {
    Chart over = chart(notes);
    return review(read(notes, over).played(), over);
  }

  private void play(int number, ReadTake read, Review review, Chart over) {
    int phrases = review.phrases().size();
    if (number > phrases) {
      throw CommandFailure.wrongInput(
          "There is no phrase " + number + ": the take has " + phrases + ".");
    }
    Optional<Backing> band =
        alone ? Optional.empty() : Optional.of(Backing.of(over, Folders.grooves()));
    PhraseSound sound = new PhraseSound(review, read.recording(), band, speed, soundFont::bankFor);
    try (PhrasePlayer player = PhrasePlayer.open(sound.rate(), volume)) {
      int first = number == EACH ? 1 : number;
      for (int phrase = first; phrase <= (number == EACH ? phrases : number); phrase++) {
        print(List.of("Phrase " + phrase + ", " + review.phrases().get(phrase - 1).start()));
        for (int time = 0; time < loop; time++) {
          player.play(sound.of(phrase));
        }
      }
    }
  }

  private void compare(String first, String second) {
    boolean more =
        marks.isPresent() || marksOut.isPresent() || output.file.isPresent() || !keep.isEmpty();
    if (more) {
      throw CommandFailure.wrongInput("Two takes are compared; marks, -o and --keep go with one.");
    }
    Path before = notes(Optional.of(first));
    Path after = notes(Optional.of(second));
    TakeChanges changes = TakeChanges.of(review(before), review(after));
    TakeComparison comparison = new TakeComparison(name(first), name(second), changes);
    print(json ? List.of(comparison.json().stripTrailing()) : comparison.lines());
  }

  private static String name(String take) {
    return String.valueOf(FileNames.path(take).getFileName());
  }

  private void print(List<String> lines) {
    PrintWriter out = spec.commandLine().getOut();
    lines.forEach(out::println);
    out.flush();
  }

  private void write(WrittenReview written, Path notes) {
    FileKind kind = output.kind(WrittenReview.KINDS);
    List<String> lines =
        output.write(
            inputs(notes),
            WrittenReview.stamp(kind),
            Map.of(),
            places -> {
              try (OutputStream out = Files.newOutputStream(places.get(0))) {
                return written.write(kind, out);
              }
            });
    output.tell(lines);
  }

  private static String keep(Review review, int number, String name) {
    if (!name.matches("[\\p{L}][\\p{L}\\p{N}-]{0,40}")) {
      throw CommandFailure.wrongInput(
          "\"" + name + "\" is no name of a phrase: it has letters, digits and hyphens.");
    }
    return KeptPhrases.add(review, number, name, Folders.data().resolve("phrases/kept.yaml"));
  }

  /** What is read, and never written over. */
  private List<Path> inputs(Path notes) {
    List<Path> inputs = new ArrayList<>(List.of(notes));
    marks.map(FileNames::path).ifPresent(inputs::add);
    chart.map(FileNames::path).ifPresent(inputs::add);
    return inputs;
  }

  private ReadTake read(Path notes, Chart over) {
    PrintWriter err = spec.commandLine().getErr();
    LineWanted wanted = new LineWanted(track, channel);
    return new ForeignTake(notes, over, wanted, offset, err::println).read(Progress.on(err));
  }

  private Marks marks(Played played) {
    return marks
        .map(TextFile::read)
        .map(text -> text.then(source -> MarksReader.read(source, played)))
        .map(read -> read.value().orElseThrow(() -> CommandFailure.problems(read.problems())))
        .orElse(Marks.NONE);
  }

  private void writeMarks(Path file, Review review, Path notes) {
    print(
        OutputFile.write(
            file,
            new Overwriting(inputs(notes), output.force),
            MarksText.STAMP,
            Map.of(),
            places -> {
              Files.writeString(places.get(0), MarksText.of(review));
              return review.phrases().size() + " phrases";
            }));
  }

  private Path notes(Optional<String> take) {
    return new TakeFinder(new TakeFiles(Folders.takes())).notes(take);
  }

  private Chart chart(Path notes) {
    return TakeFinder.chart(notes, chart);
  }

  /** Reads the number of a phrase. */
  static final class ToPhrase extends WholeNumber {
    ToPhrase() {
      super(EACH, 100_000, "phrases");
    }
  }

  /** Reads how fast. */
  static final class ToSpeed extends WholeNumber {
    ToSpeed() {
      super(25, 100, "per cent");
    }
  }

  /** Reads how often. */
  static final class ToTimes extends WholeNumber {
    ToTimes() {
      super(1, 1000, "times");
    }
  }

  /** Reads the number of a track. */
  static final class ToTrack extends WholeNumber {
    ToTrack() {
      super(1, 10_000, "tracks");
    }
  }

  /** Reads a number of beats. */
  static final class ToBeats extends DecimalNumber {
    ToBeats() {
      super("number of beats", "one such as 4 or 1.5");
    }
  }
}
