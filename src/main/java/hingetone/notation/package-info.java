/**
 * Notes written as text: note text (a line of notes) and drum lanes (one sign a step). JFugue reads
 * both, behind a white-list, so that whatever is wrong is reported with its place and in our words.
 *
 * <p>Note text is specified in {@code src/docs/note-text.md}. May import theory, time, text and
 * score; it alone touches JFugue.
 *
 * <pre>{@code
 * Source source = new Source("riff", "C3q Eb3i F3i G3h");
 * NoteText.read(source, new Span(0, 16)).value().orElseThrow().length();   // → 4
 * }</pre>
 */
package hingetone.notation;
