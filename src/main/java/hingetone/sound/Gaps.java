package hingetone.sound;

import hingetone.score.GeneralMidi;
import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.sound.SoundFont.Preset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * What some parts play and a sound font has no sound for.
 *
 * @param sounds whole sounds, by name: programs, or the drum kit
 * @param notes single drums, and sounds of which some notes are missing
 * @param everything whether the font has no sound at all for these parts
 */
record Gaps(Set<String> sounds, Set<String> notes, boolean everything) {
  static final Gaps NONE = new Gaps(Set.of(), Set.of(), false);

  private static final String KIT = "the drum kit";

  /** What a font lacks for parts that each have one sound. */
  static Gaps of(SoundFont font, List<Part> parts) {
    Map<Preset, List<Note>> played = new LinkedHashMap<>();
    for (Part part : parts) {
      played.computeIfAbsent(SoundBank.preset(part), p -> new ArrayList<>()).addAll(part.notes());
    }
    Set<String> sounds = new LinkedHashSet<>();
    Set<String> notes = new LinkedHashSet<>();
    boolean heard = false;
    for (Map.Entry<Preset, List<Note>> one : played.entrySet()) {
      Preset preset = one.getKey();
      Set<Integer> silent = silent(font, preset, one.getValue());
      heard |= one.getValue().stream().anyMatch(note -> !silent.contains(note.key()));
      if (!silent.isEmpty() && !font.sounds(preset)) {
        sounds.add(name(preset));
      } else {
        notes.addAll(names(preset, silent));
      }
    }
    return new Gaps(sounds, notes, !heard && !(sounds.isEmpty() && notes.isEmpty()));
  }

  private static Set<Integer> silent(SoundFont font, Preset preset, List<Note> notes) {
    Set<Integer> silent = new TreeSet<>();
    for (Note note : notes) {
      if (!font.sounds(preset, note.key(), note.velocity())) {
        silent.add(note.key());
      }
    }
    return silent;
  }

  private static String name(Preset preset) {
    boolean kit = preset.bank() == SoundFont.PERCUSSION_BANK;
    return kit ? KIT : GeneralMidi.PROGRAMS.get(preset.program());
  }

  private static Set<String> names(Preset preset, Set<Integer> keys) {
    if (preset.bank() != SoundFont.PERCUSSION_BANK) {
      return keys.isEmpty() ? Set.of() : Set.of("some notes of " + name(preset));
    }
    Set<String> drums = new LinkedHashSet<>();
    keys.forEach(key -> drums.add(drum(key)));
    return drums;
  }

  private static String drum(int key) {
    int place = key - GeneralMidi.FIRST_PERCUSSION_KEY;
    boolean named = place >= 0 && place < GeneralMidi.PERCUSSION.size();
    return named ? GeneralMidi.PERCUSSION.get(place) : "drum " + key;
  }

  /** All of them, whole sounds first. */
  List<String> names() {
    List<String> names = new ArrayList<>(sounds);
    names.addAll(notes);
    return names;
  }
}
