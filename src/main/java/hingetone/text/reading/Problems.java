package hingetone.text.reading;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Collects the problems of one text while it is read, so that a single reading reports them all.
 *
 * <p>After {@value #MOST} problems it takes no more: nobody reads on, and a file of rubbish must
 * not fill the memory.
 */
public final class Problems {
  private static final int MOST = 1000;

  private final Source source;
  private final List<Diagnostic> found = new ArrayList<>();

  public Problems(Source source) {
    this.source = source;
  }

  public Source source() {
    return source;
  }

  /** Notes a problem; see {@link Diagnostic} for what the texts are. */
  public void add(Span span, String message, String expected) {
    add(span, message, expected, Optional.empty());
  }

  /** Notes a problem with a suggestion. */
  public void add(Span span, String message, String expected, Optional<String> suggestion) {
    if (found.size() < MOST) {
      found.add(new Diagnostic(source, span, message, expected, suggestion));
    }
  }

  /** Notes the problems that another reader of the same text found. */
  public void addAll(List<Diagnostic> problems) {
    problems.stream().limit(MOST - found.size()).forEach(found::add);
  }

  public boolean isEmpty() {
    return found.isEmpty();
  }

  /** Whether a problem was noted that starts within a span. */
  public boolean anyIn(Span span) {
    return found.stream()
        .anyMatch(d -> d.span().start() >= span.start() && d.span().start() <= span.end());
  }

  /** The value when there was no problem, else the problems in the order of the text. */
  public <T> Reading<T> reading(Supplier<T> value) {
    if (found.isEmpty()) {
      return Reading.of(value.get());
    }
    return Reading.failed(
        found.stream().sorted(Comparator.comparingInt(d -> d.span().start())).toList());
  }
}
