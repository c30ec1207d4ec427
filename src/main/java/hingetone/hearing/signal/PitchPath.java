package hingetone.hearing.signal;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;

/**
 * The likeliest way through the pitch candidates of frame after frame (Viterbi), a fixed number of
 * frames late, so that it needs no more memory for a long sound (for which {@code CheapestPath}
 * would have to see its end).
 *
 * <p>A step within a pitch costs by its size up to the cost of a new note; silence costs what the
 * candidates leave unsaid.
 */
final class PitchPath {
  private static final double STEP_COST_A_SEMITONE = 4;
  private static final double NEW_NOTE_COST = 4;
  private static final double VOICE_COST = 2.5;
  private static final double LEAST = 1e-4;

  /** In a sound as loud as the playing silence is this much less likely. */
  private static final double SILENCE_WHERE_LOUD = 0.03;

  private final int lag;
  private final Deque<List<State>> waiting = new ArrayDeque<>();

  /** What a frame may be, with the cost of the best way to it and where that came from. */
  private record State(Optional<Yin.Candidate> candidate, double cost, int from) {}

  /**
   * @param lag how many frames later a frame is decided
   */
  PitchPath(int lag) {
    this.lag = lag;
  }

  /**
   * Takes the candidates of the next frame; gives the pitch of the frame {@code lag} before it.
   *
   * @param loud whether it is about as loud as the playing
   */
  Optional<Optional<Yin.Candidate>> next(List<Yin.Candidate> candidates, boolean loud) {
    List<State> before = waiting.isEmpty() ? List.of() : waiting.peekLast();
    List<State> states = new ArrayList<>();
    double said = 0;
    for (Yin.Candidate candidate : candidates) {
      said += candidate.probability();
      states.add(state(Optional.of(candidate), candidate.probability(), before));
    }
    states.add(state(Optional.empty(), (1 - said) * (loud ? SILENCE_WHERE_LOUD : 1), before));
    waiting.addLast(rebased(states));
    return waiting.size() > lag ? Optional.of(first()) : Optional.empty();
  }

  /** The pitches of the frames not given yet, in order. */
  List<Optional<Yin.Candidate>> rest() {
    List<Optional<Yin.Candidate>> rest = new ArrayList<>();
    while (!waiting.isEmpty()) {
      rest.add(first());
    }
    return rest;
  }

  private Optional<Yin.Candidate> first() {
    int index = cheapest(waiting.peekLast());
    Iterator<List<State>> back = waiting.descendingIterator();
    State state = back.next().get(index);
    while (back.hasNext()) {
      state = back.next().get(state.from);
    }
    waiting.removeFirst();
    return state.candidate;
  }

  private State state(Optional<Yin.Candidate> own, double probability, List<State> before) {
    double emission = -Math.log(Math.max(LEAST, probability));
    double best = before.isEmpty() ? 0 : Double.MAX_VALUE;
    int from = 0;
    for (int i = 0; i < before.size(); i++) {
      double cost = before.get(i).cost + step(before.get(i).candidate, own);
      if (cost < best) {
        best = cost;
        from = i;
      }
    }
    return new State(own, best + emission, from);
  }

  private static double step(Optional<Yin.Candidate> from, Optional<Yin.Candidate> to) {
    if (from.isEmpty() || to.isEmpty()) {
      return from.isEmpty() == to.isEmpty() ? 0 : VOICE_COST;
    }
    double semitones = Math.abs(from.get().midi() - to.get().midi());
    return Math.min(NEW_NOTE_COST, STEP_COST_A_SEMITONE * semitones);
  }

  /** Keeps the numbers small. */
  private static List<State> rebased(List<State> states) {
    double least = states.get(cheapest(states)).cost;
    return states.stream().map(s -> new State(s.candidate, s.cost - least, s.from)).toList();
  }

  private static int cheapest(List<State> states) {
    int best = 0;
    for (int i = 1; i < states.size(); i++) {
      best = states.get(i).cost < states.get(best).cost ? i : best;
    }
    return best;
  }
}
