/**
 * A teacher's marks as a file: read, and written as a start. The format is specified in {@code
 * src/docs/marks.md}.
 *
 * <p>May import the base packages, take and review.
 *
 * <pre>{@code
 * Source file = new Source("marks.yaml", "remark: Breathe");
 * MarksReader.read(file, review.played()).value().orElseThrow().remark();   // → Optional[Breathe]
 * }</pre>
 */
package hingetone.review.marks;
