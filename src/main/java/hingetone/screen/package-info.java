/**
 * What is on the screen and what a key does to it: a pure state, a pure update, and the loop that
 * runs them. {@code screen.view} shows a state, {@code screen.picture} is what it is drawn with.
 *
 * <p>The reasoning behind the picture stands in {@code src/docs/screen.md}. May import what {@code
 * print} may, {@code screen.picture}, and the commands and status of {@code sequencer}.
 *
 * <pre>{@code
 * Step step = Update.apply(state, new Message.Stroke("?", 0));
 * step.state().layer();                      // → Help[first=0]
 * step.effects();                            // → []
 * }</pre>
 */
package hingetone.screen;
