/**
 * Reading what people wrote: source text, places in it, YAML with places, and the reports on what
 * is wrong there. A reader gives a {@link hingetone.text.reading.Reading}: a value, or every
 * problem with its place.
 *
 * <p>May import text.
 *
 * <pre>{@code
 * Source source = new Source("harbour.yaml", text);
 * Diagnostic.of(source, new Span(40, 43), "unknown chord quality \"mj7\"", "…").report();
 * }</pre>
 */
package hingetone.text.reading;
