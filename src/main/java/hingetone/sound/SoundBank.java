package hingetone.sound;

import hingetone.score.Role;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import javax.sound.midi.Instrument;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Patch;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Soundbank;
import javax.sound.midi.Synthesizer;

/**
 * The sounds a synthesizer plays with: a SoundFont, or the JDK's own emergency bank.
 *
 * <p>A bank knows how its sounds differ from what General MIDI promises, and gives what adapts the
 * messages on their way in.
 */
public final class SoundBank {
  private static final String BUILT_IN = "built-in sounds";
  private static final int PERCUSSION = 9;

  private final String name;
  private final Soundbank sounds;
  private final boolean builtIn;

  private SoundBank(String name, Soundbank sounds, boolean builtIn) {
    this.name = name;
    this.sounds = sounds;
    this.builtIn = builtIn;
  }

  /**
   * The bank to play with: the named SoundFont, else one found in the usual folders of this system,
   * else the built-in one.
   *
   * @throws SoundFailure when the named file is no SoundFont that can be read
   */
  public static SoundBank find(Optional<Path> soundFont) throws SoundFailure {
    if (soundFont.isPresent()) {
      return read(soundFont.get());
    }
    for (Path found : SoundFontFolders.ofThisSystem().soundFonts()) {
      try {
        return read(found);
      } catch (SoundFailure e) {
        continue; // not the user's choice: try the next one
      }
    }
    return builtIn();
  }

  /** Reads a SoundFont 2 file. */
  public static SoundBank read(Path file) throws SoundFailure {
    if (!Files.isReadable(file) || Files.isDirectory(file)) {
      throw new SoundFailure("Cannot read the sound font " + file + ": there is no such file.");
    }
    try {
      Soundbank sounds = MidiSystem.getSoundbank(file.toFile());
      return new SoundBank(String.valueOf(file.getFileName()), sounds, false);
    } catch (InvalidMidiDataException | IOException | RuntimeException e) {
      throw new SoundFailure(
          file + " is not a sound font that can be read; give a General MIDI bank (.sf2).", e);
    }
  }

  /**
   * The JDK's emergency bank. Java makes its waves with random phases, no two alike, so it is made
   * once and kept in the user's cache folder: from then on the same notes give the same samples.
   */
  public static SoundBank builtIn() throws SoundFailure {
    return new SoundBank(BUILT_IN, BuiltInBank.kept(BuiltInBank.cacheFolder()), true);
  }

  /** What it is called, for people. */
  public String name() {
    return name;
  }

  /**
   * The factor that brings a usual band to about −18 LUFS at full volume: measured, it lies at −20
   * with the built-in sounds and at −22 with a common SoundFont.
   */
  float usualGain() {
    return (float) Math.pow(10, (builtIn ? 2 : 4) / 20.0);
  }

  /** Loads the sound of a part, its program or for drums the standard kit. */
  void loadInto(Synthesizer device, Role role, int program) {
    boolean percussion = role.channel() == PERCUSSION;
    for (Instrument instrument : sounds.getInstruments()) {
      Patch patch = instrument.getPatch();
      if (isPercussion(patch) == percussion
          && patch.getBank() == 0
          && patch.getProgram() == (percussion ? 0 : program)) {
        device.loadInstrument(instrument);
        return;
      }
    }
  }

  /** Percussion patches are told apart by a class that is not exported. */
  private static boolean isPercussion(Patch patch) {
    try {
      return (boolean) patch.getClass().getMethod("isPercussion").invoke(patch);
    } catch (ReflectiveOperationException e) {
      return false;
    }
  }

  /**
   * What turns messages into those that make this bank sound as General MIDI asks; one for each
   * synthesizer, since it remembers programs.
   */
  Function<ShortMessage, List<ShortMessage>> adapter() {
    return builtIn ? new BuiltInSounds()::adapt : List::of;
  }
}
