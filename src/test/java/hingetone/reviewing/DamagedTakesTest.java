package hingetone.reviewing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hingetone.chart.Chart;
import hingetone.handout.MusicXml;
import hingetone.neck.Fretboard;
import hingetone.output.CommandFailure;
import hingetone.print.ReviewText;
import hingetone.print.ReviewedBars;
import hingetone.review.Evening;
import hingetone.review.Played;
import hingetone.review.Review;
import hingetone.take.LineWanted;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever is in a file, it is reviewed or refused with a sentence: no exception, no hang. */
class DamagedTakesTest {
  @TempDir Path folder;

  @Test
  void some_hundred_damaged_files_are_read_or_refused_and_some_of_them_reviewed()
      throws IOException {
    damage(150, 5, 10);
  }

  @Test
  @Tag("long")
  void twenty_thousand_damaged_files_are_reviewed_or_refused() throws IOException {
    damage(10_000, 6, 1);
  }

  /** Running status: three bytes a note, none of which ends. */
  @Test
  void a_file_full_of_notes_at_once_is_refused() throws IOException {
    int notes = 110_000;
    ByteBuffer file = ByteBuffer.allocate(23 + 3 * notes);
    file.put("MThd".getBytes(StandardCharsets.US_ASCII)).putInt(6);
    file.putShort((short) 0).putShort((short) 1).putShort((short) 96);
    file.put("MTrk".getBytes(StandardCharsets.US_ASCII)).putInt(1 + 3 * notes);
    file.put((byte) 0).put((byte) 0x90).put((byte) 60).put((byte) 90);
    while (file.remaining() >= 3) {
      file.put((byte) 0).put((byte) (40 + file.position() / 3 % 40)).put((byte) 90);
    }
    Path full = Files.write(folder.resolve("full.mid"), file.array());
    ForeignTake take =
        new ForeignTake(full, Evening.chart(), LineWanted.ANY, Optional.empty(), told -> {});
    assertThatThrownBy(() -> take.read(done -> {}))
        .isInstanceOf(CommandFailure.class)
        .hasMessageContaining("full.mid is longer than any take");
    Path less = Files.write(folder.resolve("full.mid"), cut(file.array(), 1_000));
    assertThat(less).exists();
    assertThatThrownBy(() -> take.read(done -> {}))
        .isInstanceOf(CommandFailure.class)
        .hasMessageContaining("notes are struck at once");
  }

  private static byte[] cut(byte[] file, int notes) {
    byte[] less = Arrays.copyOf(file, 23 + 3 * notes);
    ByteBuffer.wrap(less).putInt(18, 1 + 3 * notes);
    return less;
  }

  /**
   * @param reviewed one in so many is reviewed too
   */
  private void damage(int each, long seed, int reviewed) throws IOException {
    byte[] midi = Files.readAllBytes(Evening.NOTES);
    Review review = Evening.bent();
    Fretboard neck = review.neck().neck();
    String sheet = MusicXml.of("", neck, ReviewedBars.of(review).bars(), Map.of());
    damage(midi, each, seed, reviewed, "damaged.mid");
    damage(sheet.getBytes(StandardCharsets.UTF_8), each, seed, reviewed, "damaged.musicxml");
  }

  private void damage(byte[] whole, int count, long seed, int reviewed, String name)
      throws IOException {
    Random random = new Random(seed);
    Chart chart = Evening.chart();
    int refused = 0;
    for (int i = 0; i < count; i++) {
      boolean cut = random.nextInt(4) == 0;
      byte[] bytes = Arrays.copyOf(whole, cut ? random.nextInt(whole.length) : whole.length);
      for (int k = random.nextInt(4); k >= 0 && bytes.length > 0; k--) {
        bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
      }
      Path file = Files.write(folder.resolve(name), bytes);
      boolean whether = isRefused(file, chart, i % reviewed == 0, "seed " + seed + " file " + i);
      refused += whether ? 1 : 0;
    }
    assertThat(refused).isBetween(1, count - 1);
  }

  private static boolean isRefused(Path file, Chart chart, boolean reviewed, String which) {
    ForeignTake take = new ForeignTake(file, chart, LineWanted.ANY, Optional.empty(), told -> {});
    try {
      Played played = take.read(done -> {}).played();
      if (reviewed) {
        assertThat(ReviewText.of(Review.of(played, chart))).isNotEmpty();
      }
      return false;
    } catch (CommandFailure e) {
      assertThat(e.getMessage()).as(which).contains("damaged.");
      return true;
    }
  }
}
