package hingetone.print;

import hingetone.hearing.Technique;
import hingetone.review.Played;
import hingetone.review.Review;
import hingetone.review.ReviewedPhrase;
import hingetone.review.Story;
import hingetone.take.PlacedNote;
import hingetone.text.Stamp;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * A review for people: how thick the playing was in each bar, then the story with each phrase as
 * tab, the whole last.
 */
public final class ReviewText {
  /** What a page of it bears at its end. */
  public static final Stamp STAMP = new Stamp("review-txt");

  private static final int WIDTH = 100;
  private static final int MARGIN = 9;
  private static final String LEGEND =
      "Where phrases begin, and how many notes are struck in each beat:";

  private final Review review;
  private final List<String> lines = new ArrayList<>();

  /** The phrases by the start of the bar in which they begin. */
  private final Map<Double, List<ReviewedPhrase>> beginning;

  private ReviewText(Review review) {
    this.review = review;
    this.beginning =
        review.phrases().stream()
            .collect(
                Collectors.groupingBy(
                    p ->
                        review
                            .played()
                            .barAt(review.played().notes().get(p.span().from()).at())
                            .start()));
  }

  /** The lines of the page, without line breaks. */
  public static List<String> of(Review review) {
    ReviewText text = new ReviewText(review);
    if (!review.phrases().isEmpty()) {
      text.strip();
    }
    text.story();
    return text.lines;
  }

  private void strip() {
    lines.add(LEGEND);
    List<Played.Bar> row = new ArrayList<>();
    int wide = MARGIN;
    for (Played.Bar bar : soundingBars()) {
      int cell = cell(bar);
      boolean newKey = !row.isEmpty() && !row.get(0).key().equals(bar.key());
      if (wide + cell > WIDTH || newKey) {
        row(row);
        row.clear();
        wide = MARGIN;
      }
      row.add(bar);
      wide += cell;
    }
    row(row);
  }

  /** The bars from the first note to the last. */
  private List<Played.Bar> soundingBars() {
    List<PlacedNote> notes = review.played().notes();
    List<Played.Bar> bars = review.played().bars();
    int from = bars.indexOf(review.played().barAt(notes.get(0).at()));
    int to = bars.indexOf(review.played().barAt(notes.get(notes.size() - 1).at()));
    return bars.subList(from, to + 1);
  }

  private static int cell(Played.Bar bar) {
    return Math.max(bar.of().meter().beatsPerBar(), Integer.toString(bar.number()).length()) + 2;
  }

  private void row(List<Played.Bar> row) {
    StringBuilder bars = new StringBuilder(head("bar"));
    StringBuilder begins = new StringBuilder(head("phrase"));
    StringBuilder notes = new StringBuilder(head("notes"));
    for (Played.Bar bar : row) {
      int[] struck = review.played().struck(bar);
      bars.append(padded(Integer.toString(bar.number()), cell(bar)));
      StringBuilder density = new StringBuilder();
      for (int count : struck) {
        density.append(count == 0 ? "." : count > 9 ? "+" : Integer.toString(count));
      }
      notes.append(padded(density.toString(), cell(bar)));
      begins(begins, bar, notes.length() - cell(bar));
    }
    lines.add("");
    lines.add(head("key") + row.get(0).key());
    lines.add(bars.toString().stripTrailing());
    lines.add(begins.toString().stripTrailing());
    lines.add(notes.toString().stripTrailing());
  }

  /** The numbers of the phrases that begin in a bar, each above the beat, if there is room. */
  private void begins(StringBuilder begins, Played.Bar bar, int column) {
    for (ReviewedPhrase phrase : beginning.getOrDefault(bar.start(), List.of())) {
      double at = review.played().notes().get(phrase.span().from()).at();
      int beat = (int) Math.floor((at - bar.start()) / bar.beatLength() + Played.EARLY);
      int place = column + Math.max(0, beat);
      if (begins.length() <= place) {
        begins.append(" ".repeat(place - begins.length())).append(phrase.index());
      }
    }
  }

  private static String head(String word) {
    return padded(word, MARGIN);
  }

  private static String padded(String text, int width) {
    return text + " ".repeat(Math.max(0, width - text.length()));
  }

  /** The sentences, each phrase's with its tab below. */
  private void story() {
    boolean plain =
        review.played().notes().stream()
            .allMatch(n -> n.handling().technique() == Technique.PLAIN && !n.handling().vibrato());
    if (!plain) {
      lines.add("");
      HeardTab.LEGEND.lines().forEach(lines::add);
    }
    ReviewedBars written = ReviewedBars.of(review);
    boolean afterTab = true;
    for (Story.Told told : Story.told(review)) {
      boolean apart = !lines.isEmpty() && (afterTab || told.phrase().isPresent());
      if (apart) {
        lines.add("");
      }
      afterTab = told.phrase().isPresent();
      lines.add(told.phrase().map(p -> p.index() + "  ").orElse("") + told.sentence());
      told.phrase().ifPresent(phrase -> tab(written, phrase));
    }
  }

  private void tab(ReviewedBars written, ReviewedPhrase phrase) {
    review
        .neck()
        .places()
        .get(phrase.index() - 1)
        .ifPresent(place -> lines.add("On the neck: " + place.words() + "."));
    List<String> rows = written.tab(phrase, WIDTH);
    lines.addAll(rows.subList(0, rows.size() - 1));
  }
}
