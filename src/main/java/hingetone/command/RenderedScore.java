package hingetone.command;

import hingetone.midi.MidiFile;
import hingetone.score.Part;
import hingetone.score.Score;
import hingetone.sound.SoundBank;
import hingetone.sound.SoundFailure;
import hingetone.sound.SoundFile;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Writes a score as a MIDI or sound file.
 *
 * @param score what is played
 * @param soundFont the SoundFont to play it with, when one was named
 */
record RenderedScore(Score score, Optional<Path> soundFont) {

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

  /** Writes a WAV file; gives a line that says how long and how loud it became. */
  String writeWav(Path file, Progress progress) {
    try (Export export = Export.of(List.of(file))) {
      SoundBank bank = SoundBank.find(soundFont);
      SoundFile.Result result = SoundFile.write(score, bank, export.unfinished().get(0), progress);
      export.finish();
      return String.format(
          Locale.ROOT,
          "%s: %d:%02d, %.1f LUFS, true peak %.1f dBTP, sounds of %s",
          file,
          (long) result.seconds() / 60,
          (long) result.seconds() % 60,
          result.loudness(),
          result.truePeak(),
          bank.name());
    } catch (SoundFailure e) {
      throw CommandFailure.couldNot(e.getMessage());
    } catch (IOException e) {
      throw couldNotWrite(file, e);
    }
  }

  /** Writes a WAV file for each part beside the whole: {@code song-bass.wav} for song.wav. */
  List<String> writeStems(Path file, Progress progress) {
    List<Path> stems = new ArrayList<>();
    for (Part part : score.parts()) {
      stems.add(stem(file, part.role().title()));
    }
    try (Export export = Export.of(stems)) {
      SoundFile.writeStems(score, SoundBank.find(soundFont), export.unfinished(), progress);
      export.finish();
      return stems.stream().map(stem -> stem + ": a stem").toList();
    } catch (SoundFailure e) {
      throw CommandFailure.couldNot(e.getMessage());
    } catch (IOException e) {
      throw couldNotWrite(file, e);
    }
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
