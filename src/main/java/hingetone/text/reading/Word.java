package hingetone.text.reading;

import java.util.List;
import java.util.regex.Pattern;

/**
 * A stretch of a source text and where it stands.
 *
 * @param text the stretch
 * @param span its place
 */
public record Word(String text, Span span) {
  /** The pieces of {@code source} within {@code within} that match {@code pattern}, in order. */
  public static List<Word> all(Source source, Span within, Pattern pattern) {
    return pattern
        .matcher(source.text())
        .region(within.start(), within.end())
        .results()
        .map(m -> new Word(m.group(), new Span(m.start(), m.end())))
        .toList();
  }
}
