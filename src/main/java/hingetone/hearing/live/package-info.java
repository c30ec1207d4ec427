/**
 * What answers while somebody plays: strokes and bends as they come, what an input hears, the delay
 * of a way out and back. Pure functions of samples.
 *
 * <p>May import hearing.signal.
 *
 * <pre>{@code
 * DelayFinder.find(new float[1000], DelayFinder.click(44_100));     // → Optional.empty
 * }</pre>
 */
package hingetone.hearing.live;
