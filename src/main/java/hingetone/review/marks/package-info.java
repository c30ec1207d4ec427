/**
 * A teacher's marks as a file: read, and written as a start. The format is specified in {@code
 * src/docs/marks.md}.
 *
 * <p>May import the base packages, take and review.
 *
 * <pre>{@code
 * Reading<Marks> marks = MarksReader.read(new Source("marks.yaml", text), played);
 * Review.of(played, chart, marks.value().orElseThrow(), patterns);
 * }</pre>
 */
package hingetone.review.marks;
