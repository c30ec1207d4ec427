package hingetone;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.command.Commands;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class DocumentsTest {
  private static final Pattern LINK = Pattern.compile("\\]\\(([^)#]+?)(?:#[^)]*)?\\)");

  private static List<Path> documents() throws IOException {
    List<Path> documents = new ArrayList<>(List.of(Path.of("README.md"), Path.of("DEVELOPERS.md")));
    try (Stream<Path> files = Files.list(Path.of("src/docs"))) {
      files.filter(f -> f.toString().endsWith(".md")).sorted().forEach(documents::add);
    }
    return documents;
  }

  @Test
  void every_link_leads_to_a_file_of_the_project() throws IOException {
    List<String> broken = new ArrayList<>();
    for (Path document : documents()) {
      Matcher links = LINK.matcher(Files.readString(document));
      while (links.find()) {
        Path target = document.resolveSibling(links.group(1));
        if (!links.group(1).contains("://") && !Files.exists(target)) {
          broken.add(document + " -> " + links.group(1));
        }
      }
    }
    assertThat(broken).isEmpty();
  }

  @Test
  void the_readme_names_every_command() throws IOException {
    String readme = Files.readString(Path.of("README.md"));
    assertThat(Commands.names()).allMatch(name -> readme.contains("`" + name));
  }

  @Test
  void the_readmes_test_command_stands_alone_on_its_line() throws IOException {
    assertThat(Files.readString(Path.of("README.md")).lines()).contains("mvn verify");
  }

  @Test
  void every_class_in_the_guides_picture_is_where_it_says() throws IOException {
    String guide = Files.readString(Path.of("DEVELOPERS.md"));
    Matcher picture = Pattern.compile("(?s)```\n(.*?)```").matcher(guide);
    assertThat(picture.find()).isTrue();
    Matcher homes = Pattern.compile("([a-z.]+): ([A-Z]\\w+)").matcher(picture.group(1));
    List<Path> missing = new ArrayList<>();
    int named = 0;
    for (; homes.find(); named++) {
      String folder = homes.group(1).replace('.', '/');
      Path file = Path.of("src/main/java/hingetone", folder, homes.group(2) + ".java");
      if (!Files.exists(file)) {
        missing.add(file);
      }
    }
    assertThat(missing).isEmpty();
    assertThat(named).isGreaterThan(15);
  }
}
