package hingetone.ground.ways;

import hingetone.ground.scales.DegreeNames;
import hingetone.ground.scales.Weights;
import hingetone.ground.ways.Hold.BentHold;
import hingetone.ground.ways.Hold.Heard;
import hingetone.ground.ways.Hold.Move;
import hingetone.neck.Bend;
import hingetone.neck.Spot;
import hingetone.theory.Chord;
import hingetone.theory.Interval;
import hingetone.theory.NoteName;
import hingetone.theory.Pitch;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Finds and ranks the notes that may be held over a line. */
public final class HoldFinder {
  private final CrossingLine line;

  private HoldFinder(CrossingLine line) {
    this.line = line;
  }

  /**
   * Common tones in reach of the hand: first those of both chords, then what belongs to both sides
   * otherwise, each the best first. Where the two five-note scales share nothing, their notes that
   * lie a half tone apart come after, bent or slid on the line.
   */
  public static List<Hold> over(CrossingLine line) {
    HoldFinder holds = new HoldFinder(line);
    List<Hold> found = new ArrayList<>();
    for (Spot spot : holds.inReach()) {
      holds.staying(spot).ifPresent(found::add);
      if (line.shareNothing()) {
        holds.moving(spot, 1).ifPresent(found::add);
        holds.moving(spot, -1).ifPresent(found::add);
      }
    }
    return found.stream()
        .sorted(
            Comparator.comparing(holds::kind)
                .thenComparing(Comparator.comparingDouble(Hold::score).reversed())
                .thenComparing(Hold::travel)
                .thenComparing(h -> h.spot().string()))
        .limit(Weights.MOST_HOLDS)
        .toList();
  }

  /** What a hold rests on, the firmest first. */
  private enum Kind {
    OF_BOTH_CHORDS,
    OF_BOTH_SIDES,
    MOVED
  }

  private Kind kind(Hold hold) {
    int chroma = hold.note().name().chroma();
    boolean chords = line.before().hasInChord(chroma) && line.after().hasInChord(chroma);
    return hold.move() != Move.STAY
        ? Kind.MOVED
        : chords ? Kind.OF_BOTH_CHORDS : Kind.OF_BOTH_SIDES;
  }

  private List<Spot> inReach() {
    List<Spot> spots = new ArrayList<>();
    for (int string = 1; string <= line.neck().strings(); string++) {
      for (int fret = line.before().shape().low() - 1;
          fret <= line.before().shape().high() + 1;
          fret++) {
        Spot spot = new Spot(string, fret);
        if (line.neck().has(spot)) {
          spots.add(spot);
        }
      }
    }
    return spots;
  }

  private Optional<Hold> staying(Spot spot) {
    int midi = line.neck().midi(spot);
    if (!isCommon(midi)) {
      return Optional.empty();
    }
    Optional<BentHold> bend = bend(spot, midi);
    double score = score(midi, midi) * (isSmall(midi) ? 1 : Weights.OUTSIDE_PENTATONIC);
    return Optional.of(hold(spot, midi, midi, Move.STAY, bend, score));
  }

  private Optional<Hold> moving(Spot spot, int semitones) {
    int midi = line.neck().midi(spot);
    boolean fits = isIn(line.before(), midi) && isIn(line.after(), midi + semitones);
    if (!fits || !line.neck().has(spot.up(semitones))) {
      return Optional.empty();
    }
    boolean bends = semitones > 0 && Bend.Size.HALF.isPlayableAt(spot, midi);
    double score = score(midi, midi + semitones) * Weights.MOVED;
    Move move = bends ? Move.BEND : Move.SLIDE;
    return Optional.of(hold(spot, midi, midi + semitones, move, Optional.empty(), score));
  }

  private Hold hold(
      Spot spot, int midi, int midiAfter, Move move, Optional<BentHold> bend, double score) {
    return new Hold(
        line.before().key().spell(midi),
        spot,
        line.after().key().spell(midiAfter),
        move,
        line.before().heard(name(midi)),
        line.after().heard(name(midiAfter)),
        bend,
        bentFirst(midiAfter, bend),
        Math.round(score * 1000) / 1000.0,
        line.reach(spot.fret()),
        afterwards(midiAfter, move, bend));
  }

  private static boolean isIn(CrossingLine.Side side, int midi) {
    return side.small().degreeOf(Math.floorMod(midi, 12)).isPresent();
  }

  private boolean isSmall(int midi) {
    return isIn(line.before(), midi) && isIn(line.after(), midi);
  }

  private boolean isCommon(int midi) {
    int chroma = Math.floorMod(midi, 12);
    return line.before().has(chroma) && line.after().has(chroma);
  }

