package hingetone.sequencer;

import hingetone.score.Role;
import hingetone.time.Beats;

/**
 * A note on its way: planned, then sounding, then over.
 *
 * @param plan the number of the planned bar it belongs to; a break releases all earlier ones
 * @param off where it ends, in quarter notes played
 */
record PlannedNote(
    Role role,
    int channel,
    int key,
    int velocity,
    int plan,
    Beats off,
    long onOffset,
    long offOffset) {}
