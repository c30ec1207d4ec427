/**
 * What was played and why it worked, in the words of the page on the program: how a line was gone
 * over, what landed where.
 *
 * <p>May import the base packages, chart, neck, ground, ground.scales, plan, phrase and take.
 *
 * <pre>{@code
 * LineWay.Line line = new LineWay.Line(16, 12, 0, 1);
 * LineWay.of(line, List.of(new PlacedNote(15, 18, 69, 69, 90))).kind();   // → HOLD
 * }</pre>
 */
package hingetone.review;
