/**
 * The commands of the command line, each a page long: they read arguments, call what does the work
 * and print. May import everything; nothing imports it.
 *
 * <pre>{@code
 * int status = Main.commandLine().execute("check", "demo-charts/harbour.yaml");
 * }</pre>
 */
package hingetone.command;
