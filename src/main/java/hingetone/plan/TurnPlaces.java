package hingetone.plan;

import hingetone.chart.PhraseTurn.Role;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.List;

/**
 * Where the turns land, how early they start and when they have ended, so that each has room and a
 * breath stays between them. Turns are counted from 0 and on through the laps; times are quarter
 * notes from the start of bar 1.
 */
final class TurnPlaces {
  /** The least silence between two phrases: an eighth note. */
  static final Beats BREATH = Beats.of(1, 2);

  private final List<LapTurn> turns;
  private final Beats lap;
  private final Beats countIn;
  private final List<Beats> landings;

  /**
   * @param turns the turns of one lap
   * @param lap length of a lap in quarter notes
   * @param countIn length of the count-in in quarter notes
   */
  TurnPlaces(List<LapTurn> turns, Beats lap, Beats countIn) {
    this.turns = turns;
    this.lap = lap;
    this.countIn = countIn;
    this.landings = new ArrayList<>(turns.stream().map(LapTurn::start).toList());
    for (int i = turns.size() - 1; i >= 0; i--) {
      if (turns.get(i).role() == Role.REPLY) {
        landings.set(i, replyLanding(i));
      }
    }
  }

  /** The turn with a number, whatever its lap. */
  LapTurn turn(int i) {
    return turns.get(Math.floorMod(i, turns.size()));
  }

  /** Where a turn's main note lands: a statement's on its bar line, a rest's at its start. */
  Beats landing(int i) {
    return turn(i).isRest() ? start(i) : phraseLanding(i);
  }

  /** Where a turn starts, its pickup included. */
  Beats start(int i) {
    if (!turn(i).isRest()) {
      return phraseLanding(i).minus(pickup(i));
    }
    boolean rungInto = i > 0 && ringsOver(i - 1);
    Beats beat = turn(i).first().meter().beatLength();
    Beats quarterOfIt = turn(i).end().minus(turn(i).start()).dividedBy(4);
    return rungInto ? space(i).plus(beat.min(quarterOfIt)) : space(i);
  }

  /**
   * Where a turn has ended: a breath before the next phrase, or where a rest begins. In bars that
   * are shorter than a breath the breath is half of what is left after the landing.
   */
  Beats end(int i) {
    Beats next = start(i + 1);
    boolean noBreath = turn(i).isRest() || turn(i + 1).isRest() || ringsOver(i);
    return noBreath ? next : next.minus(BREATH.min(next.minus(landing(i)).dividedBy(2)));
  }

  /** Whether a turn opens a place of the form on its first bar line, its pickup before it. */
  boolean opensOnLine(int i) {
    return opensPlace(i) && !turn(i).isRest() && phraseLanding(i).equals(space(i));
  }

  /**
   * Whether a turn has to carry its key over the line, since what comes next only starts after it.
   */
  boolean ringsOver(int i) {
    return !turn(i).isRest() && opensNewKey(i + 1) && !opensOnLine(i + 1);
  }

  private boolean opensNewKey(int i) {
    return opensPlace(i) && !turn(i).first().key().equals(turn(i - 1).first().key());
  }

  private boolean opensPlace(int i) {
    return turn(i).first().isFirstOfSection();
  }

  /** Where the space of a turn starts. */
  private Beats space(int i) {
    return turn(i).start().plus(lap.times(Math.floorDiv(i, turns.size())));
  }

  private Beats phraseLanding(int i) {
    return landings
        .get(Math.floorMod(i, turns.size()))
        .plus(lap.times(Math.floorDiv(i, turns.size())));
  }

  /**
   * The pickup a phrase has room for: as stated, unless the turn before would lose its body, or
   * could not ring half a beat over the line into a new key that this one lands behind.
   */
  private Beats pickup(int i) {
    Beats before = i == 0 ? countIn.negated() : phraseLanding(i - 1).plus(leastAfter(i - 1));
    boolean landsBehind = opensNewKey(i) && phraseLanding(i).isAfter(space(i));
    Beats halfBeat = turn(i).first().meter().beatLength().dividedBy(2);
    Beats from = landsBehind ? before.max(space(i).plus(halfBeat)) : before;
    return statedPickup(i).min(phraseLanding(i).minus(from).max(Beats.ZERO));
  }

  /**
   * A reply lands on another strong beat than the bar line, if it then has time to ring before the
   * next turn; else on the bar line.
   */
  private Beats replyLanding(int i) {
    LapTurn turn = turns.get(i);
    Meter meter = turn.first().meter();
    Beats next = phraseLanding(i + 1).minus(statedPickup(i + 1));
    for (int strong : meter.strongBeats().subList(1, meter.strongBeats().size())) {
      Beats landing = turn.start().plus(meter.toQuarters(Beats.of(strong - 1L)));
      if (!landing.plus(leastAfter(i)).isAfter(next)) {
        return landing;
      }
    }
    return turn.start();
  }

  /** What a turn keeps after its landing: a beat and a breath, a rest half of itself. */
  private Beats leastAfter(int i) {
    LapTurn turn = turn(i);
    if (turn.isRest()) {
      return turn.end().minus(turn.start()).dividedBy(2);
    }
    return turn.first().meter().beatLength().max(Beats.ONE).plus(BREATH);
  }

  /**
   * How early a turn may start by the chart, in quarter notes; 0 for a rest. A meter over eighths
   * is not divided further: there the part of an eighth is left off.
   */
  private Beats statedPickup(int i) {
    LapTurn turn = turn(i);
    if (turn.isRest()) {
      return Beats.ZERO;
    }
    Meter meter = turn.first().meter();
    Beats stated = meter.toQuarters(turn.first().section().pickup());
    Beats step = Beats.of(4, meter.denominator());
    return meter.denominator() < 8 ? stated : step.times(stated.dividedBy(step).floor());
  }
}
