/**
 * The MIDI ports of this machine: found by number or name, opened, watched while they are in use.
 *
 * <p>May import the base packages and midi, and tells what happens to a port as the sequencer tells
 * its events.
 *
 * <pre>{@code
 * Ports.find("none of that name", Port.Direction.OUTPUT).port();   // → Optional.empty
 * Ports.all(Port.Direction.INPUT);                                 // those there are
 * }</pre>
 */
package hingetone.port;
