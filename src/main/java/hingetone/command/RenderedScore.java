package hingetone.command;

import hingetone.midi.MidiFile;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.sound.SoundBank;
import hingetone.sound.SoundFailure;
import hingetone.sound.SoundFile;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Writes a score as a MIDI or sound file.
 *
 * @param score what is played
 */
record RenderedScore(Score score) {

  /** Writes a Standard MIDI File. */
  String writeMidi(Path file) {
    try (Export export = Export.of(List.of(file))) {
      try (OutputStream out = Files.newOutputStream(export.unfinished().get(0))) {
        MidiFile.write(score, out);
      }
      export.finish();
      return file + ": " + score.parts().size() + " parts";
    } catch (IOException e) {
      throw couldNotWrite(file, e);
    }
  }

  /**
   * Writes a WAV file; gives a line that says how long and how loud it became, then one for each
   * stem.
   *
   * @param stems whether each part is written alone beside the whole: {@code song-bass.wav}
   */
  List<String> writeWav(Path file, boolean stems, SoundBank bank, Progress progress) {
    Map<Role, Path> alone = stems ? stems(file) : Map.of();
    List<Path> files = new ArrayList<>(List.of(file));
    files.addAll(alone.values());
    try (Export export = Export.of(files)) {
      List<Path> unfinished = new ArrayList<>(export.unfinished());
      Path whole = unfinished.remove(0);
      Map<Role, Path> places = new LinkedHashMap<>();
      alone.keySet().forEach(role -> places.put(role, unfinished.remove(0)));
      SoundFile.Result result = SoundFile.write(score, bank, whole, places, progress);
      export.finish();
      List<String> lines = new ArrayList<>(List.of(report(file, result, bank)));
      alone.values().forEach(stem -> lines.add(stem + ": a stem"));
      return lines;
    } catch (SoundFailure e) {
      throw CommandFailure.couldNot(e.getMessage());
    } catch (IOException e) {
      throw couldNotWrite(file, e);
    }
  }

  private static String report(Path file, SoundFile.Result result, SoundBank bank) {
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
        Locale.ROOT,
        "%s: %d:%02d, %s, sounds of %s",
        file,
        seconds / 60,
        seconds % 60,
        level,
        bank.name());
  }

  private Map<Role, Path> stems(Path file) {
    Map<Role, Path> stems = new LinkedHashMap<>();
    score.parts().forEach(part -> stems.put(part.role(), stem(file, part.role().title())));
    return stems;
  }

  private static Path stem(Path file, String part) {
    String name = file.getFileName().toString();
    String plain = name.substring(0, name.lastIndexOf('.'));
    return file.resolveSibling(plain + "-" + part.toLowerCase(Locale.ROOT) + ".wav");
  }

  static CommandFailure couldNotWrite(Path file, IOException problem) {
    return CommandFailure.couldNot("Cannot write " + file + ": " + problem.getMessage());
  }
}
