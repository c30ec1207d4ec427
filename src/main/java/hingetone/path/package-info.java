/**
 * The cheapest way through layers of choices: how the bass walks, chords are voiced, the hand goes
 * over the neck.
 *
 * <p>Everything may use it; it uses nothing.
 *
 * <pre>{@code
 * List<List<Integer>> frets = List.of(List.of(0, 12), List.of(5), List.of(3, 10));
 * CheapestPath.through(frets, (i, fret) -> 0, (i, a, b) -> Math.abs(b - a));   // → [0, 5, 3]
 * }</pre>
 */
package hingetone.path;
