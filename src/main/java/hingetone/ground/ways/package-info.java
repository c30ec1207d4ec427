/**
 * How to go over a bar line on which the key changes or a dominant resolves: notes held, runs that
 * land on it, the hand staying where it is; and the way of the hand through a whole lap.
 *
 * <p>May import the base packages, chart, neck and ground.scales.
 *
 * <pre>{@code
 * Crossing crossing = ground.crossings().get(0);
 * crossing.atBar();                          // → 9
 * crossing.commonTones().pentatonic();       // notes of both keys' five-note scales
 * crossing.runs().get(0).kind();             // how the best run goes
 * }</pre>
 */
package hingetone.ground.ways;
