package hingetone.sound;

import hingetone.score.Part;
import hingetone.score.Score;
import hingetone.sound.SoundFont.Preset;
import hingetone.sound.level.BankLevels;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Soundbank;
import javax.sound.midi.Synthesizer;

/**
 * The sounds a synthesizer plays with: a SoundFont, or the JDK's own emergency bank.
 *
 * <p>A bank knows which sounds it lacks and, once they are measured, how loud they are.
 */
public final class SoundBank {
  /** What is told where no SoundFont is there. */
  public static final String JAVAS =
      "These are Java's emergency sounds. A SoundFont sounds better: on Debian and Ubuntu"
          + " sudo apt-get install fluid-soundfont-gm, elsewhere --soundfont FILE.";

  private static final Preset KIT = new Preset(SoundFont.PERCUSSION_BANK, 0);
  private static final int HEARD_VELOCITY = 88;
  private static final String BUILT_IN = "built-in sounds";

  private final Optional<Path> file;
  private final SoundFont font;
  private final boolean builtIn;
  private final LevelStore levels;

  private SoundBank(Optional<Path> file, SoundFont font, boolean builtIn, LevelStore levels) {
    this.file = file;
    this.font = font;
    this.builtIn = builtIn;
    this.levels = levels;
  }

  /**
   * The bank to play a score with: the named SoundFont, else the first one in the usual folders of
   * this system that has every program of the score and its drum kit, else the built-in one.
   *
   * @throws SoundFailure when the named file cannot be played or has none of the score's sounds
   */
  public static SoundBank find(Optional<Path> soundFont, Score score) throws SoundFailure {
    return find(soundFont, score, SoundFontFolders.ofThisSystem());
  }

  static SoundBank find(Optional<Path> soundFont, Score score, SoundFontFolders folders)
      throws SoundFailure {
    List<Part> parts = score.bySound();
    if (soundFont.isPresent()) {
      SoundBank named = read(soundFont.get());
      if (named.gaps(parts).everything()) {
        throw new SoundFailure(
            soundFont.get() + " has none of the sounds needed: " + list(named.lacks(parts)) + ".");
      }
      return named;
    }
    for (Path found : folders.soundFonts()) {
      try {
        SoundBank bank = read(found);
        if (bank.gaps(parts).sounds().isEmpty()) {
          return bank;
        }
      } catch (SoundFailure e) {
        continue; // not the user's choice: try the next one
      }
    }
    return builtIn();
  }

  /**
   * Looks whether a file can be played, without loading it.
   *
   * @throws SoundFailure with the reason why not
   */
  public static void check(Path file) throws SoundFailure {
    SoundFontCheck.check(file);
  }

  /**
   * Reads a SoundFont 2 file.
   *
   * @throws SoundFailure with the reason when it cannot be played
   */
  public static SoundBank read(Path file) throws SoundFailure {
    check(file);
    try {
      SoundFont font = new SoundFont(open(file));
      return new SoundBank(Optional.of(file), font, false, levels(file));
    } catch (InvalidMidiDataException | IOException | RuntimeException e) {
      throw new SoundFailure(file + " is damaged: copy or download it again.", e);
    }
  }

  private static LevelStore levels(Path file) throws SoundFailure, IOException {
    return LevelStore.of(BankSum.of(file), BuiltInBank.cacheFolder());
  }

