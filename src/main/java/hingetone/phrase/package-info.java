/**
 * Phrases: notes in exact time around their landing, what can be done to them, and the bank of
 * written statements with its format, which {@code src/docs/phrases.md} specifies.
 *
 * <p>May import the base packages, notation, chart and neck. {@code phrase.maker} makes phrases to
 * fit a plan.
 *
 * <pre>{@code
 * List<Statement> bank = StatementBank.builtIn().read().value().orElseThrow();
 * Phrase phrase = bank.get(0).phrase();
 * phrase.octaves(1);                         // the same, an octave higher
 * phrase.shifted(Beats.ONE);                 // a beat later
 * }</pre>
 */
package hingetone.phrase;
