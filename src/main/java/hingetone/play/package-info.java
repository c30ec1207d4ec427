/**
 * A live sitting: the band, the screen and their devices wired together, with one ordered end.
 *
 * <p>May import everything but {@code command}.
 *
 * <pre>{@code
 * Performance performance = new Performance(arrangement, ramp, output, player, lesson);
 * performance.onScreen();                    // until the player leaves
 * }</pre>
 */
package hingetone.play;
