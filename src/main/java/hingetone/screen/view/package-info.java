/**
 * The panels of the picture, their layout, and the same in plain lines for {@code --plain}.
 *
 * <p>Pure: a state in, a picture out. May import screen, screen.picture and what {@code print} may.
 *
 * <pre>{@code
 * Frame frame = View.render(state, new Size(24, 80));
 * frame.lines().size();                      // → 24
 * }</pre>
 */
package hingetone.screen.view;
