/**
 * The ground a player stands on: which scale fits each chord in its place, where it lies on the
 * neck, what survives a change of key and how to go over it. {@link hingetone.ground.Ground} is the
 * way in; {@code ground.scales} ranks the scales, {@code ground.ways} finds the ways over a line.
 *
 * <p>May import the base packages, chart, neck and its own rooms. The model and its weights are
 * explained in {@code src/docs/ground.md}.
 *
 * <pre>{@code
 * Ground ground = Ground.of(Form.of(chart), Fretboard.of(chart.tuning(), chart.capo()));
 * ground.scalesAt(1, Beats.ONE).get(0).scale();   // → G minor pentatonic
 * ground.crossings().get(0).holds();              // what may ring across the first change of key
 * }</pre>
 */
package hingetone.ground;
