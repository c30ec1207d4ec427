package hingetone;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Path;
import javax.tools.ToolProvider;

/** A program of {@code src/build}, as the build runs it: compiled from its one file. */
final class BuildProgram {
  private BuildProgram() {}

  /** Its class, compiled into a folder with all warnings as errors. */
  static Class<?> compiled(String name, Path classes)
      throws IOException, ReflectiveOperationException {
    String folder = classes.toString();
    String source = "src/build/" + name + ".java";
    int status =
        ToolProvider.getSystemJavaCompiler()
            .run(null, null, null, "-Xlint:all", "-Werror", "-cp", folder, "-d", folder, source);
    assertThat(status).isZero();
    return new URLClassLoader(new URL[] {classes.toUri().toURL()}).loadClass(name);
  }
}
