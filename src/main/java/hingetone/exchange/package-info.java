/**
 * Who speaks when: the plan of statements and replies over a form, the phrases themselves, and the
 * maker that finds phrases to fit a plan.
 *
 * <p>The rules are explained in {@code src/docs/plans.md}. May import theory, time, text, score,
 * notation, chart, neck and ground.
 *
 * <pre>{@code
 * Plan plan = Plan.of(chart, form);
 * plan.promptsOfLap(1).get(0).speakFrom();     // bar 0 beat 3+1/2
 * plan.nextAfter(Position.of(4, 1));           // the next to speak, whatever the lap
 * }</pre>
 */
package hingetone.exchange;
