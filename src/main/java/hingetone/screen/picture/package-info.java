/**
 * What a picture is made of: cells, styles, signs and large letters, and the painter that sends
 * only what differs. Knows nothing of music.
 *
 * <p>May import text.
 *
 * <pre>{@code
 * TerminalLook look = TerminalLook.of(Map.of("TERM", "xterm"), "Linux");
 * String sent = new Painter(look).paint(frame);   // only what differs from the last frame
 * }</pre>
 */
package hingetone.screen.picture;
