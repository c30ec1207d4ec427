package hingetone.groove;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.text.reading.BrokenFiles;
import java.io.IOException;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

class BrokenGroovesTest {
  private static final BrokenFiles FILES =
      new BrokenFiles("broken-grooves", s -> GrooveReader.read(s, "broken"));

  @TestFactory
  Stream<DynamicTest> each_broken_groove_gives_its_report() throws IOException {
    return FILES.tests();
  }

  @Test
  void there_are_at_least_fifty() throws IOException {
    assertThat(FILES.files()).hasSizeGreaterThanOrEqualTo(50);
  }

  /** Writes the reports anew. */
  public static void main(String[] args) throws IOException {
    FILES.writeReports();
  }
}
