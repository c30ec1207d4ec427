package hingetone.sound;

import hingetone.score.Mark;
import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.sound.file.LoudnessMeter;
import hingetone.sound.file.Mixdown;
import hingetone.time.Beats;
import hingetone.time.Tempo;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Run by hand: measures every program and drum of a bank with one and the same phrase and prints
 * the loudness in LUFS, beside that of the built-in bank. The trims in the built-in bank come from
 * it. Argument: a General MIDI SoundFont to compare with.
 */
final class BankLoudness {
  private static final int SAMPLE_RATE = 44_100;

  private BankLoudness() {}

  public static void main(String[] args) throws Exception {
    SoundBank font = SoundBank.read(Path.of(args[0]));
    SoundBank builtIn = SoundBank.builtIn();
    System.out.println("program\tbuilt in\t" + font.name());
    for (int program = 0; program < 128; program++) {
      Part part = new Part(Role.CHORDS, new Sound(program, 100, 64, 0), phrase(keys(program)));
      print(program, loudness(builtIn, part), loudness(font, part));
    }
    System.out.println("drum\tbuilt in\t" + font.name());
    for (int key = 27; key <= 87; key++) {
      Part part = new Part(Role.DRUMS, new Sound(0, 100, 64, 0), phrase(key));
      print(key, loudness(builtIn, part), loudness(font, part));
    }
  }

  private static void print(int number, double builtIn, double font) {
    System.out.printf(Locale.ROOT, "%d\t%.1f\t%.1f%n", number, builtIn, font);
  }

  /** Basses play low, all else a triad in the middle. */
  private static int[] keys(int program) {
    return program >= 32 && program < 40 ? new int[] {35} : new int[] {57, 60, 64};
  }

  private static List<Note> phrase(int... keys) {
    List<Note> notes = new ArrayList<>();
    for (int beat = 0; beat < 16; beat++) {
      for (int key : keys) {
        int moved = keys.length == 1 && key == 35 ? key + beat % 8 : key;
        notes.add(new Note(Beats.of(beat), Beats.of(3, 4), moved, 90));
      }
    }
    return notes;
  }

  private static double loudness(SoundBank bank, Part part) throws Exception {
    Score score =
        new Score(
            "",
            Beats.ZERO,
            Beats.of(16),
            List.of(new Mark.OfTempo(Beats.ZERO, Tempo.of(120))),
            List.of(part));
    LoudnessMeter meter = new LoudnessMeter(SAMPLE_RATE);
    Mixdown.of(score, bank, SAMPLE_RATE).play((stereo, frames, done) -> meter.add(stereo, frames));
    return meter.integrated();
  }
}
