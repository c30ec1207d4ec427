/**
 * Grooves: how a band plays, read from YAML drawn with one sign a step.
 *
 * <p>The format is specified in {@code src/docs/grooves.md}, whose examples the tests read. May
 * import theory, time, text, score and notation.
 *
 * <pre>{@code
 * Grooves grooves = Grooves.builtIn();
 * Groove groove = grooves.find("gravel-road").value().orElseThrow();
 * groove.fits(Meter.of(4, 4));  // true
 * }</pre>
 */
package hingetone.groove;
