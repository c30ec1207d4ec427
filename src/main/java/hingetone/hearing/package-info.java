/**
 * Samples in, notes out: pitch, onsets, notes with their bends, and where they lie on the neck.
 * Pure functions of the samples, the same on a file and block by block.
 *
 * <p>May import the base packages and neck. How each part works and how well it does stands in
 * src/docs/hearing.md.
 *
 * <pre>{@code
 * Transcriber transcriber = new Transcriber(44_100, Optional.empty());
 * transcriber.take(new float[44_100]);       // as often as there are some
 * Transcription written = transcriber.finish(Fretboard.of(Tuning.STANDARD, 0));
 * written.notes();                           // → []
 * }</pre>
 */
package hingetone.hearing;
