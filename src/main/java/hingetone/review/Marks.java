package hingetone.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A teacher's marks on what was played: where phrases begin, what they do, remarks. The format is
 * specified in {@code src/docs/marks.md}.
 *
 * @param remark a remark on the whole
 * @param phrases the phrases, in order; none to leave the cutting to the program
 */
public record Marks(Optional<String> remark, List<MarkedPhrase> phrases) {
  /** Nothing is marked. */
  public static final Marks NONE = new Marks(Optional.empty(), List.of());

  public Marks {
    phrases = List.copyOf(phrases);
  }

  /** The phrases as they are marked, else as the program finds them. */
  List<PhraseFinder.Span> spans(Played played) {
    if (phrases.isEmpty()) {
      return PhraseFinder.of(played);
    }
    List<PhraseFinder.Span> spans = new ArrayList<>();
    for (int i = 0; i < phrases.size(); i++) {
      int to = i + 1 < phrases.size() ? phrases.get(i + 1).from() : played.notes().size();
      spans.add(new PhraseFinder.Span(phrases.get(i).from(), to, 1));
    }
    return spans;
  }

  /** What is said of a phrase, from 0. */
  Optional<MarkedPhrase> of(int phrase) {
    return phrase < phrases.size() ? Optional.of(phrases.get(phrase)) : Optional.empty();
  }
}
