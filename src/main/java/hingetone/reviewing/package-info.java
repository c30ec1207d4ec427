/**
 * What {@code review} reads and writes beside its own text: takes from any file, reviews as tab,
 * notation and MIDI.
 *
 * <p>May import handout and output and their imports, and review.marks.
 *
 * <pre>{@code
 * java.io.OutputStream out = java.io.OutputStream.nullOutputStream();
 * new WrittenReview("Wet slate", review).write(FileKind.MID, out);   // → 31 notes in 5 phrases
 * }</pre>
 */
package hingetone.reviewing;
