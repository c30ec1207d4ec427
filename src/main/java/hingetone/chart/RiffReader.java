package hingetone.chart;

import hingetone.notation.NoteText;
import hingetone.text.reading.Fields;
import hingetone.text.reading.Problems;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Span;
import hingetone.text.reading.Yaml;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.List;
import java.util.Optional;

/** Reads a section's riff: its bass or chord line as note text. */
final class RiffReader {
  static final String EXPECTED =
      "I expected a bass or a chord line as note text:\n"
          + "  riff:\n    bass: G2q G2i Bb2i C3q G2q";

  private final Problems problems;
  private final Optional<Meter> meter;
  private final int bars;

  /**
   * A reader for one section.
   *
   * @param meter the section's meter, where it could be read
   * @param bars how many bars the section has; 0 where they could not be read
   */
  RiffReader(Problems problems, Optional<Meter> meter, int bars) {
    this.problems = problems;
    this.meter = meter;
    this.bars = bars;
  }

  /** The riff, without the lines that have a problem; empty when the section has none. */
  Optional<Riff> read(Fields section) {
    Optional<Yaml.Mapping> mapping = section.mapping(ChartKey.RIFF, EXPECTED);
    if (mapping.isEmpty()) {
      return Optional.empty();
    }
    Fields fields = new Fields(problems, mapping.get(), ChartKey.table(ChartKey.Place.RIFF));
    Optional<NoteText> bass = line(fields, ChartKey.BASS);
    Optional<NoteText> chords = line(fields, ChartKey.CHORDS);
    boolean lines = fields.has(ChartKey.BASS) || fields.has(ChartKey.CHORDS);
    if (!lines && !problems.anyIn(mapping.get().span())) {
      problems.add(section.place(ChartKey.RIFF), "a riff with no line in it", EXPECTED);
    }
    return Optional.of(
        new Riff(
            bass.map(NoteText::notes).orElse(List.of()),
            bass.map(NoteText::length).orElse(Beats.ZERO),
            chords.map(NoteText::notes).orElse(List.of()),
            chords.map(NoteText::length).orElse(Beats.ZERO)));
  }

  private Optional<NoteText> line(Fields fields, ChartKey key) {
    Optional<Span> place = fields.text(key, EXPECTED).map(Yaml.Text::inner);
    if (place.isEmpty()) {
      return Optional.empty();
    }
    Reading<NoteText> reading = NoteText.read(problems.source(), place.get());
    problems.addAll(reading.problems());
    return reading.value().filter(line -> fits(line.length(), fields.place(key)));
  }

  /** Whether a line is whole bars of its section, and no more than that has. */
  private boolean fits(Beats length, Span place) {
    if (meter.isEmpty()) {
      return false;
    }
    Beats bar = meter.get().barLength();
    Beats over = length.modulo(bar);
    boolean whole = over.isZero();
    boolean longer = bars > 0 && length.isAfter(bar.times(bars));
    if (!whole) {
      problems.add(
          place,
          "a riff that is not whole bars",
          "A bar of "
              + meter.get()
              + " has "
              + quarters(bar)
              + ", and in the last one "
              + bar.minus(over)
              + " is missing. A rest, such as Rq, fills it.");
    } else if (longer) {
      problems.add(
          place,
          "a riff longer than its section",
          "It has " + length.dividedBy(bar) + " bars, the section " + bars + ".");
    }
    return whole && !longer;
  }

  private static String quarters(Beats length) {
    return length + (length.isAfter(Beats.ONE) ? " quarter notes" : " quarter note");
  }
}
