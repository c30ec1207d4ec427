/**
 * The MIDI ports of this machine: found by number or name, opened, watched while they are in use.
 *
 * <p>May import the base packages and midi, and tells what happens to a port as the sequencer tells
 * its events.
 *
 * <pre>{@code
 * Port port = Ports.outputs().get(0);
 * port.name();                          // as people type it
 * }</pre>
 */
package hingetone.port;
