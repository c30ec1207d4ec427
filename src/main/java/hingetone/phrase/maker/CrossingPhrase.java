package hingetone.phrase.maker;

import hingetone.chart.Form.Bar;
import hingetone.chart.Leave;
import hingetone.ground.ways.Crossing;
import hingetone.ground.ways.Hold;
import hingetone.ground.ways.Run;
import hingetone.ground.ways.WayWords;
import hingetone.neck.Spot;
import hingetone.phrase.Tone;
import hingetone.phrase.maker.Melody.Blank;
import hingetone.plan.Prompt;
import hingetone.theory.Pitch;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A way over a crossing's line, as notes of a phrase.
 *
 * @param blanks its notes, the last one sounding on the line or past it
 * @param beside notes struck together with some of them: double stops, and bends over the line
 * @param places where its notes are played
 * @param arrival where it arrives: on the line, or for a hold where it is struck
 * @param slid whether it is a figure slid fret by fret, which keeps its shape at any tempo
 * @param why what it does, as the start of a sentence
 */
record CrossingPhrase(
    List<Blank> blanks,
    List<Tone> beside,
    List<Placed> places,
    Beats arrival,
    boolean slid,
    String why) {
  /** A note of the way and its place on the neck. */
  record Placed(Beats onset, int midi, Spot spot) {}

  private static final Beats EIGHTH = Beats.of(1, 2);

  private static final double STRUCK_SECONDS = 1;
  private static final int MOST_STRUCK = 4;
  private static final double RING_SECONDS = 2;
  private static final int LEAST_RING = 2;
  private static final int MOST_RING = 8;

  Beats start() {
    return blanks.get(0).stroke().onset();
  }

  RhythmNote last() {
    return blanks.get(blanks.size() - 1).stroke();
  }

  /** The way that a prompt asks for; empty where it crosses no line, or nothing was found. */
  static Optional<CrossingPhrase> of(PhraseBuilder bench, PhraseTask task) {
    if (task.prompt().crossing().isEmpty()) {
      return Optional.empty();
    }
    Prompt prompt = task.prompt();
    Crossing crossing = bench.ground().crossingOf(prompt.landOn());
    Beats at = bench.harmony().form().startOf(crossing.atBar());
    Beats line = at.minus(task.space().landing());
    return prompt.crossing().get() == Leave.HOLD
        ? hold(bench, task, crossing, line)
        : run(bench, task, crossing, line);
  }

  /**
   * The first hold: struck about a second before the line, one beat to four where there is room,
   * ringing two seconds past it, at least two beats and at most eight.
   */
  private static Optional<CrossingPhrase> hold(
      PhraseBuilder bench, PhraseTask task, Crossing crossing, Beats line) {
    Beats room = line.isZero() ? task.space().before() : line.minus(Beats.ONE);
    if (crossing.holds().isEmpty() || room.isBefore(EIGHTH)) {
      return Optional.empty();
    }
    Hold hold = crossing.holds().get(0);
    Beats until = line.plus(rings(bench.harmony(), task, crossing, line));
    Beats from = line.minus(struckBefore(bench.harmony(), crossing, room));
    RhythmNote stroke = new RhythmNote(from, until.minus(from));
    Tone bent = Tone.of(from, stroke.length(), hold.note()).withBend(hold.ringing());
    boolean stays = hold.note().soundsLike(hold.ringing());
    return Optional.of(
        new CrossingPhrase(
            List.of(Blank.of(stroke, hold.note().midi())),
            stays ? List.of() : List.of(bent),
            List.of(new Placed(from, hold.note().midi(), hold.spot())),
            from,
            false,
            "Holds into " + crossing.to() + ": " + WayWords.of(hold)));
  }

  /** About a second before the line in whole beats, one to four; less where there is no room. */
  private static Beats struckBefore(PhraseHarmony harmony, Crossing crossing, Beats room) {
    Bar bar = harmony.form().bar(crossing.atBar() - 1);
    Beats beat = bar.meter().beatLength().max(Beats.ONE);
    double quarters = bar.section().tempo().quartersPerMinute(bar.meter()).toDouble() / 60;
    long wanted = Math.round(STRUCK_SECONDS * quarters / beat.toDouble());
    long fitting =
        Math.min(Math.max(1, Math.min(MOST_STRUCK, wanted)), room.dividedBy(beat).floor());
    return fitting > 0 ? beat.times(fitting) : room.isBefore(Beats.ONE) ? EIGHTH : Beats.ONE;
  }

  /** How long a hold rings into the new key: so that a little can follow it where there is room. */
  private static Beats rings(
      PhraseHarmony harmony, PhraseTask task, Crossing crossing, Beats line) {
    Bar bar = harmony.form().bar(crossing.atBar());
    double quarters = bar.section().tempo().quartersPerMinute(bar.meter()).toDouble() / 60;
    Beats beat = bar.meter().beatLength().max(Beats.ONE);
    long beats = Math.round(RING_SECONDS * quarters / beat.toDouble());
    Beats least = beat.times(LEAST_RING);
    Beats wanted = beat.times(Math.max(LEAST_RING, Math.min(MOST_RING, beats)));
    Beats leaving = task.body().minus(line).minus(beat);
    return wanted.min(leaving.max(least)).min(task.space().after().minus(line));
  }

  /** The ground's first run, as much of it as there is room for. */
  private static Optional<CrossingPhrase> run(
      PhraseBuilder bench, PhraseTask task, Crossing crossing, Beats line) {
    return crossing.runs().stream()
        .limit(1)
        .flatMap(run -> written(bench, task, crossing, run, line).stream())
        .findFirst();
  }

  private static Pitch top(Run.Step step) {
    return step.together()
        ? step.notes().stream().max(Comparator.comparing(Pitch::midi)).orElseThrow()
        : step.notes().get(step.notes().size() - 1);
  }

  private static Optional<CrossingPhrase> written(
      PhraseBuilder bench, PhraseTask task, Crossing crossing, Run run, Beats line) {
    Meter meter = bench.harmony().form().bar(crossing.atBar() - 1).meter();
    Beats earliest = line.isZero() ? task.space().before().negated() : Beats.ONE;
    Sheet sheet = new Sheet(new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
    for (Run.Step step : run.steps()) {
      Beats onset = line.minus(meter.toQuarters(step.beatsBefore()));
      boolean arrives = step.beatsBefore().isZero();
      Beats length =
          arrives
              ? Beats.ONE.min(task.space().after().minus(line))
              : meter.toQuarters(step.beats());
      if (!onset.isBefore(earliest)) {
        sheet.write(step, onset, length);
      }
    }
    String how = run.kind() == Run.Kind.WALK ? "Walks" : "Runs";
    return sheet.blanks.size() < 2
        ? Optional.empty()
        : Optional.of(
            new CrossingPhrase(
                sheet.blanks,
                sheet.beside,
                sheet.places,
                line,
                run.kind() == Run.Kind.WALK,
                how + " into " + crossing.to() + ": " + WayWords.of(run)));
  }

  /** What is being written. */
  private record Sheet(List<Blank> blanks, List<Tone> beside, List<Placed> places) {
    void write(Run.Step step, Beats onset, Beats length) {
      if (step.together() || step.notes().size() == 1) {
        add(step, top(step), onset, length);
        step.notes().stream()
            .filter(pitch -> step.together() && !pitch.equals(top(step)))
            .forEach(pitch -> beside(step, pitch, onset, length));
        return;
      }
      Beats each = length.dividedBy(step.notes().size());
      for (int i = 0; i < step.notes().size(); i++) {
        add(step, step.notes().get(i), onset.plus(each.times(i)), each);
      }
    }

    private void add(Run.Step step, Pitch pitch, Beats onset, Beats length) {
      blanks.add(Blank.of(new RhythmNote(onset, length), pitch.midi()));
      place(step, pitch, onset);
    }

    private void beside(Run.Step step, Pitch pitch, Beats onset, Beats length) {
      beside.add(Tone.of(onset, length, pitch));
      place(step, pitch, onset);
    }

    private void place(Run.Step step, Pitch pitch, Beats onset) {
      Spot spot = step.spots().get(step.notes().indexOf(pitch));
      places.add(new Placed(onset, pitch.midi(), spot));
    }
  }

  /** Where a note of the phrase is played, if the way says it. */
  Optional<Spot> placeOf(Tone tone) {
    return places.stream()
        .filter(p -> p.onset().equals(tone.onset()) && p.midi() == tone.pitch().midi())
        .map(Placed::spot)
        .findFirst();
  }

  /** The filled notes with those beside them, a bent one in place of the plain one. */
  List<Tone> with(List<Tone> tones) {
    List<Tone> all = new ArrayList<>(tones);
    for (Tone extra : beside) {
      all.removeIf(t -> extra.bend().isPresent() && t.onset().equals(extra.onset()));
      all.add(extra);
    }
    return all;
  }
}
