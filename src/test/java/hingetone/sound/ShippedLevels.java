package hingetone.sound;

import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Sound;
import hingetone.sound.level.BankLevels;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Run by hand: measures every program and the drum kit of banks and writes the figures that come
 * with the program.
 *
 * <p>Arguments: the folder of the figures ({@code src/main/resources/levels}), the bank whose
 * programs and the bank whose drums the levels of the grooves reckon with, then the banks that come
 * with or are named by the program.
 */
final class ShippedLevels {
  private ShippedLevels() {}

  public static void main(String[] args) throws Exception {
    Path folder = Path.of(args[0]);
    BankLevels usual =
        new BankLevels(measured(Path.of(args[1])).programs(), measured(Path.of(args[2])).drums());
    Files.writeString(folder.resolve("usual.txt"), usual.text());
    for (int bank = 3; bank < args.length; bank++) {
      Path file = Path.of(args[bank]);
      Files.writeString(folder.resolve(BankSum.of(file) + ".txt"), measured(file).text());
    }
  }

  static BankLevels measured(Path file) throws SoundFailure {
    List<Part> parts = new ArrayList<>();
    parts.add(new Part(Role.DRUMS, Sound.of(0), List.of()));
    for (int program = 0; program < 128; program++) {
      parts.add(new Part(Role.CHORDS, Sound.of(program), List.of()));
    }
    return LevelMeasure.of(SoundBank.read(file), parts, BankLevels.NONE);
  }
}
