/**
 * Sound cut into frames, and what is measured of each: pitch candidates, spectra, what is new in
 * them, echoes.
 *
 * <p>May import nothing but its own and JTransforms. The methods and their sources are described in
 * {@code src/docs/hearing.md}.
 *
 * <pre>{@code
 * RecentSamples tape = new RecentSamples(65_536);
 * Slices slices = new Slices(tape);
 * tape.add(new float[16_384], 16_384);
 * slices.ready();                            // a slice for each frame that is complete
 * }</pre>
 */
package hingetone.hearing.signal;
