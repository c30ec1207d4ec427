/**
 * A live sitting: the band, the screen and their devices wired together, with one ordered end.
 *
 * <p>May import everything but {@code command}.
 *
 * <pre>{@code
 * new Performance(arrangement, transport, screen).run();   // until the player leaves
 * }</pre>
 */
package hingetone.play;
