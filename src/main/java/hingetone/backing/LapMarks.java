package hingetone.backing;

import hingetone.chart.Section;
import hingetone.groove.Groove;
import hingetone.score.Mark;
import hingetone.score.Role;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Tempo;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What holds from where in a lap: sections, keys, chords, meters and tempos. */
final class LapMarks {
  private LapMarks() {}

  /** The marks of a lap; each lap states everything anew at its start. */
  static List<Mark> of(LapPlan lap, boolean last) {
    List<Mark> marks = new ArrayList<>();
    Section before = null;
    Groove playedBefore = lap.plans().get(lap.plans().size() - 1).groove();
    for (BarPlan plan : lap.plans()) {
      if (plan.bar().isFirstOfSection()) {
        addSection(marks, before, plan.bar().section(), plan.bar().start());
        addSounds(marks, playedBefore, plan.groove(), plan.bar().start());
        playedBefore = plan.groove();
        before = plan.bar().section();
      }
    }
    lap.harmony()
        .changes()
        .forEach(change -> marks.add(new Mark.OfChord(change.start(), change.chord())));
    if (last) {
      Section home = lap.plans().get(0).bar().section();
      addSection(marks, before, home, lap.length(), "ending");
      addSounds(marks, playedBefore, lap.plans().get(0).groove(), lap.length());
      marks.add(new Mark.OfChord(lap.length(), Optional.of(lap.home())));
    }
    return marks;
  }

  private static void addSection(List<Mark> marks, Section before, Section now, Beats at) {
    addSection(marks, before, now, at, now.name());
  }

  private static void addSounds(List<Mark> marks, Groove before, Groove now, Beats at) {
    for (Role role : List.of(Role.DRUMS, Role.BASS, Role.CHORDS)) {
      if (!before.sound(role).equals(now.sound(role))) {
        marks.add(new Mark.OfSound(at, role, now.sound(role)));
      }
    }
  }

  private static void addSection(
      List<Mark> marks, Section before, Section now, Beats at, String name) {
    marks.add(new Mark.OfSection(at, name));
    Key key = now.key();
    Meter meter = now.meter();
    Tempo tempo = now.tempo();
    if (before == null || !before.key().equals(key)) {
      marks.add(new Mark.OfKey(at, key));
    }
    if (before == null || !before.meter().equals(meter)) {
      marks.add(new Mark.OfMeter(at, meter));
    }
    if (before == null || !before.tempo().equals(tempo)) {
      marks.add(new Mark.OfTempo(at, tempo));
    }
  }
}
