package hingetone.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * The program started in a Java of its own, as a shell starts the jar: with a home and a folder for
 * temporary files, and with nothing of the tests' own settings.
 *
 * @param home the user's home
 * @param temporary where temporary files go
 */
record StartedProgram(Path home, Path temporary) {
  /** What a run gave. */
  record Run(int status, String out, String err) {}

  /** Runs a class's {@code main} with arguments and an empty standard input, to its end. */
  Run run(Class<?> main, String... args) throws IOException, InterruptedException {
    Path out = Files.createTempFile("out", ".txt");
    Path err = Files.createTempFile("err", ".txt");
    ProcessBuilder builder = new ProcessBuilder(command(main, args));
    clean(builder.environment());
    Process process = builder.redirectOutput(out.toFile()).redirectError(err.toFile()).start();
    process.getOutputStream().close();
    int status = process.waitFor();
    Run run = new Run(status, Files.readString(out), Files.readString(err));
    Files.delete(out);
    Files.delete(err);
    return run;
  }

  private List<String> command(Class<?> main, String... args) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    // What the jar's manifest says, which a class path does not carry.
    command.add("--add-exports=java.desktop/com.sun.media.sound=ALL-UNNAMED");
    if (Runtime.version().feature() >= 22) {
      command.add("--enable-native-access=ALL-UNNAMED");
    }
    command.add("-Duser.home=" + home);
    command.add("-Djava.io.tmpdir=" + temporary);
    command.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC"));
    command.add("-cp");
    command.add(System.getProperty("java.class.path"));
    command.add(main.getName());
    command.addAll(List.of(args));
    return command;
  }

  private void clean(Map<String, String> environment) {
    environment.keySet().removeIf(name -> name.startsWith("XDG_"));
    environment.put("HOME", home.toString());
  }
}
