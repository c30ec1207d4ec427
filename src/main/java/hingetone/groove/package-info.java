/**
 * Grooves: how a band plays, read from YAML drawn with one sign a step.
 *
 * <p>The format is specified in {@code src/docs/grooves.md}, whose examples the tests read. May
 * import theory, time, text, score and notation.
 *
 * <pre>{@code
 * Groove groove = Grooves.builtIn().read("gravel-road").value().orElseThrow();
 * groove.fits(Meter.of(4, 4));   // → true
 * groove.fits(Meter.of(7, 8));   // → false
 * }</pre>
 */
package hingetone.groove;
