package hingetone.ground;

import hingetone.theory.Chord;
import hingetone.theory.Interval;
import hingetone.theory.NoteName;
import hingetone.theory.Scale;
import hingetone.theory.ScaleType;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Ranks scales for a chord in its place. There is one formula for every scale and every chord: five
 * parts between 0 and 1, weighed by {@link Weights} (explained in {@code src/docs/ground.md}).
 */
final class ScaleChoice {
  /** What is offered: the scales that players of these styles practise. */
  private static final List<ScaleType> KINDS =
      Stream.of(
              "minor pentatonic, major pentatonic, blues, major blues",
              "major, dorian, phrygian, lydian, mixolydian, minor, locrian",
              "harmonic minor, locrian #6, major augmented, dorian #4, phrygian dominant",
              "lydian #2, ultralocrian",
              "melodic minor, dorian b2, lydian augmented, lydian dominant, mixolydian b6",
              "locrian #2, altered",
              "diminished, half-whole diminished, whole tone")
          .flatMap(row -> Stream.of(row.split(", ")))
          .map(ScaleType::named)
          .toList();

  private final Setting setting;
  private final List<NoteName> chordTones;
  private final Set<Integer> sounding;
  private final boolean overDominant;
  private final List<Set<Integer>> fields;

  private ScaleChoice(Setting setting) {
    this.setting = setting;
    this.chordTones = setting.chord().map(Chord::notes).orElse(List.of());
    this.sounding = Home.chromas(chordTones.stream());
    this.overDominant =
        setting.chord().map(Chord::quality).filter(q -> q.has(4) && q.has(10)).isPresent();
    this.fields = setting.homes().stream().map(h -> Home.field(h.key(), chordTones)).toList();
  }

  /** The scales that fit, the best first; of scales with the same notes only the best. */
  static List<FittingScale> rank(Setting setting) {
    ScaleChoice choice = new ScaleChoice(setting);
    Map<Set<Integer>, FittingScale> best = new HashMap<>();
    for (Scale scale : choice.candidates()) {
      FittingScale fitting =
          new FittingScale(scale, choice.fit(scale), Reason.of(setting, scale, choice));
      best.merge(
          Home.chromas(scale.notes().stream()), fitting, (a, b) -> a.fit() >= b.fit() ? a : b);
    }
    List<FittingScale> sorted =
        best.values().stream()
            .sorted(
                Comparator.comparingDouble(FittingScale::fit)
                    .reversed()
                    .thenComparing(f -> f.scale().toString()))
            .limit(Weights.MOST_OFFERED)
            .toList();
    long offered = sorted.stream().filter(f -> f.fit() >= Weights.OFFERED).count();
    return sorted.subList(0, (int) Math.max(1, offered));
  }

  /** Every kind of scale on every home's tonic and on the chord's root. */
  private List<Scale> candidates() {
    Set<NoteName> tonics = new LinkedHashSet<>();
    setting.homes().forEach(home -> tonics.add(home.key().tonic()));
    setting.chord().ifPresent(chord -> tonics.add(chord.root()));
    List<Scale> scales = new ArrayList<>();
    tonics.forEach(t -> KINDS.forEach(type -> scales.add(new Scale(t, type))));
    return scales;
  }

  double fit(Scale scale) {
    double fit =
        Weights.CHORD * chordPart(scale)
            + Weights.CLASH * clashPart(scale)
            + Weights.KEY * keyPart(scale)
            + Weights.TONIC * tonicPart(scale)
            + Weights.EASE * easePart(scale);
    return Math.round(fit * 1000) / 1000.0;
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
    return had / all;
  }

  private double having(Scale scale, Interval interval) {
    NoteName root = setting.chord().get().root();
    if (scale.contains(root.plus(interval))) {
      return 1;
    }
    boolean blueThird =
        interval.equals(Interval.MAJOR_THIRD)
            && scale.type().intervals().size() <= 6
            && scale.contains(root.plus(Interval.MINOR_THIRD));
    return blueThird ? Weights.BLUE_THIRD : 0;
  }

  private static double chordToneWeight(Interval interval) {
    if (interval.equals(Interval.UNISON)) {
      return Weights.ROOT;
    }
    return switch (interval.number()) {
      case 3 -> Weights.THIRD;
      case 5 -> interval.alteration() == 0 ? Weights.FIFTH : Weights.TENSION;
      case 7 -> Weights.SEVENTH;
      default -> Weights.TENSION;
    };
  }

  /** How little the scale's notes rub against the chord. */
  private double clashPart(Scale scale) {
    double rubs = scale.notes().stream().mapToDouble(this::rub).sum();
    return Math.max(0, 1 - rubs / Weights.UNBEARABLE);
  }

  /** How much a note rubs against the chord, 0 to 1. */
  double rub(NoteName note) {
    if (sounding.contains(note.chroma())) {
      return 0;
    }
    double rub = 0;
    for (int tone : sounding) {
      int above = Math.floorMod(note.chroma() - tone, 12);
      rub = Math.max(rub, above == 1 ? Weights.ABOVE : above == 11 ? Weights.BELOW : 0);
    }
    double tolerated = overDominant ? Weights.OVER_DOMINANT : 1;
    return rub * Math.min(tolerated, isBlueNote(note) ? Weights.BLUE_NOTE : 1);
  }

  /** The flat third, fifth and seventh of a home that is heard as minor or blues. */
  private boolean isBlueNote(NoteName note) {
    return setting.homes().stream()
        .filter(home -> home.key().isMinor())
        .map(home -> Math.floorMod(note.chroma() - home.key().tonic().chroma(), 12))
        .anyMatch(degree -> degree == 3 || degree == 6 || degree == 10);
  }

  /** How far the scale's notes are the keys' own, bent to the chord. */
  private double keyPart(Scale scale) {
    double part = 0;
    for (int i = 0; i < fields.size(); i++) {
      Set<Integer> field = fields.get(i);
      double inside =
          scale.notes().stream().mapToDouble(n -> inKey(field, n)).average().orElseThrow();
      part += setting.homes().get(i).weight() * inside;
    }
    return part;
  }

  private double inKey(Set<Integer> field, NoteName note) {
    if (field.contains(note.chroma())) {
      return 1;
    }
    return setting.neighbours().contains(note.chroma()) ? Weights.NEIGHBOUR : 0;
  }

  /** Whether the scale is named from a home's tonic or from the chord's root. */
  private double tonicPart(Scale scale) {
    double part =
        setting.homes().stream()
            .filter(home -> home.key().tonic().soundsLike(scale.tonic()))
            .mapToDouble(Home::weight)
            .sum();
    boolean onRoot = setting.chord().filter(c -> c.root().soundsLike(scale.tonic())).isPresent();
    return Math.max(part, onRoot ? Weights.CHORD_ROOT : 0);
  }

  /** How close together the notes lie on the circle of fifths: five neighbours are easiest. */
  private static double easePart(Scale scale) {
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
