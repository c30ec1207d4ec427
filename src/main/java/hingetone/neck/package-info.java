/**
 * The neck of a fretted instrument: tunings, frets, scale shapes, bends and double stops.
 *
 * <p>May import theory and time. Strings are numbered as players do, 1 being the highest; lists of
 * strings run from the lowest to the highest; frets count from the capo.
 *
 * <pre>{@code
 * Fretboard neck = Fretboard.of(Tuning.STANDARD, 0);
 * Scale scale = Scale.parse("E minor pentatonic").orElseThrow();
 * Shape shape = Shapes.of(neck, scale).get(0);
 * shape.low() + " to " + shape.high() + " from its " + shape.start();   // → 0 to 3 from its 1
 * Bend.all(shape);                                                    // what can be bent in it
 * }</pre>
 */
package hingetone.neck;
