package hingetone.reviewing;

import hingetone.chart.Form;
import hingetone.handout.MusicXml;
import hingetone.midi.BentLine;
import hingetone.output.FileKind;
import hingetone.output.HeardMidi;
import hingetone.print.HeardBars;
import hingetone.print.ReviewText;
import hingetone.print.ReviewedBars;
import hingetone.review.Review;
import hingetone.review.ReviewedPhrase;
import hingetone.score.Mark;
import hingetone.take.PlayedBars;
import hingetone.text.Choice;
import hingetone.text.Printable;
import hingetone.text.Stamp;
import hingetone.time.Beats;
import hingetone.time.Position;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A review, ready to be put into a file.
 *
 * @param title what it was played over
 * @param review the review
 */
public record WrittenReview(String title, Review review) {
  /** What it can be written as. */
  public static final List<FileKind> KINDS = List.of(FileKind.TXT, FileKind.MID, FileKind.MUSICXML);

  /** What a file of a kind bears at its end. */
  public static Stamp stamp(FileKind kind) {
    return switch (kind) {
      case MID -> BentLine.STAMP;
      case MUSICXML -> MusicXml.STAMP;
      default -> ReviewText.STAMP;
    };
  }

  /**
   * Writes it to a stream, which stays open.
   *
   * @return what it holds, for people
   */
  public String write(FileKind kind, OutputStream output) throws IOException {
    ReviewedBars written = ReviewedBars.of(review);
    if (kind == FileKind.MID) {
      HeardMidi.write(title, written.written(), written.bars(), names(written.bars()), output);
    } else {
      String page = kind == FileKind.MUSICXML ? notation(written) : text();
      output.write(page.getBytes(StandardCharsets.UTF_8));
    }
    return review.played().notes().size() + " notes in " + review.phrases().size() + " phrases";
  }

  private String text() {
    List<String> lines = new ArrayList<>(List.of(title, ""));
    lines.addAll(ReviewText.of(review));
    return Printable.text(String.join("\n", lines)) + "\n\n" + ReviewText.STAMP.open() + "\n";
  }

  private String notation(ReviewedBars written) {
    Map<Position, String> words = new LinkedHashMap<>();
    Form form = written.bars().form();
    for (ReviewedPhrase phrase : review.phrases()) {
      words.put(form.position(start(written.bars(), phrase)), name(phrase));
    }
    return MusicXml.of(title, review.neck().neck(), written.bars(), words);
  }

  /** The phrases' names where they begin, and which bar the file begins with. */
  private List<Mark> names(HeardBars bars) {
    List<Mark> names = new ArrayList<>();
    Beats start = bars.form().startOf(HeardMidi.firstBar(bars));
    names.add(new Mark.OfCue(start, new PlayedBars.Bar(HeardMidi.firstBar(bars), 0).cue()));
    for (ReviewedPhrase phrase : review.phrases()) {
      names.add(new Mark.OfCue(start(bars, phrase), name(phrase)));
    }
    return names;
  }

  private static Beats start(HeardBars bars, ReviewedPhrase phrase) {
    return bars.notes().get(phrase.span().from()).start();
  }

  /** {@code phrase 2, reply to 1}. */
  private static String name(ReviewedPhrase phrase) {
    Optional<String> to = phrase.repliesTo().map(i -> " to " + i);
    return "phrase " + phrase.index() + ", " + Choice.word(phrase.role()) + to.orElse("");
  }
}