  /**
   * A bend to another common tone that does not fight the chord after the line, a whole tone rather
   * than a half.
   */
  private Optional<BentHold> bend(Spot spot, int midi) {
    return Bend.Size.usualFirst().stream()
        .filter(size -> size.isPlayableAt(spot, midi) && isCommon(midi + size.semitones()))
        .filter(size -> chordScore(line.after(), midi + size.semitones()) > 0)
        .findFirst()
        .map(size -> bent(size, midi + size.semitones()));
  }

  /** Where strings are bent, and the upper end sits on the chord as well as the note itself. */
  private boolean bentFirst(int midi, Optional<BentHold> bend) {
    return line.bends() && bend.filter(b -> rests(b.to().midi()) >= rests(midi)).isPresent();
  }

  private double rests(int midi) {
    return chordScore(line.after(), midi);
  }

  private BentHold bent(Bend.Size size, int midi) {
    Pitch to = line.before().key().spell(midi);
    return new BentHold(size, to, line.before().heard(to.name()), line.after().heard(to.name()));
  }

  private double score(int midi, int midiAfter) {
    return Weights.DEGREE_BEFORE * degreeScore(line.before(), midi)
        + Weights.DEGREE_AFTER * degreeScore(line.after(), midiAfter)
        + Weights.CHORD_BEFORE * chordScore(line.before(), midi)
        + Weights.CHORD_AFTER * chordScore(line.after(), midiAfter);
  }

  /** How much at home a note is in a key: the tonic's chord first, then the other degrees. */
  private static double degreeScore(CrossingLine.Side side, int midi) {
    Interval degree = DegreeNames.in(side.key(), name(midi));
    boolean ofTonicChord = List.of(1, 3, 5).contains(degree.number()) && degree.alteration() <= 0;
    return ofTonicChord ? 1 : isIn(side, midi) ? Weights.IN_PENTATONIC : Weights.IN_SCALE;
  }

  /** How well a note sits over a chord: one of its own, a colour, or fighting it. */
  private static double chordScore(CrossingLine.Side side, int midi) {
    if (side.chord().isEmpty()) {
      return Weights.COLOUR;
    }
    Chord chord = side.chord().get();
    if (chord.degreeOf(Math.floorMod(midi, 12)).isPresent()) {
      return 1;
    }
    boolean fights =
        chord.notes().stream().anyMatch(n -> Math.floorMod(midi - n.chroma(), 12) == 1);
    return fights ? 0 : Weights.COLOUR;
  }

  private String afterwards(int midi, Move move, Optional<BentHold> bend) {
    String note = read(line.after().key().spell(midi).name());
    String where = " (" + heard(midi) + ")";
    String moved =
        switch (move) {
          case STAY -> "";
          case BEND -> "bend it up to " + note + " on the line, then ";
          case SLIDE -> "slide it to " + note + " on the line, then ";
        };
    String rest =
        chordScore(line.after(), midi) == 1
            ? "stay on " + note + where
            : "let " + note + where + " ring, then go to " + resolution(midi);
    if (bentFirst(midi, bend)) {
      int upper = bend.orElseThrow().to().midi();
      String bent = read(line.after().key().spell(upper).name()) + " (" + heard(upper) + ")";
      return "hold it bent to " + bent + " and release; or " + rest;
    }
    String bending =
        bend.map(b -> "; or hold it bent to " + read(b.to().name()) + " and release").orElse("");
    return moved + rest + bending;
  }

  private String heard(int midi) {
    Heard heard = line.after().heard(name(midi));
    return line.after().chord().isPresent()
        ? heard.overChord().orElseThrow() + " of " + line.after().chord().get().symbol()
        : heard.degree().toString();
  }

  /** The nearest note of the chord after the line, or of its key's tonic chord. */
  private String resolution(int midi) {
    List<NoteName> goals =
        line.after().chord().map(Chord::notes).orElse(List.of(line.after().key().tonic()));
    return goals.stream()
        .min(Comparator.comparingInt(n -> distance(midi, n)))
        .map(this::read)
        .orElseThrow();
  }

  private String read(NoteName note) {
    return line.after().key().readable(note).toString();
  }

  private static int distance(int midi, NoteName note) {
    int up = Math.floorMod(note.chroma() - midi, 12);
    return Math.min(up, 12 - up);
  }

  private static NoteName name(int midi) {
    int chroma = Math.floorMod(midi, 12);
    return NoteName.ofFifths(Math.floorMod(7 * chroma + 1, 12) - 1);
  }
}
