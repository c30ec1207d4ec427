/**
 * The chart: a progression in two keys (or more) written as text, read with every problem placed,
 * and its form unrolled into numbered bars.
 *
 * <p>The format is specified in {@code src/docs/charts.md}, whose examples the tests read. May
 * import theory, time, text, score, notation and neck.
 */
package hingetone.chart;
