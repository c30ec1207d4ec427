/**
 * Notes, parts and scores with their marks: what the band and the makers of phrases produce and
 * what every output (sequencer, MIDI file, sound file, notation) reads.
 *
 * <p>All times are exact quarter notes from the start of the form. May import theory and time.
 *
 * <pre>{@code
 * Note note = new Note(Beats.ONE, Beats.of(2), 60, 90);   // middle C on the second quarter
 * note.end();                                             // → 3
 * Part bass = score.part(Role.BASS).orElseThrow();        // its notes and its sound
 * }</pre>
 */
package hingetone.score;
