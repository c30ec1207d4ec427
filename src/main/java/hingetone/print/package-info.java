/**
 * What the program says, as text for people and as JSON for other programs.
 *
 * <p>May import everything that knows about music, but not sound, MIDI or the transport. Drawing
 * here is pure: values in, text out.
 *
 * <pre>{@code
 * Json.text(Json.object("symbol", "Gm7", "beats", 4));   // an object on lines of its own
 * Json.text(List.of("G", "Bb"));                         // → [ "G", "Bb" ]
 * }</pre>
 */
package hingetone.print;
