/**
 * Which scales fit a chord in its place, the best first, each with its reason.
 *
 * <p>May import the base packages and chart. Every number that decides stands in {@code Weights},
 * explained in {@code src/docs/ground.md}.
 *
 * <pre>{@code
 * List<ChordContext> bar = ChordContexts.of(form).get(0);      // what bar 1's chords depend on
 * FittingScale best = ScaleChoice.rank(bar.get(0)).get(0);
 * best.scale();                                                // → G minor pentatonic
 * best.why();                                                  // why it leads
 * }</pre>
 */
package hingetone.ground.scales;
