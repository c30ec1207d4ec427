package hingetone.ground.scales;

import hingetone.theory.Chord;
import hingetone.theory.ChordQuality;
import hingetone.theory.Key;
import hingetone.theory.NoteName;
import hingetone.theory.Scale;
import hingetone.theory.ScaleType;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a chord does in its place, and the scale that handbooks of chord scales name for it (common
 * practice, from memory): where the symbol or the way it moves leaves a teacher no choice.
 */
enum ChordFunction {
  /** A diminished seventh, passing or leading: its own notes and a leading note to each. */
  DIMINISHED("diminished", "a diminished seventh"),
  /** A dominant whose fifth and ninth are altered, or its fifth before a minor chord. */
  ALTERED("altered", "an altered dominant"),
  /** An augmented chord. */
  AUGMENTED("whole tone", "an augmented chord"),
  /** A dominant that falls a half step: its raised fourth is the root of the one it stands for. */
  TRITONE_SUBSTITUTE("lydian dominant", "a tritone substitute"),
  /** The seventh on the flat seventh degree, back to a major tonic: it keeps the leading note. */
  BACKDOOR("lydian dominant", "a backdoor dominant"),
  /** A dominant of a minor chord: the harmonic minor of where it leads. */
  TO_MINOR("phrygian dominant", "the dominant of a minor chord"),
  /** The major chord on the tonic of a Phrygian key. */
  PHRYGIAN_TONIC("phrygian dominant", "a Phrygian tonic");

  private final ScaleType scale;
  private final String words;

  ChordFunction(String scale, String words) {
    this.scale = ScaleType.named(scale);
    this.words = words;
  }

  /** What people call a chord that does this: {@code a tritone substitute}. */
  String words() {
    return words;
  }

  /** The function of a chord before another in a key; empty where more than one scale is usual. */
  static Optional<ChordFunction> of(Key key, Chord chord, Optional<Chord> next) {
    return Stream.of(values())
        .filter(function -> function.isOf(key, chord, next))
        .filter(function -> function.has(chord))
        .findFirst();
  }

  /** The scale on a chord's root. */
  Scale over(Chord chord) {
    return new Scale(chord.root(), scale);
  }

  /** A symbol that says otherwise is right. */
  private boolean has(Chord chord) {
    Scale usual = over(chord);
    return Stream.concat(chord.notes().stream(), chord.bass().stream()).allMatch(usual::contains);
  }

  private boolean isOf(Key key, Chord chord, Optional<Chord> next) {
    ChordQuality quality = chord.quality();
    boolean seventh = quality.has(4) && quality.has(10);
    boolean toMinor = falls(chord, next, 7) && next.filter(ChordContexts::isMinor).isPresent();
    boolean raisedFifth = quality.has(8) && !quality.has(7);
    return switch (this) {
      case DIMINISHED -> quality.has(3) && quality.has(6) && quality.has(9);
      case ALTERED ->
          seventh && raisedFifth && (toMinor || quality.has(1) || quality.has(3))
              || seventh && quality.has(6) && !quality.has(7) && (quality.has(1) || quality.has(3));
      case AUGMENTED -> quality.has(4) && raisedFifth && !toMinor;
      case TRITONE_SUBSTITUTE -> seventh && falls(chord, next, 1);
      case BACKDOOR ->
          seventh && isOn(key, chord, 10) && key.mode().equals(ScaleType.named("major"));
      case TO_MINOR -> seventh && toMinor && !quality.has(3);
      case PHRYGIAN_TONIC ->
          quality.has(4) && isOn(key, chord, 0) && key.mode().equals(ScaleType.named("phrygian"));
    };
  }

  private static boolean falls(Chord chord, Optional<Chord> next, int semitones) {
    return next.filter(n -> above(n.root(), chord.root()) == semitones).isPresent();
  }

  private static boolean isOn(Key key, Chord chord, int semitones) {
    return above(key.tonic(), chord.root()) == semitones;
  }

  private static int above(NoteName low, NoteName high) {
    return Math.floorMod(high.chroma() - low.chroma(), 12);
  }
}
