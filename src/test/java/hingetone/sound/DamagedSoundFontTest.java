package hingetone.sound;

import hingetone.midi.ChannelSetup;
import hingetone.midi.MidiEvents;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Sound;
import hingetone.sound.TinySoundFont.Zone;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import javax.sound.midi.ShortMessage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A bank with bytes changed, lost and put in is refused, or it plays: nothing throws or hangs. */
class DamagedSoundFontTest {
  @TempDir Path folder;

  @Test
  @Timeout(60)
  void it_is_refused_or_it_plays() throws Exception {
    run(folder.resolve("bank.sf2"), 1, 200);
  }

  /** Run by hand: a seed, then how many banks. */
  public static void main(String[] args) throws Exception {
    Path file = Files.createTempFile("bank", ".sf2");
    int played = run(file, Long.parseLong(args[0]), Integer.parseInt(args[1]));
    Files.delete(file);
    System.out.println(args[1] + " damaged banks, " + played + " of them played");
  }

  private static int run(Path file, long firstSeed, int banks) throws Exception {
    int played = 0;
    for (long seed = firstSeed; seed < firstSeed + banks; seed++) {
      try {
        played += plays(file, new Random(seed)) ? 1 : 0;
      } catch (Exception | Error e) {
        throw new AssertionError("seed " + seed, e);
      }
    }
    return played;
  }

  private static boolean plays(Path file, Random random) throws Exception {
    Files.write(file, damaged(random));
    try (Synthesizer synthesizer = Synthesizer.open(22_050, SoundBank.read(file))) {
      for (Role role : List.of(Role.DRUMS, Role.BASS)) {
        Part part = new Part(role, Sound.of(33), List.of());
        synthesizer.prepare(List.of(part));
        ChannelSetup.of(role, part.sound(), role.channel())
            .forEach(message -> synthesizer.send(message, 0));
        int key = random.nextInt(128);
        synthesizer.send(MidiEvents.message(ShortMessage.NOTE_ON, role.channel(), key, 90), 0);
      }
      synthesizer.read(new float[2 * 3000], 3000);
      return true;
    } catch (SoundFailure e) {
      return false;
    }
  }

  private static byte[] damaged(Random random) {
    byte[] bytes = TinySoundFont.of(Zone.of(0, 33).keys(20, 100), Zone.of(128, 0)).bytes();
    int waves = 2 * 2251;
    for (int i = random.nextInt(6); i >= 0; i--) {
      // The waves are most of the file; the lists before and after them are what matters.
      int place = random.nextInt(bytes.length - waves);
      place += place < 90 ? 0 : waves;
      bytes[place] =
          switch (random.nextInt(4)) {
            case 0 -> (byte) random.nextInt(256);
            case 1 -> (byte) (bytes[place] + 1);
            case 2 -> (byte) 0xFF;
            default -> 0;
          };
    }
    return random.nextInt(10) == 0 ? Arrays.copyOf(bytes, random.nextInt(bytes.length)) : bytes;
  }
}
