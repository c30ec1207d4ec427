package hingetone.ground.scales;

import hingetone.theory.Chord;
import hingetone.theory.NoteName;
import hingetone.theory.Scale;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Says in a sentence why a scale fits: what it has of the chord, what colours, what clashes. */
final class ScaleReason {
  /** From this much rubbing on a note wants to move on, and from this much it only passes. */
  private static final double TENSION = 0.3;

  private static final double CLASH = 0.55;

  private final ChordContext setting;
  private final Scale scale;
  private final ScaleChoice choice;

  private ScaleReason(ChordContext setting, Scale scale, ScaleChoice choice) {
    this.setting = setting;
    this.scale = scale;
    this.choice = choice;
  }

  /**
   * The reason, spelled for people: {@code On the tonic: has C Eb G Bb of Cm7, F (11) is colour.}
   */
  static String of(ChordContext setting, Scale scale, ScaleChoice choice) {
    ScaleReason reason = new ScaleReason(setting, scale, choice);
    return setting
        .chord()
        .map(reason::overChord)
        .orElseGet(() -> reason.relation() + ": no chord to mind.");
  }

  private String overChord(Chord chord) {
    List<String> parts = new ArrayList<>();
    List<NoteName> had = chord.notes().stream().flatMap(n -> asInScale(n).stream()).toList();
    parts.add(
        had.isEmpty() ? "has no note of " + chord : "has " + names(had) + " of " + chord.symbol());
    colours(chord).ifPresent(parts::add);
    tensions(chord).ifPresent(parts::add);
    clashes(chord).ifPresent(parts::add);
    parts.addAll(BluesReason.of(setting.homes().get(0).key(), chord, scale));
    return relation() + otherName(chord) + ": " + String.join(", ", parts) + ".";
  }

  /**
   * The name that the scale has from the chord's root or, named from there itself, the one of its
   * parent: the commonest scale with its notes on a tonic that is at home.
   */
  private String otherName(Chord chord) {
    Stream<NoteName> tonics =
        chord.root().soundsLike(scale.tonic())
            ? setting.homes().stream().map(home -> home.key().tonic())
            : Stream.of(chord.root());
    return tonics
        .filter(tonic -> !tonic.soundsLike(scale.tonic()))
        .flatMap(tonic -> ScaleChoice.from(tonic, scale).stream())
        .findFirst()
        .map(other -> ", the notes of " + other)
        .orElse("");
  }

  /** A note as the scale spells it, so that a sentence has one name for it. */
  private Optional<NoteName> asInScale(NoteName note) {
    return scale.notes().stream().filter(note::soundsLike).findFirst();
  }

  private Optional<String> colours(Chord chord) {
    return list(chord, 0, TENSION, " is colour", " are colour");
  }

  private Optional<String> tensions(Chord chord) {
    return list(chord, TENSION, CLASH, " is tension to resolve", " are tension to resolve");
  }

  private Optional<String> clashes(Chord chord) {
    return list(
        chord, CLASH, Double.MAX_VALUE, " clashes: pass through it", " clash: pass through");
  }

  private List<NoteName> added(Chord chord) {
    return scale.notes().stream().filter(n -> chord.degreeOf(n.chroma()).isEmpty()).toList();
  }

  /** The added notes that rub from one degree up to another, and what is said of one or more. */
  private Optional<String> list(Chord chord, double from, double to, String one, String more) {
    List<NoteName> notes =
        added(chord).stream()
            .filter(n -> choice.rub(scale, n) >= from && choice.rub(scale, n) < to)
            .toList();
    return notes.isEmpty()
        ? Optional.empty()
        : Optional.of(
            notes.stream()
                    .map(n -> read(n) + " (" + DegreeNames.over(chord, n) + ")")
                    .collect(Collectors.joining(" "))
                + (notes.size() == 1 ? one : more));
  }

  private String names(List<NoteName> notes) {
    return notes.stream().map(n -> read(n)).collect(Collectors.joining(" "));
  }

  private String read(NoteName note) {
    return setting.homes().get(0).key().readable(note).toString();
  }

  /** Where the scale's tonic comes from. */
  private String relation() {
    if (choice.isUsual(scale)) {
      return "Over " + setting.function().orElseThrow().words();
    }
    for (ImpliedKey home : setting.homes()) {
      if (home.key().tonic().soundsLike(scale.tonic())) {
        return switch (home.role()) {
          case OWN, BORROWED -> "On the tonic";
          case PREPARING -> "On " + scale.tonic() + ", where the next chord leads";
          case DOMINANT -> "On " + scale.tonic() + ", where the chord resolves";
          case LEADING -> "On " + scale.tonic() + ", the tonic that comes next";
          case RIFF -> "On the riff's own root";
        };
      }
    }
    return "On the chord's root";
  }
}
