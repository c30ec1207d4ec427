/**
 * What leaves the program and how it ends: standard output, files that appear whole or not at all
 * and never replace an input, and failures with their exit status.
 *
 * <p>May import what {@code print} may, midi and sound.
 *
 * <pre>{@code
 * try (Export export = new Export(overwriting)) {
 *   Files.writeString(export.add(file, stamp), text);
 *   export.finish();                    // only now the files are in their places
 * }
 * }</pre>
 */
package hingetone.output;
