/**
 * The sequencer: musical time against an output's time, laps without a seam, live changes, and the
 * MIDI ports.
 *
 * <p>{@link hingetone.transport.Transport} is the way in. Behind it stands a pure core ({@code
 * Timeline}: no thread, no clock, no device) that answers "give me every event due before this
 * moment", and two drivers that ask it: one counts audio frames, the other meets deadlines of the
 * machine's clock, with a MIDI port or in silence. Live changes are {@link
 * hingetone.transport.Command} values, what happens is told in {@link hingetone.transport.Moment}
 * values, and where the music is says {@link hingetone.time.Playhead}. {@code src/docs/timing.md}
 * explains the design and how its figures are measured.
 *
 * <pre>{@code
 * try (Transport transport = Transport.onSilentClock(lap -> score, Setup.USUAL, queue::offer)) {
 *   transport.send(new Command.Play());
 *   transport.send(new Command.Mute(Role.DRUMS, true));
 *   transport.playhead().at(Clock.SYSTEM.nanos());   // bar 2 beat 3
 * }
 * }</pre>
 */
package hingetone.transport;
