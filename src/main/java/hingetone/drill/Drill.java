package hingetone.drill;

import hingetone.time.Tempo;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * An exercise under way.
 *
 * @param level which of its levels is played, from 0
 * @param rounds those that are done, the warm-up left out
 */
public record Drill(Exercise exercise, TempoLadder ladder, int level, List<Round> rounds) {
  /** After so many steps up the next level begins, where it began. */
  private static final int RISES_A_LEVEL = 3;

  public Drill {
    rounds = List.copyOf(rounds);
  }

  /** An exercise that begins at a tempo. */
  public static Drill of(Exercise exercise, Tempo start) {
    return new Drill(exercise, TempoLadder.from(start), 0, List.of());
  }

  /** The level that is played. */
  public Exercise.Level now() {
    return exercise.levels().get(level);
  }

  /** The exercise after a round. */
  public Drill after(Round round) {
    List<Round> done = new ArrayList<>(rounds);
    done.add(round);
    TempoLadder next = ladder.after(round.score());
    boolean harder = next.rises() >= RISES_A_LEVEL && level + 1 < exercise.levels().size();
    return harder
        ? new Drill(exercise, next.again(), level + 1, done)
        : new Drill(exercise, next, level, done);
  }

  /** The mean score of all rounds; empty before the first. */
  public Optional<Double> score() {
    return rounds.isEmpty()
        ? Optional.empty()
        : Optional.of(rounds.stream().mapToDouble(Round::score).average().orElseThrow());
  }

  /** How it went, in one sentence. */
  public String result() {
    if (rounds.isEmpty()) {
      return "No round was played.";
    }
    String clean =
        ladder
            .cleanTwice()
            .map(tempo -> "clean twice in a row at " + tempo)
            .orElse("not yet clean twice in a row");
    return String.format(
        "%d %s, %d %% went well, %s.",
        rounds.size(),
        rounds.size() == 1 ? "round" : "rounds",
        Math.round(100 * score().orElseThrow()),
        clean);
  }

  /** One thing to do next. */
  public String advice() {
    boolean last = level + 1 == exercise.levels().size();
    if (ladder.cleanTwice().isEmpty()) {
      return "Next time begin slower, at " + ladder.now() + ", and stay at: " + now().words() + ".";
    }
    if (last && score().orElse(0.0) >= TempoLadder.CLEAN) {
      return "This sits: take another exercise, or another key.";
    }
    return "Next time begin at " + ladder.cleanTwice().get() + " with: " + now().words() + ".";
  }
}
