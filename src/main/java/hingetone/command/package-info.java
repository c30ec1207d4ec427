/**
 * The commands of the command line, each a page long: they read arguments, call what does the work
 * and print. May import everything; nothing imports it.
 *
 * <pre>{@code
 * Main.commandLine().execute("check", "demo-charts/lantern-quay.yaml");   // → 0
 * }</pre>
 */
package hingetone.command;
