package hingetone.sequencer;

import hingetone.time.Tempo;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * What changes from pass to pass: tempo ramp and keys.
 *
 * @param scale how the tempo played relates to the chart's
 * @param ramp the ramp under way
 * @param rampTempo its tempo now
 * @param rampPasses passes since its last step
 * @param keyShift semitones from the chart's keys
 * @param keyWalk semitones moved with each pass
 * @param passes laps and rounds of a loop begun so far
 */
record PassChanges(
    BigDecimal scale,
    Optional<Command.Ramp> ramp,
    Tempo rampTempo,
    int rampPasses,
    int keyShift,
    int keyWalk,
    int passes) {
  static final PassChanges START =
      new PassChanges(BigDecimal.ONE, Optional.empty(), Tempo.of(100), 0, 0, 0, 0);

  private static final int LOWEST_SHIFT = -5;
  private static final int FARTHEST_SHIFT = 12;

  /** Another tempo by hand, which ends a ramp. */
  PassChanges withScale(BigDecimal newScale) {
    return new PassChanges(newScale, Optional.empty(), rampTempo, 0, keyShift, keyWalk, passes);
  }

  PassChanges withRamp(Command.Ramp newRamp, Tempo charted) {
    BigDecimal start = TempoLine.scale(newRamp.start(), charted);
    return new PassChanges(
        start, Optional.of(newRamp), newRamp.start(), 0, keyShift, keyWalk, passes);
  }

  /** The keys moved by so many semitones, unless that is farther than an octave. */
  PassChanges withKeyStep(int semitones) {
    int moved = keyShift + semitones;
    int shift = Math.abs(moved) <= FARTHEST_SHIFT ? moved : keyShift;
    return new PassChanges(scale, ramp, rampTempo, rampPasses, shift, keyWalk, passes);
  }

  PassChanges withKeyWalk(int semitones) {
    return new PassChanges(scale, ramp, rampTempo, rampPasses, keyShift, semitones, passes);
  }

  /** Back at the top: passes are counted anew. */
  PassChanges atTop() {
    return new PassChanges(scale, ramp, rampTempo, 0, keyShift, keyWalk, 0);
  }

  /** The first pass begins. */
  PassChanges firstPass() {
    return new PassChanges(scale, ramp, rampTempo, rampPasses, keyShift, keyWalk, 1);
  }

  /**
   * A further pass begins.
   *
   * @param charted the tempo the chart asks for there
   */
  PassChanges again(Tempo charted) {
    int shift =
        keyWalk == 0
            ? keyShift
            : Math.floorMod(keyShift + keyWalk - LOWEST_SHIFT, 12) + LOWEST_SHIFT;
    boolean steps = ramp.isPresent() && rampPasses + 1 >= ramp.get().everyLaps();
    Tempo tempo = steps ? stepped(ramp.get()) : rampTempo;
    return new PassChanges(
        steps ? TempoLine.scale(tempo, charted) : scale,
        ramp,
        tempo,
        steps ? 0 : rampPasses + 1,
        shift,
        keyWalk,
        passes + 1);
  }

  private Tempo stepped(Command.Ramp r) {
    BigDecimal missing = r.goal().bpm().subtract(rampTempo.bpm());
    BigDecimal step = r.step().min(missing.abs());
    return TempoLine.possible(
        missing.signum() < 0 ? rampTempo.bpm().subtract(step) : rampTempo.bpm().add(step));
  }
}
