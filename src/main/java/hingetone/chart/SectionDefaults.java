package hingetone.chart;

import hingetone.score.Fullness;
import hingetone.text.Choice;
import hingetone.text.reading.Fields;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Tempo;
import java.util.Optional;

/**
 * What may be said for the whole chart and for a section.
 *
 * @param meter the meter; empty where it could not be read, so that bars are not counted by it
 */
record SectionDefaults(
    Optional<Meter> meter,
    Tempo tempo,
    Optional<String> groove,
    Fullness band,
    Optional<Integer> swing,
    Beats pickup) {
  private static final SectionDefaults USUAL =
      new SectionDefaults(
          Optional.of(Meter.COMMON),
          Tempo.of(100),
          Optional.empty(),
          Fullness.NORMAL,
          Optional.empty(),
          Beats.of(3, 2));

  /** What the top of a chart says, the rest as usual. */
  static SectionDefaults of(Fields fields) {
    return USUAL.overriddenBy(fields);
  }

  /** These values, with what {@code fields} say in their place. */
  SectionDefaults overriddenBy(Fields fields) {
    return new SectionDefaults(
        meter(fields),
        fields.read(
            ChartKey.TEMPO,
            Tempo::parse,
            tempo,
            ValueGuess::number,
            "I expected a number from " + Tempo.SLOWEST + " to " + Tempo.FASTEST + ": tempo: 112."),
        fields.read(
            ChartKey.GROOVE,
            text -> Optional.of(Optional.of(text)),
            groove,
            "I expected a groove's name, or the path of its file: groove: gravel-road."),
        fields.read(
            ChartKey.BAND,
            text -> Choice.named(Fullness.values(), text),
            band,
            ValueGuess.oneOf(Choice.words(Fullness.values())),
            "I expected light, normal or full."),
        fields.read(
            ChartKey.SWING,
            text -> Values.swing(text).map(Optional::of),
            swing,
            ValueGuess::number,
            "I expected a percentage from 50% (straight) to 75%: swing: 62%."),
        fields.read(
            ChartKey.PICKUP,
            Values::pickup,
            pickup,
            ValueGuess::beats,
            "I expected beats, 0 to 8, as a whole number or a fraction: pickup: 3/2."));
  }

  private Optional<Meter> meter(Fields fields) {
    Optional<Meter> plain =
        fields.read(
            ChartKey.METER,
            text -> Meter.parse(text).map(Optional::of),
            fields.has(ChartKey.METER) ? Optional.empty() : meter,
            ValueGuess::meter,
            "I expected a meter such as 4/4, 3/4, 7/8 or 12/8.");
    if (!fields.has(ChartKey.GROUPING) || plain.isEmpty()) {
      return plain;
    }
    int beats = plain.get().beatsPerBar();
    return fields.read(
        ChartKey.GROUPING,
        text -> Values.grouping(text, plain.get()).map(Optional::of),
        plain,
        "I expected groups of beats that add up to the "
            + beats
            + " beats of a bar of "
            + plain.get()
            + ": grouping: "
            + String.join("+", plain.get().grouping().stream().map(String::valueOf).toList())
            + ".");
  }
}
