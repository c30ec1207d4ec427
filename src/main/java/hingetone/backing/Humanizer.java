package hingetone.backing;

import hingetone.groove.Human;
import hingetone.score.Note;
import hingetone.score.Role;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Function;

/**
 * The human part of the playing: each note a little early or late and a little softer or louder,
 * never more than the groove says; the notes of one chord together.
 */
final class Humanizer {
  private final Dice dice;

  Humanizer(Dice dice) {
    this.dice = dice;
  }

  /** The notes of a part as a person plays them; {@code humans} gives how, for each note. */
  List<Note> played(Role role, List<Note> notes, Function<Note, Human> humans) {
    List<Note> touched = new ArrayList<>();
    Map<Object, Long> strokes = new HashMap<>();
    for (int i = 0; i < notes.size(); i++) {
      Note note = notes.get(i);
      Human human = humans.apply(note);
      Random chance = dice.at("touch " + role, i);
      long own = Math.round(spread(chance) * human.timingMillis() * 1000);
      long shared = role == Role.CHORDS ? strokes.computeIfAbsent(note.onset(), onset -> own) : own;
      long late = 1000L * human.late(Human.Lane.of(role, note.key()));
      int louder = (int) Math.round(spread(chance) * human.touch());
      touched.add(
          note.withOffsetMicros(note.offsetMicros() + late + shared)
              .withVelocity(Math.max(1, Math.min(127, note.velocity() + louder))));
    }
    return touched;
  }

  /** Between −1 and 1, most often near 0: half a standard deviation, cut at two. */
  private static double spread(Random chance) {
    return Math.max(-1, Math.min(1, chance.nextGaussian() / 2));
  }
}
