package hingetone.exchange;

import hingetone.neck.Fretboard;
import hingetone.neck.Spot;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Where the notes of a phrase are played. */
final class Fingering {
  private Fingering() {}

  /**
   * A place for every note, in their order: under one hand near a fret where that can be, else each
   * as near to it as the neck allows. Notes struck together take different strings.
   *
   * @throws IllegalArgumentException if the neck lacks a note
   */
  static List<Spot> of(Fretboard neck, List<Tone> tones, int fret) {
    List<Integer> midi = tones.stream().map(tone -> tone.pitch().midi()).toList();
    Optional<Hand> hand = Hand.over(neck, midi, fret);
    int centre = hand.map(h -> (h.low() + h.high()) / 2).orElse(fret);
    List<Spot> spots = new ArrayList<>();
    Set<Integer> busy = new HashSet<>();
    Beats now = Beats.ZERO;
    for (Tone tone : tones) {
      if (!tone.onset().equals(now)) {
        busy.clear();
        now = tone.onset();
      }
      Spot spot = place(neck, hand, tone, centre, busy);
      busy.add(spot.string());
      spots.add(spot);
    }
    return spots;
  }

  private static Spot place(
      Fretboard neck, Optional<Hand> hand, Tone tone, int centre, Set<Integer> busy) {
    List<Spot> under = hand.map(h -> h.spots(tone.pitch().midi())).orElse(List.of());
    List<Spot> all = under.isEmpty() ? neck.spotsOf(tone.pitch()) : under;
    return all.stream()
        .min(
            Comparator.comparing((Spot spot) -> busy.contains(spot.string()))
                .thenComparingInt(spot -> Math.abs(spot.fret() - centre)))
        .orElseThrow(() -> new IllegalArgumentException("no place for " + tone.pitch()));
  }
}
