/**
 * What a player played: notes out of an instrument's messages, and the bars they were played in.
 *
 * <p>May import the base packages, chart, neck, midi, sound and hearing.
 *
 * <pre>{@code
 * PlayedNotes notes = new PlayedNotes();
 * notes.take(new Received(0, 0x90, 0, 62, 100));
 * notes.sounding(1_000_000).get(0).reached();   // → 62.0
 * }</pre>
 */
package hingetone.take;
