package hingetone.command;

import hingetone.output.CommandFailure;
import hingetone.score.Score;
import hingetone.sound.SoundBank;
import hingetone.sound.SoundFailure;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;

/** Which sounds the band is played with. */
final class SoundFontOption {
  @Option(
      names = "--soundfont",
      paramLabel = "FILE.sf2",
      description = "The sounds to play with; without it a bank found on this system, or Java's.")
  Optional<Path> file = Optional.empty();

  /**
   * Looks whether the file named can be played, before anything is shown.
   *
   * @throws CommandFailure with the reason when it cannot
   */
  void check() {
    try {
      if (file.isPresent()) {
        SoundBank.check(file.get());
      }
    } catch (SoundFailure e) {
      throw CommandFailure.wrongInput(e.getMessage());
    }
  }

  /** Every file that the sounds may come from. */
  List<Path> files() {
    return file.map(List::of).orElseGet(SoundBank::installed);
  }

  /**
   * The bank to play a score with.
   *
   * @throws CommandFailure with the reason when the file named is no use for it
   */
  SoundBank bankFor(Score score) {
    try {
      return SoundBank.find(file, score);
    } catch (SoundFailure e) {
      throw file.isPresent()
          ? CommandFailure.wrongInput(e.getMessage())
          : CommandFailure.couldNot(e.getMessage());
    }
  }
}
