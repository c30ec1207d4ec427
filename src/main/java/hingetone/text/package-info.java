/**
 * Texts for people: what others wrote passes the gate {@link hingetone.text.Printable} before it is
 * printed or written; words are quoted, suggested and measured here. {@code text.reading} reads.
 *
 * <p>Everything may use it; it uses nothing.
 *
 * <pre>{@code
 * Printable.line("one\nline");                           // → one·line
 * Suggestion.nearest("groov", List.of("groove", "band"));   // → Optional[groove]
 * }</pre>
 */
package hingetone.text;
