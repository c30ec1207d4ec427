package hingetone.ground.scales;

import hingetone.theory.Chord;
import hingetone.theory.Interval;
import hingetone.theory.Key;
import hingetone.theory.NoteName;
import hingetone.theory.Scale;
import hingetone.theory.ScaleType;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Ranks scales for a chord in its place. There is one formula for every scale and every chord: five
 * parts between 0 and 1, weighed by {@link Weights} (explained in {@code src/docs/ground.md}).
 */
public final class ScaleChoice {
  /** What is offered, in rows: the sooner players practise it, the earlier it stands. */
  private static final List<List<ScaleType>> ROWS =
      Stream.of(
              "minor pentatonic, major pentatonic, blues, major blues, major, minor, dorian,"
                  + " mixolydian, lydian, phrygian, locrian",
              "harmonic minor, melodic minor",
              "phrygian dominant, lydian dominant, altered, diminished, half-whole diminished,"
                  + " whole tone",
              "mixolydian b6, locrian #2",
              "dorian b2, lydian augmented, locrian #6, major augmented, dorian #4, lydian #2,"
                  + " ultralocrian")
          .map(row -> Stream.of(row.split(", ")).map(ScaleType::named).toList())
          .toList();

  private static final List<ScaleType> KINDS = ROWS.stream().flatMap(List::stream).toList();

  /** Semitones above a dominant's root of its flat and sharp ninths and fifths. */
  private static final Set<Integer> ALTERED = Set.of(1, 3, 6, 8);

  private record Rated(Scale scale, double fit) {}

  private final ChordContext setting;
  private final List<NoteName> chordTones;
  private final Set<Integer> sounding;
  private final boolean overDominant;
  private final List<Set<Integer>> fields;
  private final Optional<Set<Integer>> usual;

  private ScaleChoice(ChordContext setting) {
    this.setting = setting;
    this.chordTones = setting.chord().map(ScaleChoice::tones).orElse(List.of());
    this.sounding = ImpliedKey.chromas(chordTones.stream());
    this.overDominant =
        setting.pulls()
            || setting.chord().map(Chord::quality).filter(q -> q.has(4) && q.has(10)).isPresent();
    this.usual =
        setting
            .function()
            .map(f -> ImpliedKey.chromas(f.over(setting.chord().orElseThrow()).notes().stream()));
    this.fields = setting.homes().stream().map(h -> ImpliedKey.field(h.key(), chordTones)).toList();
  }

  /** Whether these are the notes that the chord's function asks for. */
  boolean isUsual(Scale scale) {
    return usual.filter(ImpliedKey.chromas(scale.notes().stream())::equals).isPresent();
  }

  /** A chord's notes and its bass. */
  private static List<NoteName> tones(Chord chord) {
    return Stream.concat(chord.notes().stream(), chord.bass().stream()).toList();
  }

  /** The scales that fit, the best first; of scales with the same notes only the best. */
  public static List<FittingScale> rank(ChordContext setting) {
    ScaleChoice choice = new ScaleChoice(setting);
    Map<Set<Integer>, List<Scale>> sameNotes = new LinkedHashMap<>();
    for (Scale scale : choice.candidates()) {
      sameNotes
          .computeIfAbsent(ImpliedKey.chromas(scale.notes().stream()), notes -> new ArrayList<>())
          .add(scale);
    }
    List<Rated> sorted =
        sameNotes.values().stream()
            .map(choice::rated)
            .sorted(
                Comparator.comparingDouble(Rated::fit)
                    .reversed()
                    .thenComparing(r -> KINDS.indexOf(r.scale().type()))
                    .thenComparing(choice::fromRoot))
            .limit(Weights.MOST_OFFERED)
            .toList();
    long offered = sorted.stream().filter(r -> r.fit() >= Weights.OFFERED).count();
    return sorted.stream().limit(Math.max(1, offered)).map(choice::fitting).toList();
  }

