/**
 * The commands: the only place where the parts are wired together and effects are performed. May
 * import everything; nothing imports it.
 */
package hingetone.command;
