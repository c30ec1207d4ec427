package hingetone.output;

import hingetone.midi.MidiFile;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.sound.SoundBank;
import hingetone.sound.SoundFailure;
import hingetone.sound.file.SoundFile;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Writes a score as a MIDI or sound file.
 *
 * @param score what is played
 */
public record RenderedScore(Score score) {

  /** Writes a Standard MIDI File; says what it holds. */
  public String writeMidi(Path file) throws IOException {
    try (OutputStream out = Files.newOutputStream(file)) {
      MidiFile.write(score, out);
    }
    return score.parts().size() + " parts";
  }

  /**
   * Writes a WAV file and parts alone into others; says how long and how loud the whole became.
   *
   * @throws CommandFailure when the sounds cannot be had
   */
  public String writeWav(Path file, Map<Role, Path> stems, SoundBank bank, Progress progress)
      throws IOException {
    try {
      return report(SoundFile.write(score, bank, file, stems, progress), bank);
    } catch (SoundFailure e) {
      throw CommandFailure.couldNot(e.getMessage());
    }
  }

  private static String report(SoundFile.Result result, SoundBank bank) {
    String level =
        result.isSilent()
            ? "silence"
            : String.format(
                Locale.ROOT,
                "%.1f LUFS, true peak %.1f dBTP",
                result.loudness(),
                result.truePeak());
    long seconds = (long) result.seconds();
    return String.format(
        Locale.ROOT, "%d:%02d, %s, sounds of %s", seconds / 60, seconds % 60, level, bank.name());
  }

  /** Its parts, in order. */
  public List<Role> roles() {
    return score.parts().stream().map(Part::role).toList();
  }
}
