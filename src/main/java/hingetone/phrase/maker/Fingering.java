package hingetone.phrase.maker;

import hingetone.neck.Fretboard;
import hingetone.neck.Spot;
import hingetone.phrase.Tone;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.IntSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Where the notes of a phrase are played. */
final class Fingering {
  private final Fretboard neck;
  private final int fret;
  private final Optional<CrossingPhrase> way;

  private Fingering(Fretboard neck, int fret, Optional<CrossingPhrase> way) {
    this.neck = neck;
    this.fret = fret;
    this.way = way;
  }

  /**
   * A place for every note, in their order: under one hand near a fret where that can be, else
   * under one hand before the landing and one from it, else each as near to the fret as the neck
   * allows. Notes struck together take different strings where the neck has them, and those of a
   * way over a line lie where the way says.
   *
   * @throws IllegalArgumentException if the neck lacks a note
   */
  static List<Spot> of(Fretboard neck, List<Tone> tones, int fret, Optional<CrossingPhrase> way) {
    Fingering fingering = new Fingering(neck, fret, way);
    Optional<HandPosition> one = fingering.hand(tones);
    int pickup = (int) tones.stream().filter(tone -> tone.onset().isNegative()).count();
    List<Tone> before = tones.subList(0, pickup);
    List<Tone> after = tones.subList(pickup, tones.size());
    if (one.isPresent() || before.isEmpty() || after.isEmpty()) {
      return fingering.spots(tones, one);
    }
    List<Spot> spots = new ArrayList<>(fingering.spots(before, fingering.hand(before)));
    spots.addAll(fingering.spots(after, fingering.hand(after)));
    return spots;
  }

  private Optional<HandPosition> hand(List<Tone> tones) {
    List<Integer> placed =
        tones.stream().flatMap(tone -> placed(tone).stream()).map(Spot::fret).toList();
    List<Integer> midi = tones.stream().map(tone -> tone.pitch().midi()).toList();
    int near = placed.isEmpty() ? fret : placed.stream().min(Integer::compare).orElseThrow();
    return HandPosition.allOver(neck, midi, near)
        .filter(hand -> parts(tones, hand))
        .findFirst()
        .or(() -> HandPosition.over(neck, midi, near))
        .filter(hand -> placed.stream().allMatch(hand::covers));
  }

  /** Whether a hand has strings of their own for notes struck together. */
  private boolean parts(List<Tone> tones, HandPosition hand) {
    return tones.stream().collect(Collectors.groupingBy(Tone::onset)).values().stream()
        .filter(together -> together.size() > 1)
        .allMatch(
            together ->
                product(together, Optional.of(hand)).stream().anyMatch(way -> shared(way) == 0));
  }

  private List<Spot> spots(List<Tone> tones, Optional<HandPosition> hand) {
    int centre = hand.map(h -> (h.low() + h.high()) / 2).orElse(fret);
    List<Spot> spots = new ArrayList<>();
    for (int i = 0; i < tones.size(); i = spots.size()) {
      Beats onset = tones.get(i).onset();
      List<Tone> together =
          tones.subList(i, tones.size()).stream().filter(t -> t.onset().equals(onset)).toList();
      spots.addAll(
          ways(together, hand).stream()
              .min(
                  Comparator.comparing(Fingering::shared)
                      .thenComparing(way -> distance(way, centre)))
              .orElseThrow());
    }
    return spots;
  }

  /** Every way to play notes struck together, under a hand where it has them on own strings. */
  private List<List<Spot>> ways(List<Tone> together, Optional<HandPosition> hand) {
    List<List<Spot>> ways = product(together, hand);
    boolean parted = ways.stream().anyMatch(way -> shared(way) == 0);
    return parted || hand.isEmpty() ? ways : product(together, Optional.empty());
  }

  private List<List<Spot>> product(List<Tone> together, Optional<HandPosition> hand) {
    List<List<Spot>> ways = List.of(List.of());
    for (Tone tone : together) {
      List<Spot> places = places(tone, hand);
      ways =
          ways.stream()
              .flatMap(
                  way ->
                      places.stream()
                          .map(
                              spot -> {
                                List<Spot> longer = new ArrayList<>(way);
                                longer.add(spot);
                                return longer;
                              }))
              .map(List::copyOf)
              .toList();
    }
    return ways;
  }

  private Optional<Spot> placed(Tone tone) {
    return way.flatMap(w -> w.placeOf(tone));
  }

  private List<Spot> places(Tone tone, Optional<HandPosition> hand) {
    Optional<Spot> placed = placed(tone);
    if (placed.isPresent()) {
      return List.of(placed.get());
    }
    List<Spot> under = hand.map(h -> h.spots(tone.pitch().midi())).orElse(List.of());
    List<Spot> all = under.isEmpty() ? neck.spotsOf(tone.pitch()) : under;
    if (all.isEmpty()) {
      throw new IllegalArgumentException("no place for " + tone.pitch());
    }
    return all;
  }

  /** How many notes have no string of their own. */
  private static int shared(List<Spot> way) {
    return way.size() - (int) way.stream().map(Spot::string).distinct().count();
  }

  /** Frets from the centre of the hand, and twice over what notes struck together lie apart. */
  private static int distance(List<Spot> way, int centre) {
    IntSummaryStatistics frets = way.stream().mapToInt(Spot::fret).summaryStatistics();
    int away = way.stream().mapToInt(spot -> Math.abs(spot.fret() - centre)).sum();
    return away + 2 * (frets.getMax() - frets.getMin());
  }
}
