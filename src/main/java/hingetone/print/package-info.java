/**
 * What the program says, as text for people and as JSON for other programs.
 *
 * <p>May import everything that knows about music, but not sound, MIDI or the transport. Drawing
 * here is pure: values in, text out.
 */
package hingetone.print;
