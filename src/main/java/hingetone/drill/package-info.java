/**
 * Exercises as pure state: what is to be played, how it went, what comes next. Notes and grades in,
 * tempo, chart and words out; nothing here knows a clock, a band or a screen.
 *
 * <p>May import the base packages, chart, plan, take, review and journal. What each exercise asks
 * and how it is scored stands in {@code src/docs/drills.md}.
 *
 * <pre>{@code
 * TempoLadder.from(Tempo.of(100)).after(1).after(1).now();     // → 105
 * }</pre>
 */
package hingetone.drill;
