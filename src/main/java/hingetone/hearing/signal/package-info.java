/**
 * Sound cut into frames, and what is measured of each: pitch candidates, spectra, what is new in
 * them, echoes.
 *
 * <p>May import nothing but its own and JTransforms. The methods and their sources are described in
 * {@code src/docs/hearing.md}.
 *
 * <pre>{@code
 * Slices slices = new Slices();
 * slices.of(tape);                      // a slice for each frame that is complete
 * }</pre>
 */
package hingetone.hearing.signal;
