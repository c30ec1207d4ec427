package hingetone.reviewing;

import hingetone.chart.Form;
import hingetone.neck.Fretboard;
import hingetone.output.CommandFailure;
import hingetone.phrase.Phrase;
import hingetone.phrase.PhraseReader;
import hingetone.phrase.PhraseText;
import hingetone.phrase.Statement;
import hingetone.phrase.Tone;
import hingetone.print.HeardBars;
import hingetone.print.ReviewedBars;
import hingetone.review.Review;
import hingetone.review.ReviewedPhrase;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import hingetone.text.reading.TextFile;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Position;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Writes phrases of a take into the player's own file of phrases: the one that is named, and those
 * in which its opening comes back with another ending, as {@code NAME-ending-2} and on. Bends and
 * fingering stand above each as tab, which the format has no place for.
 */
public final class KeptPhrases {
  private static final String HEAD = "about: kept from takes\nstatements:\n";
  private static final int TAB_WIDTH = 100;
  private static final double PACE = 1.3;
  private static final Beats PUSH = Beats.of(1, 2);

  private final Review review;
  private final ReviewedBars written;
  private final List<String> kept = new ArrayList<>();
  private final StringBuilder text = new StringBuilder();

  private KeptPhrases(Review review) {
    this.review = review;
    this.written = ReviewedBars.of(review);
  }

  /**
   * Adds a phrase to a file, which is made where there is none. Nothing in it is changed.
   *
   * @param number the phrase's number, from 1
   * @return what was done, for people
   * @throws CommandFailure where it cannot be kept, with the reason
   */
  public static String add(Review review, int number, String name, Path file) {
    KeptPhrases keeping = new KeptPhrases(review);
    keeping.phrases(number, name);
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
      String before = Files.exists(file) ? readable(file) : HEAD;
      String after = before + (before.endsWith("\n") ? "" : "\n") + keeping.text;
      check(file, before, after, keeping.kept);
      Path part = file.resolveSibling(file.getFileName() + ".part");
      Files.writeString(part, after);
      Files.move(part, file, StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException e) {
      throw CommandFailure.couldNot("Cannot write " + file + ": " + e.getMessage());
    }
    return file + ": " + String.join(", ", keeping.kept);
  }

  private static String readable(Path file) {
    Reading<Source> read = TextFile.read(file);
    return read.value().orElseThrow(() -> CommandFailure.problems(read.problems())).text();
  }

  /** Whether the file can take them: it is sound before and after, and no name stands in it. */
  private static void check(Path file, String before, String after, List<String> names) {
    if (!before.equals(HEAD)) {
      List<Statement> there = statements(file, before);
      for (Statement statement : there) {
        if (names.contains(statement.name())) {
          throw CommandFailure.wrongInput(
              "\"" + statement.name() + "\" stands in " + file + " already; give another name.");
        }
      }
    }
    statements(file, after);
  }

  private static List<Statement> statements(Path file, String text) {
    Reading<List<Statement>> read = PhraseReader.read(new Source(file.toString(), text));
    return read.value().orElseThrow(() -> CommandFailure.problems(read.problems()));
  }

  private void phrases(int number, String name) {
    if (number < 1 || number > review.phrases().size()) {
      throw CommandFailure.wrongInput(
          "There is no phrase " + number + ": the take has " + review.phrases().size() + ".");
    }
    add(review.phrases().get(number - 1), name);
    int ending = 2;
    for (ReviewedPhrase phrase : review.phrases()) {
      boolean other = phrase.returns().filter(r -> r.of() == number && !r.sameEnding()).isPresent();
      if (other && phrase(phrase).isPresent()) {
        add(phrase, name + "-ending-" + ending++);
      }
    }
  }

  private void add(ReviewedPhrase phrase, String name) {
    Placed placed =
        phrase(phrase)
            .orElseThrow(
                () ->
                    CommandFailure.wrongInput(
                        "Phrase "
                            + phrase.index()
                            + " cannot be kept: a phrase in a file has two notes at least, a pickup of"
                            + " at most a bar and four bars after it. --marks can cut it otherwise."));
    kept.add(name);
    Fretboard neck = review.neck().neck();
    for (String row : written.tab(phrase, TAB_WIDTH)) {
      text.append(row.isBlank() ? "" : "  # " + row + "\n");
    }
    text.append(neck.capo() == 0 ? "" : "  # capo at fret " + neck.capo() + "\n");
    text.append("  ").append(name).append(":\n");
    text.append("    key: ").append(placed.phrase.key()).append('\n');
    text.append("    meter: ").append(placed.meter).append('\n');
    text.append("    tempo: ").append(placed.tempo).append('\n');
    text.append("    notes: \"").append(placed.notes).append("\"\n");
  }

  /** A phrase around its landing, and what stands beside it in the file. */
  private record Placed(Phrase phrase, Meter meter, String tempo, String notes) {}

  private Optional<Placed> phrase(ReviewedPhrase phrase) {
    List<HeardBars.Barred> notes =
        written.bars().notes().subList(phrase.span().from(), phrase.span().to());
    Form form = written.bars().form();
    Beats zero = landing(phrase, notes, form);
    Form.Bar bar = form.bar(form.position(zero).bar());
    Key key = bar.key();
    List<Tone> tones = new ArrayList<>();
    for (HeardBars.Barred note : notes) {
      int pitch = (int) Math.round(note.placed().note().reached());
      Beats length = note.end().minus(note.start());
      tones.add(Tone.of(note.start().minus(zero), length, key.spell(pitch)));
    }
    Phrase around = new Phrase(key, tones);
    Meter meter = bar.meter();
    boolean fits =
        tones.size() > 1
            && !around.start().negated().isAfter(meter.barLength())
            && !around.end().isAfter(meter.barLength().times(4));
    double bpm = bar.section().tempo().bpm().doubleValue();
    String tempo =
        Math.max(20, Math.round(bpm / PACE)) + "-" + Math.min(400, Math.round(bpm * PACE));
    return PhraseText.of(around, meter)
        .filter(text -> fits)
        .map(text -> new Placed(around, meter, tempo, text));
  }

  /** The strong place it lands on: its landing, a push's bar line, else its first note. */
  private static Beats landing(ReviewedPhrase phrase, List<HeardBars.Barred> notes, Form form) {
    int pitch = phrase.landing().map(ReviewedPhrase.Landing::pitch).orElse(-1);
    Optional<HeardBars.Barred> main =
        phrase
            .landing()
            .flatMap(
                landing ->
                    notes.stream()
                        .filter(n -> Math.round(n.placed().note().reached()) == pitch)
                        .min(
                            Comparator.comparing(
                                n ->
                                    Math.abs(
                                        n.start().minus(form.quarters(landing.at())).toDouble()))));
    HeardBars.Barred note = main.orElse(notes.get(0));
    Beats line = note.start().plus(PUSH);
    Position place = form.position(line);
    boolean pushed = place.beat().equals(Beats.ONE) && note.end().isAfter(line);
    return pushed ? line : note.start();
  }
}
