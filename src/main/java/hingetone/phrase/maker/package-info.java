/**
 * Makes example phrases for the prompts of a plan: statements, replies to them, and ways over a
 * change of key. {@link hingetone.phrase.maker.PhraseMaker} is the way in.
 *
 * <p>How it works is explained in {@code src/docs/plans.md}. May import the base packages, chart,
 * neck, ground, plan and phrase.
 *
 * <pre>{@code
 * PhraseMaker maker = PhraseMaker.of(plan, ground, chart.seed());
 * MadePhrase made = maker.make(plan.promptsOfLap(1).get(0));
 * made.why();                                // why it works, in a sentence
 * }</pre>
 */
package hingetone.phrase.maker;
