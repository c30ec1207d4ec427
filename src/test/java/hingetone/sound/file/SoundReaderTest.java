package hingetone.sound.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import hingetone.sound.SoundFailure;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class SoundReaderTest {
  private static final int FRAMES = 20_000;

  @TempDir Path folder;

  @Test
  void integers_of_every_width_and_order_are_read() throws Exception {
    for (int bits : new int[] {8, 16, 24, 32}) {
      assertRamp(written(bits, 44_100, AudioFileFormat.Type.WAVE), bits);
      assertRamp(written(bits, 48_000, AudioFileFormat.Type.AIFF), bits);
    }
  }

  @Test
  void floating_point_is_read() throws Exception {
    Path file = folder.resolve("float.wav");
    try (WavFile wav = new WavFile(file, 44_100, WavFile.Samples.FLOAT)) {
      wav.write(new float[] {0.5f, 0.25f, -1, 0}, 2);
    }
    assertThat(all(file, Optional.empty())).containsExactly(0.375f, -0.5f);
    assertThat(all(file, Optional.of(2))).containsExactly(0.25f, 0);
  }

  /** The files are sines of 220 Hz at an eighth of full scale that ffmpeg wrote. */
  @Test
  void flac_is_read() throws Exception {
    assertSine(Path.of("src/test/resources/sounds/sine-220.flac"), 44_100);
    assertSine(Path.of("src/test/resources/sounds/sine-220-24-bit.flac"), 48_000);
  }

  @Test
  void telephone_sound_is_read() throws Exception {
    AudioFormat plain = new AudioFormat(8000, 16, 1, true, false);
    AudioInputStream in = new AudioInputStream(new ByteArrayInputStream(new byte[800]), plain, 400);
    Path file = folder.resolve("telephone.wav");
    AudioSystem.write(
        AudioSystem.getAudioInputStream(AudioFormat.Encoding.ULAW, in),
        AudioFileFormat.Type.WAVE,
        file.toFile());
    try (SoundReader reader = SoundReader.open(file, Optional.empty())) {
      assertThat(reader.rate()).isEqualTo(8000);
      assertThat(reader.next()).hasSize(400);
    }
  }

  @Test
  void what_cannot_be_read_is_said_with_its_reason() throws IOException {
    assertRefused(folder.resolve("none.wav"), "does not exist");
    assertRefused(Files.createFile(folder.resolve("empty.wav")), "is empty");
    Path text = Files.writeString(folder.resolve("text.wav"), "no sound at all");
    assertRefused(text, "I know WAV, AIFF and FLAC");
    Path riff = Files.writeString(folder.resolve("riff.wav"), "RIFF????WAVEfmt nonsense");
    assertRefused(riff, "cannot be read");
    Path flac = Files.writeString(folder.resolve("flac.flac"), "fLaC and then nothing of the kind");
    assertRefused(flac, "");
  }

  @Test
  @EnabledOnOs(OS.LINUX)
  void a_file_with_a_broken_header_is_closed_again() throws IOException {
    Path flac = Files.writeString(folder.resolve("open.flac"), "fLaC and no stream information");
    assertRefused(flac, "cannot be read");
    Path riff = Files.writeString(folder.resolve("open.wav"), "RIFF????WAVEfmt nonsense");
    assertRefused(riff, "cannot be read");
    assertThat(openFiles()).doesNotContain(flac.toRealPath(), riff.toRealPath());
    try (InputStream held = Files.newInputStream(flac)) {
      assertThat(held.read()).isEqualTo('f');
      assertThat(openFiles()).contains(flac.toRealPath());
    }
  }

  /** What this process holds open, by proc(5). */
  private static List<Path> openFiles() throws IOException {
    List<Path> files = new ArrayList<>();
    try (DirectoryStream<Path> open = Files.newDirectoryStream(Path.of("/proc/self/fd"))) {
      for (Path link : open) {
        if (Files.exists(link)) {
          files.add(Files.readSymbolicLink(link));
        }
      }
    }
    return files;
  }

  @Test
  void a_channel_that_is_missing_is_refused() throws Exception {
    Path file = written(16, 44_100, AudioFileFormat.Type.WAVE);
    assertThatThrownBy(() -> SoundReader.open(file, Optional.of(3)))
        .isInstanceOf(SoundFailure.class)
        .hasMessageContaining("has 2 channels, no channel 3");
  }

  /** A file cut short, and one whose header says nothing of its length, give what there is. */
  @Test
  void a_file_that_breaks_off_gives_what_there_is() throws Exception {
    Path file = written(16, 44_100, AudioFileFormat.Type.WAVE);
    byte[] bytes = Files.readAllBytes(file);
    Files.write(file, Arrays.copyOf(bytes, bytes.length / 2));
    assertThat(all(file, Optional.empty()).length).isBetween(FRAMES / 2 - 20, FRAMES / 2);
  }

  private void assertRamp(Path file, int bits) throws Exception {
    float[] left = all(file, Optional.of(1));
    assertThat(left).hasSize(FRAMES);
    double step = Math.pow(2, 1 - bits);
    for (int i = 0; i < FRAMES; i += 1111) {
      assertThat((double) left[i]).isCloseTo(ramp(i), within(2 * step + 1e-6));
    }
    assertThat(all(file, Optional.empty())[FRAMES / 4]).isCloseTo(0, within(0.02f));
  }

  private static double ramp(int frame) {
    return (double) frame / FRAMES * 2 - 1;
  }

  private static void assertSine(Path file, double rate) throws SoundFailure {
    try (SoundReader reader = SoundReader.open(file, Optional.of(1))) {
      assertThat(reader.rate()).isEqualTo(rate);
      float[] sound = reader.next();
      for (int i = 0; i < 1000; i++) {
        double wanted = Math.sin(2 * Math.PI * 220 * i / rate) / 8;
        assertThat((double) sound[i]).isCloseTo(wanted, within(1e-3));
      }
    }
  }

  private void assertRefused(Path file, String reason) {
    assertThatThrownBy(() -> SoundReader.open(file, Optional.empty()))
        .isInstanceOf(SoundFailure.class)
        .hasMessageContaining(file.toString())
        .hasMessageContaining(reason);
  }

  private static float[] all(Path file, Optional<Integer> channel) throws SoundFailure {
    float[] all = {};
    try (SoundReader reader = SoundReader.open(file, channel)) {
      for (float[] block = reader.next(); block.length > 0; block = reader.next()) {
        int before = all.length;
        all = Arrays.copyOf(all, before + block.length);
        System.arraycopy(block, 0, all, before, block.length);
      }
      assertThat(reader.done()).isBetween(0.4, 1.0);
    }
    return all;
  }

  /** A file whose left channel rises from −1 to 1 while the right one falls. */
  private Path written(int bits, float rate, AudioFileFormat.Type type) throws IOException {
    boolean bigEndian = type == AudioFileFormat.Type.AIFF;
    boolean signed = bits > 8 || bigEndian;
    ByteBuffer bytes = ByteBuffer.allocate(FRAMES * 2 * bits / 8);
    for (int i = 0; i < FRAMES; i++) {
      put(bytes, ramp(i), bits, bigEndian, signed);
      put(bytes, -ramp(i), bits, bigEndian, signed);
    }
    AudioFormat format = new AudioFormat(rate, bits, 2, signed, bigEndian);
    Path file = folder.resolve("ramp-" + bits + "." + type.getExtension());
    AudioSystem.write(
        new AudioInputStream(new ByteArrayInputStream(bytes.array()), format, FRAMES),
        type,
        file.toFile());
    return file;
  }

  private static void put(
      ByteBuffer bytes, double value, int bits, boolean bigEndian, boolean signed) {
    long full = (1L << bits - 1) - 1;
    int sample = (int) Math.round(value * full) + (signed ? 0 : 1 << bits - 1);
    byte[] four = ByteBuffer.allocate(4).order(ByteOrder.BIG_ENDIAN).putInt(sample).array();
    for (int i = 0; i < bits / 8; i++) {
      bytes.put(four[bigEndian ? 4 - bits / 8 + i : 3 - i]);
    }
  }
}
