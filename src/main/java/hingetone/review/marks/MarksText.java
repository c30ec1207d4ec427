package hingetone.review.marks;

import hingetone.review.Review;
import hingetone.review.ReviewedPhrase;
import hingetone.text.Choice;
import hingetone.text.Stamp;
import java.util.Optional;

/** A review as a file of marks, for a teacher to go on from. */
public final class MarksText {
  /** What the file bears at its end. */
  public static final Stamp STAMP = new Stamp("marks");

  private static final String HEAD =
      "# What the program takes for phrases. Change where they begin, their roles, and write remarks;\n"
          + "# phrases may be added, or taken out. Then: review TAKE --marks THIS-FILE\n";

  private MarksText() {}

  /** The text of the file. */
  public static String of(Review review) {
    StringBuilder text = new StringBuilder(HEAD);
    review
        .remark()
        .ifPresent(remark -> text.append("remark: ").append(quoted(remark)).append('\n'));
    text.append(review.phrases().isEmpty() ? "# Nothing was played.\n" : "phrases:\n");
    int before = -1;
    for (ReviewedPhrase phrase : review.phrases()) {
      int first = phrase.span().from();
      add(text, MarkPlace.of(review.played(), first, before), phrase);
      before = first;
    }
    return text.append("# ").append(STAMP.open()).append('\n').toString();
  }

  private static void add(StringBuilder text, MarkPlace place, ReviewedPhrase phrase) {
    text.append("  - from: ").append(place.position()).append('\n');
    line(text, "time", place.time());
    line(text, "role", Optional.of(Choice.word(phrase.role())));
    line(text, "to", phrase.repliesTo());
    line(text, "remark", phrase.remark().map(MarksText::quoted));
  }

  private static void line(StringBuilder text, String key, Optional<?> value) {
    value.ifPresent(v -> text.append("    ").append(key).append(": ").append(v).append('\n'));
  }

  /** A single-quoted scalar of YAML 1.2 (section 7.3.2), in one line. */
  private static String quoted(String text) {
    return "'" + text.strip().replaceAll("\\s+", " ").replace("'", "''") + "'";
  }
}
