package hingetone.review;

import hingetone.take.PlacedNote;
import hingetone.theory.Key;
import java.util.ArrayList;
import java.util.List;

/**
 * A change of key as it was played.
 *
 * @param atBar the first bar in the new key
 * @param from the key before
 * @param to the key after
 * @param way how it was gone over
 * @param chromaticNotes notes of the last two beats that are in neither key
 */
public record CrossedLine(int atBar, Key from, Key to, LineWay way, int chromaticNotes) {

  /** The changes of key that were played over, in order. */
  public static List<CrossedLine> of(Played played) {
    List<CrossedLine> lines = new ArrayList<>();
    for (int i = 1; i < played.bars().size(); i++) {
      Played.Bar before = played.bars().get(i - 1);
      Played.Bar bar = played.bars().get(i);
      boolean follows = bar.number() == before.number() + 1 && bar.number() > 1;
      if (follows && !bar.key().equals(before.key())) {
        lines.add(line(played, i));
      }
    }
    return lines;
  }

  private static CrossedLine line(Played played, int index) {
    Played.Bar bar = played.bars().get(index);
    Played.Bar last = played.bars().get(index - 1);
    double from = bar.start() - 2 * bar.beatLength();
    int chromatic =
        (int)
            played.notesFrom(from, bar.start()).stream()
                .filter(n -> !isIn(last.key(), n) && !isIn(bar.key(), n))
                .count();
    return new CrossedLine(bar.number(), last.key(), bar.key(), played.wayInto(index), chromatic);
  }

  private static boolean isIn(Key key, PlacedNote note) {
    return key.scale().degreeOf(note.chroma()).isPresent();
  }

  /** Whether the note held belongs to both keys; meaningful for a hold. */
  public boolean holdsCommon() {
    return way.held().filter(n -> isIn(from, n) && isIn(to, n)).isPresent();
  }
}
