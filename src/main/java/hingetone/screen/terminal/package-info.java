/**
 * The terminal itself: keys in, pictures out, everything restored on the way out. The only place
 * that touches JLine; may import screen.
 *
 * <pre>{@code
 * try (TerminalScreen screen = TerminalScreen.open(look)) {
 *   Runner runner = new Runner(state, screen, effect -> {});
 *   screen.listen(runner::offer);
 *   runner.run();
 * }
 * }</pre>
 */
package hingetone.screen.terminal;
