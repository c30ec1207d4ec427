/**
 * Phrases: notes in exact time around their landing, what can be done to them, and the bank of
 * written statements with its format, which {@code src/docs/phrases.md} specifies.
 *
 * <p>May import the base packages, notation, chart and neck. {@code phrase.maker} makes phrases to
 * fit a plan.
 *
 * <pre>{@code
 * Statement statement = StatementBank.builtIn().statements().get(0);
 * statement.phrase().octaveUp();       // the same, an octave higher
 * }</pre>
 */
package hingetone.phrase;
