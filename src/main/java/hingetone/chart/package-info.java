/**
 * The chart: a progression in two keys (or more) written as text, read with every problem placed,
 * and its form unrolled into numbered bars.
 *
 * <p>The format is specified in {@code src/docs/charts.md}, whose examples the tests read. May
 * import theory, time, text, score, notation and neck.
 *
 * <pre>{@code
 * Reading<Chart> reading = ChartReader.readFile("demo-charts/lantern-quay.yaml");
 * Chart chart = reading.value().orElseThrow();   // where it is empty, reading.problems() says why
 * Form.of(chart).bars().size();                  // → 16
 * }</pre>
 */
package hingetone.chart;
