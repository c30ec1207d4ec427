package hingetone.handout;

import hingetone.handout.WrittenBars.Event;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.List;

/**
 * The beams of a bar: eighths and shorter notes of one beat, in compound and odd meters of one
 * group, with no rest between them, hang together (common practice).
 */
final class Beaming {
  private Beaming() {}

  /**
   * For each event of a bar its beams from the outermost, each as MusicXML names it ({@code
   * beam-value}); none for a rest, a long note, or a note alone.
   */
  static List<List<String>> of(Meter meter, List<Event> bar) {
    Cutting cutting = new Cutting(meter);
    List<List<String>> beams = new ArrayList<>();
    List<Event> together = new ArrayList<>();
    int place = 0;
    int group = 0;
    for (Event event : bar) {
      boolean carries = !event.notes().isEmpty() && event.sign().beams() > 0;
      if (!carries || cutting.beamed(place) != group) {
        beams.addAll(beamed(together));
        together.clear();
      }
      group = cutting.beamed(place);
      if (carries) {
        together.add(event);
      } else {
        beams.add(List.of());
      }
      place += event.sign().length();
    }
    beams.addAll(beamed(together));
    return beams;
  }

  private static List<List<String>> beamed(List<Event> together) {
    List<List<String>> beams = new ArrayList<>();
    for (int i = 0; i < together.size(); i++) {
      List<String> own = new ArrayList<>();
      for (int level = 1; together.size() > 1 && level <= beams(together, i); level++) {
        own.add(word(beams(together, i - 1) >= level, beams(together, i + 1) >= level, i));
      }
      beams.add(own);
    }
    return beams;
  }

  private static int beams(List<Event> together, int i) {
    return i < 0 || i >= together.size() ? 0 : together.get(i).sign().beams();
  }

  private static String word(boolean before, boolean after, int i) {
    if (before || after) {
      return before && after ? "continue" : before ? "end" : "begin";
    }
    return i == 0 ? "forward hook" : "backward hook";
  }
}
