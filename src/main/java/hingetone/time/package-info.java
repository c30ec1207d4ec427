/**
 * Musical time: exact beats, meters, positions, tempos and clocks.
 *
 * <p>Everything may use it; it uses nothing. No musical position is ever a floating-point number.
 *
 * <pre>{@code
 * Meter meter = Meter.of(12, 8);
 * meter.beatsPerBar();                       // → 4
 * meter.toQuarters(Beats.of(2));             // → 3
 * Tempo.of(60).quartersPerMinute(meter);     // → 90
 * }</pre>
 */
package hingetone.time;