  /** From its file Java reads samples when they are wanted; one it cannot name is read whole. */
  private static Soundbank open(Path file) throws IOException, InvalidMidiDataException {
    if (file.toFile().exists()) {
      return MidiSystem.getSoundbank(file.toFile());
    }
    try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
      return MidiSystem.getSoundbank(in);
    }
  }

  /** The SoundFonts in the usual folders of this system, which are played without being named. */
  public static List<Path> installed() {
    return SoundFontFolders.ofThisSystem().soundFonts();
  }

  /**
   * The JDK's emergency bank. Java makes its waves with random phases, no two alike, so it is made
   * once and kept in the user's cache folder: from then on the same notes give the same samples.
   */
  public static SoundBank builtIn() throws SoundFailure {
    Path folder = BuiltInBank.cacheFolder();
    SoundFont font = new SoundFont(BuiltInBank.kept(folder, BuiltInBank::made));
    return new SoundBank(Optional.empty(), font, true, builtInLevels(BuiltInBank.file(folder)));
  }

  private static LevelStore builtInLevels(Path file) throws SoundFailure {
    try {
      return Files.isRegularFile(file) ? levels(file) : LevelStore.unkept();
    } catch (IOException e) {
      return LevelStore.unkept();
    }
  }

  /**
   * The next of the banks installed, from the last to the first again, that can be played; empty
   * where there is no other.
   */
  public Optional<SoundBank> next() {
    return next(SoundFontFolders.ofThisSystem());
  }

  Optional<SoundBank> next(SoundFontFolders folders) {
    List<Path> all = folders.soundFonts();
    int at = file.map(all::indexOf).orElse(-1);
    for (int i = 1; i <= all.size(); i++) {
      Path other = all.get((at + i) % all.size());
      if (!file.equals(Optional.of(other))) {
        try {
          return Optional.of(read(other));
        } catch (SoundFailure e) {
          continue; // it cannot be played: the one after it
        }
      }
    }
    return Optional.empty();
  }

  /** What a player is told of it: its name, or how to get a better one than Java's. */
  public String told() {
    return builtIn ? JAVAS : "Sounds of " + name() + ".";
  }

  /** What it is called, for people. */
  public String name() {
    return file.map(path -> String.valueOf(path.getFileName())).orElse(BUILT_IN);
  }

  /**
   * Names what this bank has no sound for among what parts play, each in its one sound: programs
   * and drums.
   */
  List<String> lacks(List<Part> parts) {
    return gaps(parts).names();
  }

  /** The built-in bank lacks nothing: what it has no sound for is played on another. */
  private Gaps gaps(List<Part> parts) {
    return builtIn ? Gaps.NONE : Gaps.of(font, parts);
  }

  /** Says in a sentence what of a score will not be heard; empty where all will be. */
  public Optional<String> silentIn(Score score) {
    return silent(lacks(score.bySound()));
  }

  /** The sentence for names that {@link #lacks} gave; empty for none. */
  Optional<String> silent(List<String> names) {
    return names.isEmpty()
        ? Optional.empty()
        : Optional.of(
            name()
                + " has no sound for "
                + list(names)
                + ": you will not hear "
                + (names.size() == 1 ? "it." : "them."));
  }

  /** Names as a sentence lists them: {@code Ride Bell, Cowbell and Maracas}. */
  private static String list(List<String> names) {
    int last = names.size() - 1;
    return last < 1
        ? String.join("", names)
        : String.join(", ", names.subList(0, last)) + " and " + names.get(last);
  }

  /** Where the sound of a part lies: its program, or for drums the standard kit. */
  static Preset preset(Part part) {
    return part.role().isPercussion() ? KIT : new Preset(0, part.sound().program());
  }

  /** Loads a sound, if it is there; one after the other, as they may share samples. */
  void load(Preset preset, Synthesizer device) {
    synchronized (font) {
      font.instrument(preset).ifPresent(device::loadInstrument);
    }
  }

  /** Whether a drum of the standard kit is heard. */
  boolean hasDrum(int key) {
    return builtIn || font.sounds(KIT, key, HEARD_VELOCITY);
  }

  /** How loud its sounds are, as far as that is known by now. */
  BankLevels levels() {
    return levels.known();
  }

  /**
   * Finds out how loud the sounds of parts are, each in its one sound, where that is not known:
   * from then on they are levelled. It takes a tenth of a second a program, a second or two for the
   * drum kit.
   */
  public void measure(List<Part> parts) throws SoundFailure {
    synchronized (levels) {
      if (LevelMeasure.isMissing(parts, levels())) {
        levels.add(LevelMeasure.of(this, parts, levels()));
      }
    }
  }

  /** The same in a thread of its own, behind what plays; what cannot be measured plays as it is. */
  public void measureBehind(List<Part> parts) {
    if (LevelMeasure.isMissing(parts, levels())) {
      Thread thread =
          new Thread(
              () -> {
                try {
                  measure(parts);
                } catch (SoundFailure e) {
                  return;
                }
              },
              "levels");
      thread.setDaemon(true);
      thread.setPriority(Thread.MIN_PRIORITY);
      thread.start();
    }
  }

  /** The message that asks this bank for a sound it has. */
  ShortMessage substitute(ShortMessage message) {
    return builtIn ? BuiltInSounds.adapt(message) : message;
  }
}
