/**
 * Texts that people wrote, places in them, and the reports on what is wrong there.
 *
 * <p>Everything may use it; it uses nothing. A reader gives a {@link hingetone.text.Reading}: a
 * value, or every problem with its place. What others wrote is printed and written through {@link
 * hingetone.text.Printable}.
 *
 * <pre>{@code
 * Source source = new Source("harbour.yaml", text);
 * Diagnostic.of(source, new Span(40, 43), "unknown chord quality \"mj7\"", "…").report();
 * }</pre>
 */
package hingetone.text;
