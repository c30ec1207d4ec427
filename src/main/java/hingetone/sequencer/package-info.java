/**
 * The band in time, pure: laps without a seam, live changes, tempo, channels and the click. It has
 * no thread, no clock and no device; {@code Timeline} answers "give me every event due before this
 * moment".
 *
 * <p>Live changes are {@link hingetone.sequencer.Command} values, what happens is told in {@link
 * hingetone.sequencer.SequencerEvent} values. May import the base packages and midi. The design is
 * explained in {@code src/docs/timing.md}.
 *
 * <pre>{@code
 * PlaySetup setup = PlaySetup.USUAL.withLaps(4);
 * setup.volume();                                      // → 60
 * Command louder = new Command.StepLevel(Role.BASS, 8);   // what a key press sends
 * }</pre>
 */
package hingetone.sequencer;
