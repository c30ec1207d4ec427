package hingetone.midi;

import hingetone.score.Role;
import hingetone.time.Beats;
import javax.sound.midi.ShortMessage;

/**
 * A MIDI message at its place in a score.
 *
 * @param at its place, in quarter notes from the start of the form
 * @param offsetMicros how much later (negative: earlier) than its place it sounds, in microseconds
 * @param role the part it belongs to
 * @param message the message, which nobody changes
 */
public record TimedMessage(Beats at, long offsetMicros, Role role, ShortMessage message) {}
