package hingetone.chart;

import hingetone.score.Fullness;
import hingetone.theory.Chord;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Tempo;
import java.util.List;
import java.util.Optional;

/**
 * One section of a chart, with everything that holds in it filled in from the chart's own values.
 *
 * @param name its name
 * @param key its sounding key
 * @param meter its meter
 * @param tempo its tempo
 * @param groove the name or path of its groove; empty for the plain one
 * @param band how full the band plays
 * @param swing the place of the off-beat in the beat as a percentage, 50 to 75, where stated
 * @param bars its bars, repeats written out, at least one
 * @param phrases the phrases as stated, which repeat through the section; empty where not stated
 * @param pickup how early a statement may start before its landing, in beats of the meter
 * @param leave the ways over into the next key, one for each time it is left in turn; empty where
 *     not stated
 * @param riff the player's own bass or chord line, where there is one
 */
public record Section(
    String name,
    Key key,
    Meter meter,
    Tempo tempo,
    Optional<String> groove,
    Fullness band,
    Optional<Integer> swing,
    List<ChartBar> bars,
    List<PhraseTurn> phrases,
    Beats pickup,
    List<Leave> leave,
    Optional<Riff> riff) {
  public Section {
    bars = List.copyOf(bars);
    phrases = List.copyOf(phrases);
    leave = List.copyOf(leave);
    if (bars.isEmpty()) {
      throw new IllegalArgumentException("a section has at least one bar");
    }
  }

  /** Whether it stands on a riff of its own or on power chords. */
  public boolean isOverRiff() {
    return riff.isPresent()
        || bars.stream()
            .flatMap(bar -> bar.chords().stream())
            .flatMap(slot -> slot.chord().stream())
            .anyMatch(chord -> chord.quality().isPowerChord());
  }

  /** The chord that holds at a place, in quarter notes from the section's start; empty for none. */
  Optional<Chord> chordAt(Beats place) {
    Beats inBar = place.modulo(meter.barLength());
    int bar = (int) place.dividedBy(meter.barLength()).floor();
    Beats beat = meter.toBeats(inBar).plus(Beats.ONE);
    return bars.get(bar).chords().stream()
        .filter(slot -> !slot.beat().isAfter(beat))
        .reduce((earlier, later) -> later)
        .flatMap(ChartBar.Slot::chord);
  }

  /** How long it is, in quarter notes. */
  Beats length() {
    return meter.barLength().times(bars.size());
  }

  /** The section a number of semitones up or down, in a key that lies so: chords and riff too. */
  Section shifted(int semitones, Key moved) {
    List<ChartBar> movedBars = bars.stream().map(bar -> bar.moved(key, moved)).toList();
    Optional<Riff> movedRiff = riff.map(r -> r.shifted(semitones));
    return new Section(
        name, moved, meter, tempo, groove, band, swing, movedBars, phrases, pickup, leave,
        movedRiff);
  }

  Section withTempo(Tempo newTempo) {
    return new Section(
        name, key, meter, newTempo, groove, band, swing, bars, phrases, pickup, leave, riff);
  }

  Section withGroove(String newGroove) {
    Optional<String> named = Optional.of(newGroove);
    return new Section(
        name, key, meter, tempo, named, band, swing, bars, phrases, pickup, leave, riff);
  }

  Section withRiff(Riff newRiff) {
    Optional<Riff> own = Optional.of(newRiff);
    return new Section(
        name, key, meter, tempo, groove, band, swing, bars, phrases, pickup, leave, own);
  }
}
