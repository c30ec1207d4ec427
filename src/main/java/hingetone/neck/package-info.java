/**
 * The neck of a fretted instrument: tunings, frets, scale shapes, bends and double stops.
 *
 * <p>May import theory and time. Strings are numbered as players do, 1 being the highest; lists of
 * strings run from the lowest to the highest.
 */
package hingetone.neck;
