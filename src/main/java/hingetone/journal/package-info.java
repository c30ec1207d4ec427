/**
 * The practice log: what was practised, how it went, what to do next, in one SQLite file.
 *
 * <p>May import time and text. Only this package touches SQL. The format stands in {@code
 * src/docs/log.md}.
 *
 * <pre>{@code
 * Activity.of("crossing").orElseThrow().isDrill();     // → true
 * }</pre>
 */
package hingetone.journal;
