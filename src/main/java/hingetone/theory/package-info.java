/**
 * Spelled music theory: note names, pitches, intervals, chords, scales and keys, as immutable
 * values. What is read and written is listed in {@code src/docs/names.md}.
 *
 * <p>Everything may use it; it uses nothing. Spelling is kept through every operation, a MIDI
 * number is only ever derived:
 *
 * <pre>{@code
 * Key key = Key.parse("A minor").orElseThrow();
 * key.pentatonic().notes();              // A C D E G
 * key.spell(66);                         // F#4
 * Chord.parse("E7#9").orElseThrow().notes(); // E G# B D F##
 * }</pre>
 */
package hingetone.theory;
