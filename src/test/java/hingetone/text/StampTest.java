package hingetone.text;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.text.Stamp.Finding;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StampTest {
  private static final Stamp TXT = new Stamp("txt");

  @TempDir Path folder;

  private Path stamped(String text) throws IOException {
    Path file = Files.writeString(folder.resolve("file"), text + TXT.open() + "\n");
    Stamp.close(file);
    return file;
  }

  /** The check value of CRC-32 for the digits 1 to 9 is cbf43926 (common practice). */
  @Test
  void the_sum_is_over_the_whole_file_as_it_is_while_the_sum_is_open() throws IOException {
    String open = "123456789 hingetone txt 00000000\n";
    java.util.zip.CRC32 sum = new java.util.zip.CRC32();
    sum.update(open.getBytes());
    assertThat(stamped("123456789 "))
        .hasContent(open.replace("00000000", "%08x".formatted(sum.getValue())));
  }

  @Test
  void a_file_is_ours_as_long_as_nobody_has_worked_on_it() throws IOException {
    Path file = stamped("a page of tab\n".repeat(10_000));
    assertThat(TXT.find(file)).isEqualTo(Finding.OURS);
    assertThat(new Stamp("wav").find(file)).isEqualTo(Finding.OF_ANOTHER_KIND);
    String text = Files.readString(file);
    for (String other : new String[] {"x" + text, text.replaceFirst("page", "pale"), text + "\n"}) {
      Files.writeString(file, other);
      assertThat(TXT.find(file)).isEqualTo(Finding.CHANGED);
    }
  }

  @Test
  void any_other_file_is_foreign_also_one_that_speaks_of_stamps() throws IOException {
    Path file = folder.resolve("file");
    for (String text :
        new String[] {"", "my own tab\n", "hingetone txt 1c291ca3" + " ".repeat(99), "hingetone"}) {
      Files.writeString(file, text);
      assertThat(TXT.find(file)).as(text).isEqualTo(Finding.FOREIGN);
      Stamp.close(file);
      assertThat(file).hasContent(text);
    }
  }
}
