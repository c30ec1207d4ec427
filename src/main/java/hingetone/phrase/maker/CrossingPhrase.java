package hingetone.phrase.maker;

import hingetone.chart.Leave;
import hingetone.ground.ways.Crossing;
import hingetone.ground.ways.Hold;
import hingetone.ground.ways.Run;
import hingetone.phrase.Tone;
import hingetone.phrase.maker.Melody.Blank;
import hingetone.plan.Prompt;
import hingetone.theory.Pitch;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/**
 * A way over a crossing's line, as notes of a phrase.
 *
 * @param blanks its notes, the last one sounding on the line or past it
 * @param beside notes struck together with some of them: double stops, and bends over the line
 * @param why what it does, as the start of a sentence
 */
record CrossingPhrase(List<Blank> blanks, List<Tone> beside, String why) {
  private static final Beats EIGHTH = Beats.of(1, 2);
  private static final int CHOICES = 3;

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
    Position before = Position.of(prompt.landOn().bar() - 1, 1);
    Crossing crossing = bench.ground().nextCrossing(before).orElseThrow();
    Beats at = bench.harmony().form().startOf(crossing.atBar());
    Beats line = at.minus(task.space().landing());
    return prompt.crossing().get() == Leave.HOLD
        ? hold(bench, task, crossing, line)
        : run(bench, task, crossing, line);
  }

  /** A hinge tone struck an eighth before the line, a chord's note after it. */
  private static Optional<CrossingPhrase> hold(
      PhraseBuilder bench, PhraseTask task, Crossing crossing, Beats line) {
    Set<Integer> landing = bench.harmony().landingTones(task.space().landing().plus(line));
    HandPosition hand = bench.hand(task);
    List<Hold> fitting =
        crossing.holds().stream()
            .filter(h -> landing.contains(Math.floorMod(h.noteAfter().midi(), 12)))
            .sorted(Comparator.comparing((Hold h) -> !hand.leads(h.note().midi())))
            .limit(CHOICES)
            .toList();
    boolean tooLate = line.isZero() && task.space().before().isBefore(EIGHTH);
    if (fitting.isEmpty() || tooLate) {
      return Optional.empty();
    }
    Hold hold = fitting.get(task.random().nextInt(fitting.size()));
    Meter meter = bench.harmony().form().bar(crossing.atBar()).meter();
    Beats past = meter.beatLength().max(Beats.ONE).times(Beats.of(3, 2));
    Beats rings = task.space().after().min(line.plus(past));
    Beats from = line.minus(EIGHTH);
    RhythmNote stroke = new RhythmNote(from, rings.minus(from));
    String note = hold.note().name().toString();
    if (hold.note().soundsLike(hold.noteAfter())) {
      return Optional.of(
          new CrossingPhrase(
              List.of(Blank.of(stroke, hold.note().midi())),
              List.of(),
              "Holds " + note + " over the line into " + crossing.to()));
    }
    Tone bent = Tone.of(from, stroke.length(), hold.note()).withBend(hold.noteAfter());
    return Optional.of(
        new CrossingPhrase(
            List.of(Blank.of(stroke, hold.note().midi())),
            List.of(bent),
            "Moves "
                + note
                + " to "
                + hold.noteAfter().name()
                + " on the line into "
                + crossing.to()));
  }

  /**
   * One of the ground's runs that ends on a chord's note, as much of it as there is room for. Those
   * that arrive where the lead goes on come first; another is moved there by octaves.
   */
  private static Optional<CrossingPhrase> run(
      PhraseBuilder bench, PhraseTask task, Crossing crossing, Beats line) {
    Set<Integer> landing = bench.harmony().landingTones(task.space().landing().plus(line));
    HandPosition hand = bench.hand(task);
    List<CrossingPhrase> fitting =
        crossing.runs().stream()
            .filter(run -> landing.contains(Math.floorMod(top(last(run)).midi(), 12)))
            .sorted(Comparator.comparing((Run run) -> !hand.leads(top(last(run)).midi())))
            .flatMap(run -> written(bench, task, crossing, run, line).stream())
            .limit(CHOICES)
            .map(over -> over.towards(hand))
            .toList();
    return fitting.isEmpty()
        ? Optional.empty()
        : Optional.of(fitting.get(task.random().nextInt(fitting.size())));
  }

  /** The same way by the fewest octaves that let it arrive under a hand, if any do. */
  CrossingPhrase towards(HandPosition hand) {
    int arrives = blanks.get(blanks.size() - 1).midi().orElseThrow();
    return Stream.of(0, 1, -1, 2)
        .filter(octaves -> hand.leads(arrives + 12 * octaves))
        .findFirst()
        .map(this::octaves)
        .orElse(this);
  }

  private CrossingPhrase octaves(int octaves) {
    UnaryOperator<Pitch> moved = p -> new Pitch(p.name(), p.octave() + octaves);
    return new CrossingPhrase(
        blanks.stream()
            .map(b -> new Blank(b.stroke(), b.midi().map(m -> m + 12 * octaves), b.direction()))
            .toList(),
        beside.stream()
            .map(t -> new Tone(t.onset(), t.length(), moved.apply(t.pitch()), t.bend().map(moved)))
            .toList(),
        why);
  }

  private static Run.Step last(Run run) {
    return run.steps().get(run.steps().size() - 1);
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
    List<Blank> blanks = new ArrayList<>();
    List<Tone> beside = new ArrayList<>();
    for (Run.Step step : run.steps()) {
      Beats onset = line.minus(meter.toQuarters(step.beatsBefore()));
      boolean arrives = step.beatsBefore().isZero();
      Beats length =
          arrives
              ? Beats.ONE.min(task.space().after().minus(line))
              : meter.toQuarters(step.beats());
      if (!onset.isBefore(earliest)) {
        write(step, onset, length, arrives, blanks, beside);
      }
    }
    String how = run.kind() == Run.Kind.WALK ? "Walks fret by fret" : "Runs along the scale";
    return blanks.size() < 3
        ? Optional.empty()
        : Optional.of(
            new CrossingPhrase(blanks, beside, how + " over the line into " + crossing.to()));
  }

  private static void write(
      Run.Step step,
      Beats onset,
      Beats length,
      boolean arrives,
      List<Blank> blanks,
      List<Tone> beside) {
    if (step.together() || step.notes().size() == 1) {
      blanks.add(Blank.of(new RhythmNote(onset, length), top(step).midi()));
      step.notes().stream()
          .filter(pitch -> !pitch.equals(top(step)))
          .forEach(pitch -> beside.add(Tone.of(onset, length, pitch)));
      return;
    }
    if (arrives) {
      blanks.add(Blank.of(new RhythmNote(onset, length), top(step).midi()));
      return;
    }
    Beats each = length.dividedBy(step.notes().size());
    for (int i = 0; i < step.notes().size(); i++) {
      RhythmNote stroke = new RhythmNote(onset.plus(each.times(i)), each);
      blanks.add(Blank.of(stroke, step.notes().get(i).midi()));
    }
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
