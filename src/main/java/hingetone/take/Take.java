package hingetone.take;

import java.util.ArrayList;
import java.util.List;

/**
 * What was played, from the first beat told to the last: the events of a journal put together.
 *
 * @param bars the bars as they were played
 * @param notes the notes, in order of their strokes
 * @param nanos how long it lasts
 */
public record Take(PlayedBars bars, List<PlayedNote> notes, long nanos) {
  public Take {
    notes = List.copyOf(notes);
  }

  /** Puts events together; notes that still sound at the last of them end there. */
  public static Take of(List<TakeEvent> events) {
    PlayedBars bars = new PlayedBars();
    PlayedNotes playing = new PlayedNotes();
    List<PlayedNote> notes = new ArrayList<>();
    long first = Long.MAX_VALUE;
    long last = Long.MIN_VALUE;
    for (TakeEvent event : events) {
      if (event instanceof TakeEvent.Bar bar) {
        bars.bar(bar.number(), bar.keyShift());
      } else if (event instanceof TakeEvent.Beat beat) {
        if (!bars.bars().isEmpty()) {
          bars.beat(beat.nanos(), beat.beat());
          first = Math.min(first, beat.nanos());
          last = Math.max(last, beat.nanos());
        }
      } else if (event instanceof TakeEvent.Pause) {
        bars.pause();
      } else if (event instanceof TakeEvent.Sent sent) {
        notes.addAll(playing.take(sent.message()));
        last = Math.max(last, sent.message().nanos());
      } else if (event instanceof TakeEvent.Lost lost) {
        notes.addAll(playing.lost(lost.nanos()));
      }
    }
    notes.addAll(playing.lost(last));
    notes.sort((a, b) -> Long.compare(a.on(), b.on()));
    return new Take(bars, notes, Math.max(0, last - first));
  }
}
