package hingetone.score;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The names of General MIDI level 1: programs and percussion keys (MIDI Manufacturers Association,
 * RP-003).
 *
 * <p>Names are found whatever their case and punctuation: {@code electric guitar clean} is {@code
 * Electric Guitar (clean)}.
 */
public final class GeneralMidi {
  /** The 128 programs; the place in the list is the program number, from 0. */
  public static final List<String> PROGRAMS =
      List.of(
          "Acoustic Grand",
          "Bright Acoustic",
          "Electric Grand",
          "Honky-Tonk",
          "Electric Piano 1",
          "Electric Piano 2",
          "Harpsichord",
          "Clav",
          "Celesta",
          "Glockenspiel",
          "Music Box",
          "Vibraphone",
          "Marimba",
          "Xylophone",
          "Tubular Bells",
          "Dulcimer",
          "Drawbar Organ",
          "Percussive Organ",
          "Rock Organ",
          "Church Organ",
          "Reed Organ",
          "Accordion",
          "Harmonica",
          "Tango Accordion",
          "Acoustic Guitar (nylon)",
          "Acoustic Guitar (steel)",
          "Electric Guitar (jazz)",
          "Electric Guitar (clean)",
          "Electric Guitar (muted)",
          "Overdriven Guitar",
          "Distortion Guitar",
          "Guitar Harmonics",
          "Acoustic Bass",
          "Electric Bass (finger)",
          "Electric Bass (pick)",
          "Fretless Bass",
          "Slap Bass 1",
          "Slap Bass 2",
          "Synth Bass 1",
          "Synth Bass 2",
          "Violin",
          "Viola",
          "Cello",
          "Contrabass",
          "Tremolo Strings",
          "Pizzicato Strings",
          "Orchestral Strings",
          "Timpani",
          "String Ensemble 1",
          "String Ensemble 2",
          "SynthStrings 1",
          "SynthStrings 2",
          "Choir Aahs",
          "Voice Oohs",
          "Synth Voice",
          "Orchestra Hit",
          "Trumpet",
          "Trombone",
          "Tuba",
          "Muted Trumpet",
          "French Horn",
          "Brass Section",
          "SynthBrass 1",
          "SynthBrass 2",
          "Soprano Sax",
          "Alto Sax",
          "Tenor Sax",
          "Baritone Sax",
          "Oboe",
          "English Horn",
          "Bassoon",
          "Clarinet",
          "Piccolo",
          "Flute",
          "Recorder",
          "Pan Flute",
          "Blown Bottle",
          "Skakuhachi",
          "Whistle",
          "Ocarina",
          "Lead 1 (square)",
          "Lead 2 (sawtooth)",
          "Lead 3 (calliope)",
          "Lead 4 (chiff)",
          "Lead 5 (charang)",
          "Lead 6 (voice)",
          "Lead 7 (fifths)",
          "Lead 8 (bass+lead)",
          "Pad 1 (new age)",
          "Pad 2 (warm)",
          "Pad 3 (polysynth)",
          "Pad 4 (choir)",
          "Pad 5 (bowed)",
          "Pad 6 (metallic)",
          "Pad 7 (halo)",
          "Pad 8 (sweep)",
          "FX 1 (rain)",
          "FX 2 (soundtrack)",
          "FX 3 (crystal)",
          "FX 4 (atmosphere)",
          "FX 5 (brightness)",
          "FX 6 (goblins)",
          "FX 7 (echoes)",
          "FX 8 (sci-fi)",
          "Sitar",
          "Banjo",
          "Shamisen",
          "Koto",
          "Kalimba",
          "Bagpipe",
          "Fiddle",
          "Shanai",
          "Tinkle Bell",
          "Agogo",
          "Steel Drums",
          "Woodblock",
          "Taiko Drum",
          "Melodic Tom",
          "Synth Drum",
          "Reverse Cymbal",
          "Guitar Fret Noise",
          "Breath Noise",
          "Seashore",
          "Bird Tweet",
          "Telephone Ring",
          "Helicopter",
          "Applause",
          "Gunshot");

  /** The lowest percussion key with a name. */
  public static final int FIRST_PERCUSSION_KEY = 35;

  /** The 47 percussion instruments; the first is key {@value #FIRST_PERCUSSION_KEY}. */
  public static final List<String> PERCUSSION =
      List.of(
          "Acoustic Bass Drum",
          "Bass Drum 1",
          "Side Stick",
          "Acoustic Snare",
          "Hand Clap",
          "Electric Snare",
          "Low Floor Tom",
          "Closed Hi-Hat",
          "High Floor Tom",
          "Pedal Hi-Hat",
          "Low Tom",
          "Open Hi-Hat",
          "Low-Mid Tom",
          "Hi-Mid Tom",
          "Crash Cymbal 1",
          "High Tom",
          "Ride Cymbal 1",
          "Chinese Cymbal",
          "Ride Bell",
          "Tambourine",
          "Splash Cymbal",
          "Cowbell",
          "Crash Cymbal 2",
          "Vibraslap",
          "Ride Cymbal 2",
          "Hi Bongo",
          "Low Bongo",
          "Mute Hi Conga",
          "Open Hi Conga",
          "Low Conga",
          "High Timbale",
          "Low Timbale",
          "High Agogo",
          "Low Agogo",
          "Cabasa",
          "Maracas",
          "Short Whistle",
          "Long Whistle",
          "Short Guiro",
          "Long Guiro",
          "Claves",
          "Hi Wood Block",
          "Low Wood Block",
          "Mute Cuica",
          "Open Cuica",
          "Mute Triangle",
          "Open Triangle");

  private GeneralMidi() {}

  /** The number, 0 to 127, of the program with a name. */
  public static Optional<Integer> program(String name) {
    return find(PROGRAMS, name);
  }

  /** The key, 35 to 81, of the percussion instrument with a name. */
  public static Optional<Integer> percussionKey(String name) {
    return find(PERCUSSION, name).map(place -> place + FIRST_PERCUSSION_KEY);
  }

  private static Optional<Integer> find(List<String> names, String name) {
    String wanted = plain(name);
    for (int i = 0; i < names.size(); i++) {
      if (plain(names.get(i)).equals(wanted)) {
        return Optional.of(i);
      }
    }
    return Optional.empty();
  }

  private static String plain(String name) {
    return name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", " ").strip();
  }
}
