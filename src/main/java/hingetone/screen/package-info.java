/**
 * What is seen: a pure state, a pure update and a pure view of it.
 *
 * <p>The reasoning behind the picture stands in {@code src/docs/screen.md}. Used by {@code
 * screen.terminal} and the commands; may import what {@code print} may.
 *
 * <pre>{@code
 * Step step = Update.apply(state, new Message.Stroke("space")); // effects: [TogglePause]
 * Frame frame = View.render(step.state(), new Size(24, 80));
 * }</pre>
 */
package hingetone.screen;
