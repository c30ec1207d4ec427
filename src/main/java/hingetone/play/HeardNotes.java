package hingetone.play;

import hingetone.chart.Form;
import hingetone.midi.Received;
import hingetone.sequencer.SequencerEvent;
import hingetone.sequencer.Status.Motion;
import hingetone.take.PlacedNote;
import hingetone.take.PlayedBars;
import hingetone.take.PlayedBars.Place;
import hingetone.take.PlayedNote;
import hingetone.take.PlayedNotes;
import hingetone.time.Meter;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What a player plays, placed in the bars as they are heard. Not for several threads. */
final class HeardNotes {
  private final Form form;
  private final int keptBars;
  private final PlayedNotes notes = new PlayedNotes();
  private final PlayedBars bars = new PlayedBars();
  private final Deque<PlayedNote> ended = new ArrayDeque<>();

  /**
   * Nothing played yet.
   *
   * @param keptBars what was played longer ago is forgotten
   */
  HeardNotes(Form form, int keptBars) {
    this.form = form;
    this.keptBars = keptBars;
  }

  /** A message of the instrument. */
  void take(Received message) {
    ended.addAll(notes.take(message));
  }

  /**
   * Something that happened to the band or to the instrument.
   *
   * @param now when, on the machine's clock
   */
  void hear(SequencerEvent event, long now) {
    if (event instanceof SequencerEvent.BarLine bar) {
      bars.bar(bar.bar(), bar.keyShift());
    } else if (event instanceof SequencerEvent.Beat beat) {
      bars.beat(beat.nanos(), (int) beat.position().beat().floor());
    } else if (event instanceof SequencerEvent.Changed changed
        && changed.status().motion() == Motion.PAUSED) {
      bars.pause();
    } else if (event instanceof SequencerEvent.Lost) {
      ended.addAll(notes.lost(now));
    }
  }

  /** The notes that sound, as MIDI numbers. */
  Set<Integer> sounding(long now) {
    return notes.sounding(now).stream()
        .map(note -> (int) Math.round(note.last()))
        .collect(Collectors.toSet());
  }

  /** Where in the bars a moment lies; empty where the band does not play. */
  Optional<Place> at(long nanos) {
    return bars.at(nanos);
  }

  /** What was played in this run of bars, up to now. */
  List<PlacedNote> placed(Place here, long now) {
    ended.removeIf(
        note -> bars.at(note.on()).filter(p -> here.index() - p.index() <= keptBars).isEmpty());
    List<PlayedNote> all = new ArrayList<>(ended);
    all.addAll(notes.sounding(now));
    List<PlacedNote> placed = new ArrayList<>();
    for (PlayedNote note : all) {
      Optional<Double> on = quarters(here, note.on());
      Optional<Double> off = quarters(here, note.off());
      if (on.isPresent() && off.isPresent() && off.get() >= on.get()) {
        placed.add(note.placed(on.get(), off.get()));
      }
    }
    return placed;
  }

  /** A moment in quarter notes from bar 1; empty outside the run of bars that leads here. */
  private Optional<Double> quarters(Place here, long nanos) {
    return bars.at(nanos)
        .filter(p -> p.bar().number() - p.index() == here.bar().number() - here.index())
        .map(
            p -> {
              Meter meter = form.bar(p.bar().number()).meter();
              double inBar = (p.beat() - 1) * meter.beatLength().toDouble();
              return form.startOf(p.bar().number()).toDouble() + inBar;
            });
  }
}
