/**
 * Scores as MIDI: the one place that turns parts into messages, and the files made of them.
 *
 * <p>May import theory, time, text and score; the sound and the sequencer read it.
 *
 * <pre>{@code
 * List<TimedMessage> messages = MidiEvents.of(score);   // in order, for a sequencer
 * byte[] file = MidiFile.bytes(score);                  // format 1, 960 ticks a quarter note
 * }</pre>
 */
package hingetone.midi;
