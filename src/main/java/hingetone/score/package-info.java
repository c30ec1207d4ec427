/**
 * Notes, parts and scores with their marks: what the band and the makers of phrases produce and
 * what every output (sequencer, MIDI file, sound file, notation) reads.
 *
 * <p>All times are exact quarter notes from the start of the form. May import theory and time.
 */
package hingetone.score;
