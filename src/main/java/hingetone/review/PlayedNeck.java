package hingetone.review;

import hingetone.hearing.Technique;
import hingetone.neck.Fretboard;
import hingetone.neck.LikelyWay;
import hingetone.neck.PatternNumbers;
import hingetone.neck.Spot;
import hingetone.take.PlacedNote;
import hingetone.theory.Scale;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Where what was played lies on the neck: the way on which the hand moves least ({@link
 * LikelyWay}), strings that are known kept.
 *
 * @param neck the neck
 * @param spots the place of each note, in their order; empty where the neck lacks it, and in chords
 * @param places where each phrase lies
 */
public record PlayedNeck(
    Fretboard neck, List<Optional<Spot>> spots, List<Optional<PhrasePlace>> places) {
  /** More notes at once are a chord, whose places are not guessed. */
  private static final int MOST_AT_ONCE = 3;

  /** Strings are kept where so many of those known have their note; else another neck was meant. */
  private static final double RIGHT_NECK = 0.9;

  public PlayedNeck {
    spots = List.copyOf(spots);
    places = List.copyOf(places);
  }

  /** Finds the places of what was played. */
  static PlayedNeck of(
      Played played, List<ReviewedPhrase> phrases, Fretboard neck, PatternNumbers patterns) {
    List<Optional<Spot>> spots = spots(played, phrases, neck);
    PhrasePlace.Finder finder = new PhrasePlace.Finder(neck, patterns);
    List<Optional<PhrasePlace>> places = new ArrayList<>();
    for (ReviewedPhrase phrase : phrases) {
      int from = phrase.span().from();
      Scale pentatonic = played.barAt(played.notes().get(from).at()).key().pentatonic();
      places.add(
          finder.of(
              spots.subList(from, phrase.span().to()).stream().flatMap(Optional::stream).toList(),
              pentatonic));
    }
    return new PlayedNeck(neck, spots, places);
  }

  /** Phrase by phrase: between two the hand has time to go anywhere. */
  private static List<Optional<Spot>> spots(
      Played played, List<ReviewedPhrase> phrases, Fretboard neck) {
    boolean known = areOnNeck(played.notes(), neck);
    List<Optional<Spot>> spots = new ArrayList<>();
    for (ReviewedPhrase phrase : phrases) {
      int before = spots.size();
      addSpots(spots, moments(played, before, phrase.span().from()), neck, known);
      addSpots(spots, moments(played, phrase.span().from(), phrase.span().to()), neck, known);
    }
    return spots;
  }

  private static void addSpots(
      List<Optional<Spot>> spots, List<List<PlacedNote>> moments, Fretboard neck, boolean known) {
    List<List<Spot>> ways =
        LikelyWay.over(neck, moments.stream().map(m -> moment(m, known)).toList());
    for (int i = 0; i < moments.size(); i++) {
      for (int k = 0; k < moments.get(i).size(); k++) {
        List<Spot> way = ways.get(i);
        spots.add(way.isEmpty() ? Optional.empty() : Optional.of(way.get(k)));
      }
    }
  }

  private static boolean areOnNeck(List<PlacedNote> notes, Fretboard neck) {
    List<PlacedNote> known = notes.stream().filter(n -> n.handling().string().isPresent()).toList();
    return known.stream().filter(n -> isOn(neck, n)).count() >= RIGHT_NECK * known.size();
  }

  private static boolean isOn(Fretboard neck, PlacedNote note) {
    int string = note.handling().string().orElseThrow();
    return string <= neck.strings()
        && neck.has(new Spot(string, note.fretted() - neck.open(string)));
  }

  /** Notes that are struck together. */
  public static List<List<PlacedNote>> moments(Played played) {
    return moments(played, 0, played.notes().size());
  }

  private static List<List<PlacedNote>> moments(Played played, int from, int to) {
    List<List<PlacedNote>> moments = new ArrayList<>();
    double at = Double.NEGATIVE_INFINITY;
    for (PlacedNote note : played.notes().subList(from, to)) {
      double together = LineWay.TOGETHER * played.barAt(note.at()).beatLength();
      if (note.at() - at > together) {
        at = note.at();
        moments.add(new ArrayList<>());
      }
      moments.get(moments.size() - 1).add(note);
    }
    return moments;
  }

  private static LikelyWay.Moment moment(List<PlacedNote> notes, boolean known) {
    List<Integer> keys =
        notes.size() > MOST_AT_ONCE
            ? IntStream.range(0, notes.size()).mapToObj(i -> Integer.MIN_VALUE / 2).toList()
            : notes.stream().map(PlacedNote::fretted).toList();
    Technique first = notes.get(0).handling().technique();
    return new LikelyWay.Moment(
        keys,
        first == Technique.LEGATO || first == Technique.SLIDE,
        notes.stream()
            .map(n -> known ? n.handling().string() : Optional.<Integer>empty())
            .toList());
  }
}
