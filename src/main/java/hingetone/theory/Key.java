package hingetone.theory;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A key: a tonic and {@code major}, {@code minor}, {@code blues} or a mode.
 *
 * @param tonic its tonic
 * @param mode its scale; one of {@link #MODES}
 */
public record Key(NoteName tonic, ScaleType mode) {
  /** The scales that may name a key. */
  public static final List<ScaleType> MODES =
      List.of("major", "minor", "blues", "dorian", "phrygian", "lydian", "mixolydian", "locrian")
          .stream()
          .map(ScaleType::named)
          .toList();

  private static final int MOST_IN_SIGNATURE = 7;

  public Key {
    if (!MODES.contains(mode)) {
      throw new IllegalArgumentException("not the scale of a key: " + mode);
    }
  }

  /** Reads {@code C minor}, {@code Bb major}, {@code E dorian}; empty when it is anything else. */
  public static Optional<Key> parse(String text) {
    return Scale.parse(text.strip())
        .filter(scale -> MODES.contains(scale.type()))
        .map(scale -> new Key(scale.tonic(), scale.type()));
  }

  /** The key's own scale: for {@code G blues} the blues scale on G. */
  public Scale scale() {
    return new Scale(tonic, mode);
  }

  /** Whether it is a blues key, in which major and minor stand side by side. */
  public boolean isBlues() {
    return mode.equals(ScaleType.named("blues"));
  }

  /** Whether the third above the tonic is minor. */
  public boolean isMinor() {
    return mode.intervals().contains(Interval.MINOR_THIRD);
  }

  /**
   * The five-note scale a player reaches for first: minor pentatonic, in a major key major
   * pentatonic, in a locrian key the one with its flat fifth.
   */
  public Scale pentatonic() {
    if (!mode.intervals().contains(Interval.FIFTH)) {
      return new Scale(tonic, ScaleType.named("locrian pentatonic"));
    }
    return new Scale(tonic, ScaleType.named(isMinor() ? "minor pentatonic" : "major pentatonic"));
  }

  /** The seven-note scale of the key: its own, or for a blues key the minor scale. */
  public Scale heptatonic() {
    return mode.intervals().size() == 7 ? scale() : new Scale(tonic, ScaleType.named("minor"));
  }

  /** Sharps (positive) or flats (negative) of the key signature, which is that of its notes. */
  public int signature() {
    return heptatonic().notes().stream().mapToInt(NoteName::fifths).min().orElseThrow() + 1;
  }

  /**
   * The pitch a musician would write in this key for a MIDI number: a note of the scale as the
   * scale spells it, any other as a degree players know: in minor b2 3 b5 6 7 (for D minor: Eb, F#,
   * Ab, B, C#), in major b2 b3 #4 b6 b7, without double sharps or flats.
   */
  public Pitch spell(int midi) {
    return Pitch.at(spellChroma(Math.floorMod(midi, 12)), midi);
  }

  /** The name a musician would write in this key for a pitch class, 0 to 11. */
  public NoteName spellChroma(int chroma) {
    NoteName strict = tonic.plus(degreeOf(chroma));
    boolean simple = Math.abs(strict.alteration()) <= 1 || scale().degreeOf(chroma).isPresent();
    return simple ? strict : strict.simplified();
  }

  /**
   * A note as people read it in this key: one of the key's own as the key spells it, Cb in Gb
   * major; any other by its simplest name.
   */
  public NoteName readable(NoteName note) {
    return heptatonic().notes().contains(note) ? note : note.simplified();
  }

  /** The degree that a pitch class (0 to 11) is in this key: {@code b3} for Eb in C minor. */
  public Interval degreeOf(int chroma) {
    int flattest = isMinor() ? -6 : -5;
    int fifths = 7 * (chroma - tonic.chroma());
    return scale()
        .degreeOf(chroma)
        .orElse(Interval.ofFifths(flattest + Math.floorMod(fifths - flattest, 12)));
  }

  /** The key moved up by an interval. */
  public Key plus(Interval interval) {
    return new Key(tonic.plus(interval), mode);
  }

  /**
   * The key moved by semitones (either way), spelled with the fewest sharps or flats; where six of
   * either would do, with the sort this key has. Whole octaves change nothing.
   */
  public Key shifted(int semitones) {
    return semitones % 12 == 0 ? this : moved(semitones);
  }

  /** The key that sounds the same with the fewest sharps or flats: E minor for F flat minor. */
  public Key simplified() {
    return Math.abs(signature()) <= MOST_IN_SIGNATURE ? this : moved(0);
  }

  private Key moved(int semitones) {
    return spellings(semitones).get(0);
  }

  /**
   * The key moved by semitones (either way) under each name with a signature of at most seven
   * sharps or flats, the fewest first; where six of either would do, the sort this key has.
   */
  public List<Key> spellings(int semitones) {
    int first = Math.floorMod(7 * (tonic.chroma() + Math.floorMod(semitones, 12)), 12);
    int side = Integer.signum(signature());
    return Stream.of(first - 12, first, first + 12)
        .map(fifths -> new Key(NoteName.ofFifths(fifths), mode))
        .filter(key -> Math.abs(key.signature()) <= MOST_IN_SIGNATURE)
        .sorted(
            Comparator.comparingInt((Key key) -> Math.abs(key.signature()))
                .thenComparingInt(key -> side > 0 ? -key.signature() : key.signature()))
        .toList();
  }

  @Override
  public String toString() {
    return tonic + " " + mode;
  }
}
