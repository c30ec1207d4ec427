/**
 * The threads that play: {@link hingetone.transport.Transport} drives the pure sequencer by
 * counting audio frames or by the machine's clock, to a MIDI port or in silence.
 *
 * <p>May import the base packages, midi, sound, sequencer and port. {@code src/docs/timing.md}
 * explains the design and how its figures are measured.
 *
 * <pre>{@code
 * LapSource laps = lap -> score;
 * try (Transport transport = Transport.onSilentClock(laps, PlaySetup.USUAL, event -> {})) {
 *   transport.send(new Command.Play());
 *   transport.send(new Command.Mute(Role.DRUMS, true));
 *   transport.playhead().at(Clock.SYSTEM.nanos());   // where it is by then
 * }
 * }</pre>
 */
package hingetone.transport;
