/**
 * Reading what people wrote: source text, places in it, YAML with places, and the reports on what
 * is wrong there. A reader gives a {@link hingetone.text.reading.Reading}: a value, or every
 * problem with its place.
 *
 * <p>May import text.
 *
 * <pre>{@code
 * Source source = new Source("quay.yaml", "tempo: fast");
 * Diagnostic found = Diagnostic.of(source, new Span(7, 11), "not a tempo", "I expected a number.");
 * found.line() + ":" + found.column();       // → 1:8
 * found.report();                            // the same for people, with the line it stands in
 * }</pre>
 */
package hingetone.text.reading;
