/**
 * The arranger: from a chart, its grooves and a seed it makes the band's score, lap by lap.
 *
 * <p>May import theory, time, text, score, chart, groove and plan.
 *
 * <pre>{@code
 * Backing backing = Backing.of(chart, Grooves.builtIn());
 * Score first = backing.lap(1);      // begins with the count-in
 * Score last = backing.lastLap(8);   // ends properly, on a bar of its own
 * first.length();                    // → 64
 * }</pre>
 */
package hingetone.backing;
