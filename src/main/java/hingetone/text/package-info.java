/**
 * Texts for people: what others wrote passes the gate {@link hingetone.text.Printable} before it is
 * printed or written; words are quoted, suggested and measured here. {@code text.reading} reads.
 *
 * <p>Everything may use it; it uses nothing.
 *
 * <pre>{@code
 * Printable.of(title);                  // without what would steer a terminal
 * Suggestion.among("fit", List.of("fill", "feel"));
 * }</pre>
 */
package hingetone.text;
