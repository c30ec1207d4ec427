package hingetone.sound;

import hingetone.midi.MidiEvents;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Sound;
import hingetone.sound.SoundFont.Preset;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.ShortMessage;

/**
 * Plays every key of a preset and compares what is heard with what is said of it.
 *
 * <p>Run by hand it does so for every preset of the General MIDI banks named; it prints the notes
 * over which they disagree.
 */
final class HeardKeys {
  private static final int RATE = 22_050;
  private static final int SOUND_OFF = 120;

  /** Long enough for a sample that begins with a breath of silence, in blocks. */
  private static final int LISTENING = 40;

  /** Long enough for the longest note to die away, in blocks. */
  private static final int DYING = 2000;

  private HeardKeys() {}

  public static void main(String[] files) throws Exception {
    for (String file : files) {
      int wrong = 0;
      for (int program = 0; program < 128; program++) {
        wrong += told(Path.of(file), new Preset(0, program));
      }
      wrong += told(Path.of(file), new Preset(SoundFont.PERCUSSION_BANK, 0));
      System.out.println(file + ": " + wrong + " notes otherwise than said");
    }
  }

  private static int told(Path file, Preset preset) throws Exception {
    List<String> wrong = disagreements(file, preset, IntStream.range(0, 128).toArray());
    wrong.forEach(note -> System.out.println(preset + " " + note));
    return wrong.size();
  }

  /** The notes that are heard and should not be, or the other way round. */
  static List<String> disagreements(Path file, Preset preset, int... keys) throws Exception {
    SoundFont font = new SoundFont(MidiSystem.getSoundbank(file.toFile()));
    boolean kit = preset.bank() == SoundFont.PERCUSSION_BANK;
    Role role = kit ? Role.DRUMS : Role.CHORDS;
    List<String> wrong = new ArrayList<>();
    try (Synthesizer synthesizer = Synthesizer.open(RATE, SoundBank.read(file))) {
      synthesizer.prepare(List.of(new Part(role, Sound.of(preset.program()), List.of())));
      synthesizer.send(message(ShortMessage.CONTROL_CHANGE, role, 91, 0), 0);
      synthesizer.send(message(ShortMessage.PROGRAM_CHANGE, role, preset.program(), 0), 0);
      for (int key : keys) {
        for (int velocity : new int[] {30, 100, 127}) {
          boolean heard = isHeard(synthesizer, role, key, velocity);
          if (heard != font.sounds(preset, key, velocity)) {
            wrong.add("key " + key + " velocity " + velocity + (heard ? " heard" : " silent"));
          }
        }
      }
    }
    return wrong;
  }

  private static boolean isHeard(Synthesizer synthesizer, Role role, int key, int velocity) {
    float[] block = new float[2 * synthesizer.blockFrames()];
    synthesizer.send(message(ShortMessage.NOTE_ON, role, key, velocity), synthesizer.position());
    boolean heard = false;
    for (int i = 0; i < LISTENING && !heard; i++) {
      synthesizer.read(block, synthesizer.blockFrames());
      heard = peak(block) > 1e-5f;
    }
    synthesizer.send(
        message(ShortMessage.CONTROL_CHANGE, role, SOUND_OFF, 0), synthesizer.position());
    for (int i = 0; i < DYING && (i < 2 || peak(block) > 1e-7f); i++) {
      synthesizer.read(block, synthesizer.blockFrames());
    }
    return heard;
  }

  private static ShortMessage message(int command, Role role, int first, int second) {
    return MidiEvents.message(command, role.channel(), first, second);
  }

  private static float peak(float[] block) {
    float peak = 0;
    for (float sample : block) {
      peak = Math.max(peak, Math.abs(sample));
    }
    return peak;
  }
}
