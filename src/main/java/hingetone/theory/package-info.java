/**
 * Spelled music theory: note names, pitches, intervals, chords, scales and keys, as immutable
 * values. What is read and written is listed in {@code src/docs/names.md}.
 *
 * <p>Everything may use it; it uses nothing. Spelling is kept through every operation, a MIDI
 * number is only ever derived:
 *
 * <pre>{@code
 * Key key = Key.parse("C minor").orElseThrow();
 * key.pentatonic().notes();                     // → [C, Eb, F, G, Bb]
 * key.spell(66);                                // → Gb4
 * Chord.parse("D7#9").orElseThrow().notes();    // → [D, F#, A, C, E#]
 * }</pre>
 */
package hingetone.theory;
