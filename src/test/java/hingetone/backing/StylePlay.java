package hingetone.backing;

import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import hingetone.score.Fullness;
import hingetone.score.GeneralMidi;
import hingetone.score.Note;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a groove plays over the demo charts, exactly in place: its plain bars, those with a fill, a
 * stop, a turnaround or the start of a section aside.
 *
 * <p>A lane is {@code bass}, {@code chords} or percussion by its General MIDI name, several with a
 * {@code /} between. Places are beats of the meter from 1, as drawn before the swing: {@code "2
 * 4"}, {@code "1+1/2"}. Ghost notes, dead notes and muted strokes are left out.
 *
 * @param groove the groove
 * @param bars what is played of it
 */
record StylePlay(Groove groove, List<Bar> bars) {
  private static final int LAPS = 4;

  /** Softer than any stroke that is meant to carry. */
  private static final int GHOST = 50;

  private static final int MUTED = 60;

  /** A bar with what is struck in it. */
  record Bar(BarPlan plan, List<Note> drums, List<Note> bass, List<Note> chords, Chords harmony) {
    private List<Note> lane(String name) {
      return switch (name) {
        case "bass" -> bass;
        case "chords" -> chords;
        default -> {
          Set<Integer> keys =
              Arrays.stream(name.split("/"))
                  .map(one -> GeneralMidi.percussionKey(one).orElseThrow())
                  .collect(Collectors.toSet());
          yield drums.stream().filter(note -> keys.contains(note.key())).toList();
        }
      };
    }

    private boolean strikes(String lane, String place) {
      Beats onset = onset(place);
      return lane(lane).stream().anyMatch(note -> note.onset().equals(onset));
    }

    private Beats onset(String place) {
      Beats beat = Beats.ZERO;
      for (String part : place.split("\\+")) {
        beat = beat.plus(Beats.parse(part).orElseThrow());
      }
      return plan.played(plan.bar().meter().toQuarters(beat.minus(Beats.ONE)));
    }
  }

  /** The chords of a lap, by which a note is known as a degree. */
  record Chords(ChordChanges changes) {
    private int semitonesAboveRoot(Note note) {
      int root = changes.at(note.onset()).chord().orElseThrow().lowest().chroma();
      return Math.floorMod(note.key() - root, 12);
    }
  }

  static StylePlay of(Groove groove) {
    return of(groove, LAPS);
  }

  static StylePlay of(Groove groove, int laps) {
    List<Meter> meters = groove.meters().isEmpty() ? List.of(Meter.COMMON) : groove.meters();
    List<Bar> bars = new ArrayList<>();
    for (String name : BandMeasure.CHARTS) {
      for (Meter meter : meters) {
        Backing backing =
            Backing.of(BandMeasure.chart(name, groove.name(), meter), Grooves.builtIn()).exact();
        for (int lap = 1; lap <= laps; lap++) {
          Score score = backing.lap(lap);
          Chords chords = new Chords(ChordChanges.of(backing.form()));
          backing.plan(lap).stream()
              .filter(StylePlay::isPlain)
              .map(plan -> bar(plan, score, chords))
              .forEach(bars::add);
        }
      }
    }
    return new StylePlay(groove, bars);
  }

  private static boolean isPlain(BarPlan plan) {
    boolean special = plan.stop() || plan.turnaround() || plan.bar().isFirstOfSection();
    return plan.fill().isEmpty() && !special;
  }

  private static Bar bar(BarPlan plan, Score score, Chords chords) {
    return new Bar(
        plan,
        notes(plan, score, Role.DRUMS, GHOST),
        notes(plan, score, Role.BASS, GHOST),
        notes(plan, score, Role.CHORDS, MUTED),
        chords);
  }

  private static List<Note> notes(BarPlan plan, Score score, Role role, int softest) {
    return score.part(role).orElseThrow().notes().stream()
        .filter(n -> !n.onset().isBefore(plan.bar().start()))
        .filter(n -> n.onset().isBefore(plan.bar().end()) && n.velocity() >= softest)
        .toList();
  }

  private StylePlay where(Predicate<BarPlan> which) {
    return new StylePlay(groove, bars.stream().filter(bar -> which.test(bar.plan())).toList());
  }

  /** The bars in one fullness. */
  StylePlay in(Fullness band) {
    return where(plan -> plan.band() == band);
  }

  /** The bars that are not light. */
  StylePlay fuller() {
    return where(plan -> plan.band() != Fullness.LIGHT);
  }

  /** The bars in one meter. */
  StylePlay in(String meter) {
    return where(plan -> plan.bar().meter().toString().equals(meter));
  }

  /** Bars of a hundred in which a lane strikes at each of the places. */
  double all(String lane, String places) {
    return percent(bar -> places(places).allMatch(place -> bar.strikes(lane, place)));
  }

  /** Bars of a hundred in which a lane strikes at any of the places. */
  double any(String lane, String places) {
    return percent(bar -> places(places).anyMatch(place -> bar.strikes(lane, place)));
  }

  /** Strokes of a hundred of a lane that fall on the places. */
  double share(String lane, String places) {
    long strokes = bars.stream().mapToLong(bar -> onsets(bar, lane)).sum();
    long there =
        bars.stream()
            .mapToLong(bar -> places(places).filter(place -> bar.strikes(lane, place)).count())
            .sum();
    return BandMeasure.percent((int) there, (int) strokes);
  }

  /** Notes of a hundred of the bass that lie so many semitones above their chord's root. */
  double degrees(Integer... semitones) {
    List<Integer> wanted = List.of(semitones);
    List<Boolean> there =
        bars.stream()
            .flatMap(bar -> bar.bass().stream().map(bar.harmony()::semitonesAboveRoot))
            .map(wanted::contains)
            .toList();
    return BandMeasure.percent((int) there.stream().filter(is -> is).count(), there.size());
  }

  /** Bars of a hundred in which a lane has a note so many semitones above its chord's root. */
  double has(String lane, int semitones) {
    return percent(
        bar ->
            bar.lane(lane).stream()
                .anyMatch(note -> bar.harmony().semitonesAboveRoot(note) == semitones));
  }

  /** Strokes of a hundred of a lane with which another strikes too. */
  double together(String lane, String other) {
    List<Boolean> there =
        bars.stream()
            .flatMap(
                bar ->
                    bar.lane(lane).stream()
                        .map(
                            note ->
                                bar.lane(other).stream()
                                    .anyMatch(o -> o.onset().equals(note.onset()))))
            .toList();
    return BandMeasure.percent((int) there.stream().filter(is -> is).count(), there.size());
  }

  private static long onsets(Bar bar, String lane) {
    return bar.lane(lane).stream().map(Note::onset).distinct().count();
  }

  private static Stream<String> places(String places) {
    return Arrays.stream(places.split(" "));
  }

  private double percent(Predicate<Bar> which) {
    return BandMeasure.percent((int) bars.stream().filter(which).count(), bars.size());
  }
}
