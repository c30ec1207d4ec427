package hingetone;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringWriter;
import java.net.URI;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.SimpleJavaFileObject;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The example of every package is compiled, and where it says what comes out ({@code // → value}),
 * it is run and gives that. It may use {@link ExampleValues}.
 */
class PackageExamplesTest {
  private static final Path SOURCES = Path.of("src/main/java");
  private static final Pattern EXAMPLE =
      Pattern.compile("<pre>\\{@code\\n(.*?) \\* }</pre>", Pattern.DOTALL);
  private static final Pattern RESULT = Pattern.compile("(?m)^(.*);\\s+// → (.*)$");

  @TempDir Path classes;

  /** A program that collects what an example gives beside what it says it gives. */
  private static final class Example extends SimpleJavaFileObject {
    final String text;

    Example(String name, String imports, String example) {
      super(URI.create("memory:/examples/" + name + ".java"), Kind.SOURCE);
      String body = RESULT.matcher(example).replaceAll(Example::compared);
      this.text =
          "package examples;\n"
              + imports
              + "public class %s {\n".formatted(name)
              + "public static void run(List<Map.Entry<String, String>> given) throws Exception {\n"
              + body
              + "}}\n";
    }

    private static String compared(MatchResult line) {
      String wanted = line.group(2).replace("\\", "\\\\").replace("\"", "\\\"");
      String call = "given.add(Map.entry(\"%s\", String.valueOf(%s)));";
      return Matcher.quoteReplacement(call.formatted(wanted, line.group(1)));
    }

    boolean hasResult() {
      return text.contains("given.add");
    }

    @Override
    public CharSequence getCharContent(boolean ignoreEncodingErrors) {
      return text;
    }
  }

  /** Simple names stand in one package only, so all packages can be imported at once. */
  private static String imports(List<Path> packages) {
    return packages.stream()
            .map(folder -> SOURCES.relativize(folder).toString().replace('/', '.'))
            .map("import %s.*;\n"::formatted)
            .collect(Collectors.joining())
        + "import static hingetone.ExampleValues.*;\n"
        + "import java.nio.file.*;\nimport java.util.*;\n";
  }

  private static List<Path> packages() throws IOException {
    try (Stream<Path> files = Files.walk(SOURCES)) {
      return files.filter(f -> f.endsWith("package-info.java")).map(Path::getParent).toList();
    }
  }

  private static Example example(Path folder, String imports) throws IOException {
    Matcher found = EXAMPLE.matcher(Files.readString(folder.resolve("package-info.java")));
    assertThat(found.find()).as("an example in %s", folder).isTrue();
    String name = SOURCES.resolve("hingetone").relativize(folder).toString().replace('/', '_');
    return new Example(name, imports, found.group(1).replaceAll("(?m)^ \\* ?", ""));
  }

  private static List<Map.Entry<String, String>> run(Example example, ClassLoader loader)
      throws ReflectiveOperationException {
    String name = example.getName().replaceAll(".*/|\\.java", "");
    List<Map.Entry<String, String>> given = new ArrayList<>();
    loader.loadClass("examples." + name).getMethod("run", List.class).invoke(null, given);
    return given;
  }

  @Test
  void every_package_has_an_example_that_compiles_and_gives_what_it_says() throws Exception {
    List<Example> examples = new ArrayList<>();
    String imports = imports(packages());
    for (Path folder : packages()) {
      examples.add(example(folder, imports));
    }
    StringWriter said = new StringWriter();
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    List<String> options =
        List.of(
            "-d", classes.toString(), "-proc:none", "-cp", System.getProperty("java.class.path"));
    List<? extends JavaFileObject> sources = examples;
    assertThat(compiler.getTask(said, null, null, options, null, sources).call())
        .as(said.toString())
        .isTrue();

    int results = 0;
    try (URLClassLoader loader = new URLClassLoader(new URL[] {classes.toUri().toURL()})) {
      for (Example example : examples.stream().filter(Example::hasResult).toList()) {
        for (Map.Entry<String, String> given : run(example, loader)) {
          assertThat(given.getValue().strip()).as(example.getName()).isEqualTo(given.getKey());
          results++;
        }
      }
    }
    assertThat(results).isGreaterThan(20);
  }
}
