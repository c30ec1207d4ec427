/**
 * Who speaks when: the plan of statements, replies and rests over a form, and how each section is
 * left.
 *
 * <p>The rules are explained in {@code src/docs/plans.md}. May import the base packages, chart and
 * ground.
 *
 * <pre>{@code
 * Plan plan = Plan.of(chart, form);
 * plan.promptsOfLap(1).get(0).landOn();      // → bar 1 beat 1
 * plan.nextAfter(Position.of(4, 1));         // the next to speak, whatever the lap
 * }</pre>
 */
package hingetone.plan;