  /**
   * Scales with the same notes, under the name that players use: the key's own scale if it is one,
   * then the one on the chord's root, else of the kinds in the earliest row the one on the
   * strongest tonic. Five and six notes are named from a tonic that is at home.
   */
  private Rated rated(List<Scale> sameNotes) {
    double fit = sameNotes.stream().mapToDouble(this::fit).max().orElseThrow();
    Scale named =
        sameNotes.stream()
            .min(
                Comparator.comparing((Scale s) -> !isKeys(s))
                    .thenComparing(s -> !isOnRoot(s) || isSmall(s) || isSeldomNamed(s, sameNotes))
                    .thenComparing(ScaleChoice::row)
                    .thenComparing(Comparator.comparingDouble(this::tonicPart).reversed())
                    .thenComparing(s -> KINDS.indexOf(s.type())))
            .orElseThrow();
    return new Rated(named, fit);
  }

  private boolean isKeys(Scale scale) {
    return setting.homes().stream()
        .filter(home -> home.role() == ImpliedKey.Role.OWN)
        .anyMatch(home -> home.key().scale().equals(scale));
  }

  private boolean isOnRoot(Scale scale) {
    return setting.chord().filter(c -> c.root().soundsLike(scale.tonic())).isPresent();
  }

  private static boolean isSmall(Scale scale) {
    return scale.type().intervals().size() <= 6;
  }

  /** A mode that few practise, where another tonic gives the notes a name that all do. */
  private static boolean isSeldomNamed(Scale scale, List<Scale> sameNotes) {
    return row(scale) == ROWS.size() - 1 && sameNotes.stream().anyMatch(s -> row(s) <= 1);
  }

  /** The scale on another tonic that has the same notes, of the kinds that are offered. */
  static Optional<Scale> from(NoteName tonic, Scale scale) {
    Set<Integer> notes = ImpliedKey.chromas(scale.notes().stream());
    return KINDS.stream()
        .map(kind -> new Scale(tonic, kind))
        .filter(other -> ImpliedKey.chromas(other.notes().stream()).equals(notes))
        .findFirst();
  }

  private static int row(Scale scale) {
    return IntStream.range(0, ROWS.size())
        .filter(row -> ROWS.get(row).contains(scale.type()))
        .findFirst()
        .orElseThrow();
  }

  private FittingScale fitting(Rated rated) {
    return new FittingScale(rated.scale, rated.fit, ScaleReason.of(setting, rated.scale, this));
  }

  /** Semitones from the chord's root, or the first home's tonic, up to a scale's tonic. */
  private int fromRoot(Rated rated) {
    NoteName root = setting.chord().map(Chord::root).orElse(setting.homes().get(0).key().tonic());
    return Math.floorMod(rated.scale().tonic().chroma() - root.chroma(), 12);
  }

  /**
   * Every kind of scale on the chord's root, spelled as its symbol has it, and on every home's
   * tonic.
   */
  private List<Scale> candidates() {
    Map<Integer, NoteName> tonics = new LinkedHashMap<>();
    setting.chord().ifPresent(chord -> tonics.put(chord.root().chroma(), chord.root()));
    setting.homes().stream()
        .map(home -> home.key().tonic())
        .forEach(tonic -> tonics.putIfAbsent(tonic.chroma(), tonic));
    List<Scale> scales = new ArrayList<>();
    tonics.values().forEach(t -> KINDS.forEach(type -> scales.add(new Scale(t, type))));
    return scales;
  }

  double fit(Scale scale) {
    double fit =
        Weights.CHORD * chordPart(scale)
            + Weights.CLASH * clashPart(scale)
            + Weights.KEY * keyPart(scale)
            + Weights.TONIC * tonicPart(scale)
            + Weights.EASE * easePart(scale)
            + (isUsual(scale) ? Weights.FUNCTION : 0);
    return Math.round(Math.min(1, fit) * 1000) / 1000.0;
  }

