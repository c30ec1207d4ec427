package hingetone.phrase;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.text.reading.BrokenFiles;
import java.io.IOException;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

class BrokenPhrasesTest {
  private static final BrokenFiles FILES = new BrokenFiles("broken-phrases", PhraseReader::read);

  @TestFactory
  Stream<DynamicTest> each_broken_file_gives_its_report() throws IOException {
    return FILES.tests();
  }

  @Test
  void there_are_at_least_fifteen() throws IOException {
    assertThat(FILES.files()).hasSizeGreaterThanOrEqualTo(15);
  }

  /** Writes the reports anew. */
  public static void main(String[] args) throws IOException {
    FILES.writeReports();
  }
}
