package hingetone.sound;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.sound.midi.Instrument;
import javax.sound.midi.Patch;
import javax.sound.midi.Soundbank;

/**
 * The presets of a SoundFont and the notes they play, as the JDK's synthesizer has read them.
 *
 * <p>The synthesizer's classes are not exported to a compiler held to Java's public ones; they are
 * asked by reflection, as in {@link Synthesizer}.
 */
final class SoundFont {
  /** The bank of a SoundFont in which the drum kits lie. */
  static final int PERCUSSION_BANK = 128;

  /** A sample that never rises above this 16-bit value, −60 dB, is silence. */
  private static final int SILENCE = 32;

  private static final int BLOCK_BYTES = 1 << 16;

  private final Map<Preset, Instrument> instruments = new HashMap<>();
  private final Map<Preset, List<Zone>> zones = new HashMap<>();
  private final Map<Object, Boolean> heard = new IdentityHashMap<>();

  /** The place of a sound in the banks; drum kits lie in bank {@value #PERCUSSION_BANK}. */
  record Preset(int bank, int program) {}

  /**
   * Notes that lead to a sample.
   *
   * @param sample its bytes, 16 bits a value
   */
  private record Zone(int lowKey, int highKey, int least, int greatest, Object sample) {
    boolean contains(int key, int velocity) {
      return key >= lowKey && key <= highKey && velocity >= least && velocity <= greatest;
    }
  }

  SoundFont(Soundbank bank) {
    for (Instrument instrument : bank.getInstruments()) {
      instruments.putIfAbsent(preset(instrument.getPatch()), instrument);
    }
  }

  private static Preset preset(Patch patch) {
    boolean percussion = (boolean) ask(patch, "isPercussion");
    return new Preset(percussion ? PERCUSSION_BANK : patch.getBank(), patch.getProgram());
  }

  /** What to load for a preset; empty where there is none or it cannot be played. */
  synchronized Optional<Instrument> instrument(Preset preset) {
    return zones(preset).isEmpty()
        ? Optional.empty()
        : Optional.ofNullable(instruments.get(preset));
  }

  /** Whether a key struck with a velocity leads to a sample that is more than silence. */
  synchronized boolean sounds(Preset preset, int key, int velocity) {
    return zones(preset).stream()
        .anyMatch(zone -> zone.contains(key, velocity) && isHeard(zone.sample()));
  }

  /** Whether any key of a preset leads to a sample that is more than silence. */
  synchronized boolean sounds(Preset preset) {
    return zones(preset).stream().anyMatch(zone -> isHeard(zone.sample()));
  }

  private List<Zone> zones(Preset preset) {
    return zones.computeIfAbsent(
        preset,
        p -> Optional.ofNullable(instruments.get(p)).map(SoundFont::zones).orElse(List.of()));
  }

  /** The zones of an instrument; none where one of them cannot be played. */
  private static List<Zone> zones(Instrument instrument) {
    List<Zone> zones = new ArrayList<>();
    try {
      for (Object performer : (Object[]) ask(instrument, "getPerformers")) {
        for (Object wave : (List<?>) ask(performer, "getOscillators")) {
          if (!isPlayable(wave)) {
            return List.of();
          }
          zones.add(zone(performer, ask(wave, "getBuffer")));
        }
      }
      return zones;
    } catch (IllegalStateException e) {
      return List.of(); // the lists of a damaged file lead nowhere
    }
  }

  private static Zone zone(Object performer, Object sample) {
    return new Zone(
        (int) ask(performer, "getKeyFrom"),
        (int) ask(performer, "getKeyTo"),
        (int) ask(performer, "getVelFrom"),
        (int) ask(performer, "getVelTo"),
        sample);
  }

  /**
   * Whether the synthesizer can play a wave: it throws where there are no samples, and hangs over a
   * loop of no length or one that begins before them.
   */
  private static boolean isPlayable(Object wave) {
    boolean loops = (int) ask(wave, "getLoopType") != 0;
    return ask(wave, "getBuffer") != null
        && (!loops
            || (float) ask(wave, "getLoopLength") >= 1 && (float) ask(wave, "getLoopStart") >= 0);
  }

  private boolean isHeard(Object sample) {
    return heard.computeIfAbsent(sample, SoundFont::rises);
  }

  private static boolean rises(Object sample) {
    byte[] block = new byte[BLOCK_BYTES];
    try (InputStream bytes = (InputStream) ask(sample, "getInputStream")) {
      for (int read = bytes.readNBytes(block, 0, BLOCK_BYTES);
          read > 1;
          read = bytes.readNBytes(block, 0, BLOCK_BYTES)) {
        for (int i = 0; i + 1 < read; i += 2) {
          if (Math.abs(block[i] & 0xFF | block[i + 1] << 8) > SILENCE) {
            return true;
          }
        }
      }
      return false;
    } catch (IOException e) {
      return false; // what cannot be read cannot be played
    }
  }

  private static Object ask(Object about, String method) {
    try {
      return about.getClass().getMethod(method).invoke(about);
    } catch (ReflectiveOperationException | RuntimeException e) {
      throw new IllegalStateException(method, e);
    }
  }
}
