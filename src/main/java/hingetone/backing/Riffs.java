package hingetone.backing;

import hingetone.chart.Riff;
import hingetone.score.Note;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.List;

/** Plays the player's own riffs, repeated through their sections. */
final class Riffs {
  /** A riff note of the plain loudness is played like an ordinary stroke. */
  private static final Beats LOUDNESS = Beats.of(94, 64);

  private Riffs() {}

  /** Whether the bass of a bar is the player's own. */
  static boolean hasBass(BarPlan plan) {
    return plan.bar().section().riff().filter(riff -> !riff.bass().isEmpty()).isPresent();
  }

  /** Whether the chord part of a bar is the player's own. */
  static boolean hasChords(BarPlan plan) {
    return plan.bar().section().riff().filter(riff -> !riff.chords().isEmpty()).isPresent();
  }

  /** The bass lines of the lap's own riffs, swing included. */
  static List<Note> bass(LapPlan lap) {
    List<Note> notes = new ArrayList<>();
    for (BarPlan plan : lap.plans()) {
      if (hasBass(plan)) {
        Riff riff = plan.bar().section().riff().orElseThrow();
        notes.addAll(bar(riff.bass(), riff.bassLength(), plan, lap));
      }
    }
    return notes;
  }

  /** The chord lines of the lap's own riffs, swing included. */
  static List<Note> chords(LapPlan lap) {
    List<Note> notes = new ArrayList<>();
    for (BarPlan plan : lap.plans()) {
      if (hasChords(plan)) {
        Riff riff = plan.bar().section().riff().orElseThrow();
        notes.addAll(bar(riff.chords(), riff.chordsLength(), plan, lap));
      }
    }
    return notes;
  }

  /** The riff's notes that start in a bar; one that runs past the section's end is cut there. */
  private static List<Note> bar(List<Note> riff, Beats length, BarPlan plan, LapPlan lap) {
    Beats barLength = plan.bar().meter().barLength();
    Beats inRiff = barLength.times(plan.bar().inSection() - 1L).modulo(length);
    int barsLeft = plan.bar().section().bars().size() - plan.bar().inSection() + 1;
    Beats sectionEnd = plan.bar().start().plus(barLength.times(barsLeft));
    List<Note> notes = new ArrayList<>();
    for (Note note : riff) {
      Beats inBar = note.onset().minus(inRiff);
      if (!inBar.isNegative() && inBar.isBefore(barLength)) {
        Beats start = plan.bar().start().plus(inBar);
        Beats end = start.plus(note.length()).min(sectionEnd);
        Beats played = lap.played(start);
        int velocity = (int) Math.min(127, LOUDNESS.times(note.velocity()).toUnits(1));
        notes.add(
            new Note(
                played,
                end.equals(lap.length()) ? end.minus(played) : lap.played(end).minus(played),
                note.key(),
                plan.velocity(velocity)));
      }
    }
    return notes;
  }
}
