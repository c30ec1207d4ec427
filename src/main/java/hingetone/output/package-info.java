/**
 * What leaves the program and how it ends: standard output, files that appear whole or not at all
 * and never replace an input, and failures with their exit status.
 *
 * <p>May import what {@code print} may, midi and sound.
 *
 * <pre>{@code
 * Stamp stamp = new Stamp("txt");
 * try (Export export = new Export(new Overwriting(List.of(Path.of("song.yaml")), false))) {
 *   export.add(Path.of("song.txt"), stamp);
 *   Files.writeString(export.unfinished().get(0), "...");
 *   export.finish();                         // only now the file is in its place
 * }
 * }</pre>
 */
package hingetone.output;