  /** How much of the chord the scale has, thirds and sevenths counting most. */
  double chordPart(Scale scale) {
    if (setting.chord().isEmpty()) {
      return 1;
    }
    double had = 0;
    double all = 0;
    for (Interval interval : setting.chord().get().quality().intervals()) {
      double weight = chordToneWeight(interval);
      all += weight;
      had += weight * having(scale, interval);
    }
    Optional<NoteName> bass = setting.chord().get().bass().filter(b -> !chordHas(b));
    if (bass.isPresent()) {
      all += Weights.BASS;
      had += scale.contains(bass.get()) ? Weights.BASS : 0;
    }
    return had / all;
  }

  private boolean chordHas(NoteName note) {
    return setting.chord().orElseThrow().degreeOf(note.chroma()).isPresent();
  }

  private double having(Scale scale, Interval interval) {
    NoteName root = setting.chord().get().root();
    if (scale.contains(root.plus(interval))) {
      return 1;
    }
    NoteName third = root.plus(Interval.MINOR_THIRD);
    if (interval.equals(Interval.MAJOR_THIRD) && isSmall(scale) && scale.contains(third)) {
      return blueThird(scale, root, sounding.contains(third.chroma()));
    }
    return isBluesOwn(scale) || isRiffs(scale) ? Weights.BLUES_STANDS : 0;
  }

  /**
   * Whether a scale is the pentatonic or blues scale of a minor home that a riff stands on, or that
   * the chord leads to.
   */
  private boolean isRiffs(Scale scale) {
    return (setting.overRiff() || setting.pulls()) && isSmall(scale) && isMinorHome(scale);
  }

  /** What the minor third above a chord's root counts for its major third. */
  private double blueThird(Scale scale, NoteName root, boolean inChord) {
    boolean onRoot = scale.tonic().soundsLike(root);
    if (isMinorHome(scale)) {
      return onRoot || isBluesOwn(scale) ? Weights.BLUE_THIRD_OF_TONIC : Weights.BLUE_SEVENTH;
    }
    if (onRoot && setting.overRiff()) {
      return Weights.BLUE_THIRD_OVER_RIFF;
    }
    return onRoot && inChord ? Weights.BLUE_THIRD_IN_CHORD : Weights.BLUE_THIRD;
  }

  /** Whether a blues key's own scale has all of a scale: what sounds over the whole blues. */
  private boolean isBluesOwn(Scale scale) {
    return setting.homes().stream()
        .map(ImpliedKey::key)
        .filter(Key::isBlues)
        .anyMatch(key -> scale.notes().stream().allMatch(key.scale()::contains));
  }

  private static double chordToneWeight(Interval interval) {
    if (interval.equals(Interval.UNISON)) {
      return Weights.ROOT;
    }
    return switch (interval.number()) {
      case 3 -> Weights.THIRD;
      case 5 -> interval.alteration() == 0 ? Weights.FIFTH : Weights.ALTERED_FIFTH;
      case 7 -> Weights.SEVENTH;
      default -> Weights.TENSION;
    };
  }

  private boolean isMinorHome(Scale scale) {
    return setting.homes().stream()
        .map(ImpliedKey::key)
        .anyMatch(key -> key.isMinor() && key.tonic().soundsLike(scale.tonic()));
  }

  /** How little the scale's notes rub against the chord. */
  private double clashPart(Scale scale) {
    double rubs = scale.notes().stream().mapToDouble(note -> rub(scale, note)).sum();
    return Math.max(0, 1 - rubs / Weights.UNBEARABLE);
  }

  /** How much a note of a scale rubs against the chord, 0 to 1. */
  double rub(Scale scale, NoteName note) {
    if (sounding.contains(note.chroma())) {
      return 0;
    }
    double rub = 0;
    for (int tone : sounding) {
      int above = Math.floorMod(note.chroma() - tone, 12);
      rub = Math.max(rub, above == 1 ? Weights.ABOVE : above == 11 ? Weights.BELOW : 0);
    }
    double left = overDominant ? Weights.OVER_DOMINANT : isKeysOwn(note) ? Weights.KEYS_OWN : 1;
    return rub * Math.min(left, isBlueNote(scale, note) ? Weights.BLUE_NOTE : 1);
  }

  /** A note of the strongest home's own scale, unless a neighbouring chord has it altered. */
  private boolean isKeysOwn(NoteName note) {
    Set<Integer> near = setting.neighbours();
    Scale own = setting.homes().get(0).key().heptatonic();
    boolean altered =
        !near.contains(note.chroma())
            && IntStream.of(1, 11)
                .map(step -> (note.chroma() + step) % 12)
                .anyMatch(beside -> near.contains(beside) && own.degreeOf(beside).isEmpty());
    return !altered && own.contains(note);
  }

  /**
   * The flat third and seventh of a minor or blues home, and its flat fifth where the scale takes
   * it on the way between the fourth and the fifth.
   */
  private boolean isBlueNote(Scale scale, NoteName note) {
    return setting.homes().stream()
        .filter(home -> home.key().isMinor())
        .map(home -> home.key().tonic())
        .anyMatch(
            tonic -> {
              int degree = Math.floorMod(note.chroma() - tonic.chroma(), 12);
              boolean passing =
                  scale.degreeOf((tonic.chroma() + 5) % 12).isPresent()
                      && scale.degreeOf((tonic.chroma() + 7) % 12).isPresent();
              return degree == 3 || degree == 10 || (degree == 6 && passing);
            });
  }

  /** How far the scale's notes are the keys' own, bent to the chord. */
  private double keyPart(Scale scale) {
    double part = 0;
    for (int i = 0; i < fields.size(); i++) {
      Set<Integer> field = fields.get(i);
      double foreign = scale.notes().stream().mapToDouble(n -> 1 - inKey(field, scale, n)).sum();
      part += setting.homes().get(i).weight() * Math.max(0, 1 - foreign / Weights.UNBEARABLE);
    }
    return part;
  }

  private double inKey(Set<Integer> field, Scale scale, NoteName note) {
    if (field.contains(note.chroma())) {
      return 1;
    }
    boolean near = setting.neighbours().contains(note.chroma());
    double own = near ? Weights.NEIGHBOUR : isBlueNote(scale, note) ? Weights.BLUE_NOTE : 0;
    return isOpened(note) ? Math.max(own, Weights.ALTERED_TOO) : own;
  }

  /** An altered fifth or ninth of a dominant seventh whose symbol has another of them. */
  private boolean isOpened(NoteName note) {
    return setting
        .chord()
        .filter(c -> c.quality().has(4) && c.quality().has(10))
        .filter(c -> c.quality().intervals().stream().anyMatch(ScaleChoice::isAltered))
        .filter(c -> ALTERED.contains(Math.floorMod(note.chroma() - c.root().chroma(), 12)))
        .isPresent();
  }

  /** Not so the sharp eleventh, which goes with a natural ninth and fifth. */
  private static boolean isAltered(Interval interval) {
    return interval.number() != 11 && ALTERED.contains(interval.semitones() % 12);
  }

  /** Whether the scale is named from a home's tonic or from the chord's root. */
  private double tonicPart(Scale scale) {
    double part =
        setting.homes().stream()
            .filter(home -> home.key().tonic().soundsLike(scale.tonic()))
            .mapToDouble(ImpliedKey::weight)
            .sum();
    return Math.max(part, isOnRoot(scale) ? Weights.CHORD_ROOT : 0);
  }

  /** How close together the notes lie on the circle of fifths: five neighbours are easiest. */
  private static double easePart(Scale scale) {
    return nearness(scale) * (row(scale) == ROWS.size() - 1 ? Weights.RARE : 1);
  }

  private static double nearness(Scale scale) {
    Set<Integer> onCircle = new java.util.TreeSet<>();
    scale.notes().forEach(n -> onCircle.add(Math.floorMod(7 * n.chroma(), 12)));
    int widestGap = 0;
    for (int place : onCircle) {
      int gap = 1;
      while (!onCircle.contains((place + gap) % 12)) {
        gap++;
      }
      widestGap = Math.max(widestGap, gap);
    }
    int spanned = 12 - widestGap;
    return 1 - Weights.FIFTH_SPANNED * Math.max(0, spanned - 4);
  }
}
