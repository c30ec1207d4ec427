package hingetone.screen;

import hingetone.screen.picture.Size;
import hingetone.sequencer.Status;
import hingetone.sequencer.Status.Motion;
import hingetone.time.Beats;
import hingetone.time.Position;
import java.util.Optional;
import java.util.Set;

/**
 * Everything that is visible.
 *
 * @param facts the chart's facts
 * @param status what the band does and is set to, as it reports it
 * @param now where it is, in quarter notes from bar 1, laps counted on
 * @param settings what the player chose to see
 * @param layer what lies over the picture
 * @param words what is told the player
 * @param heard what is heard of the player
 * @param aside whether the terminal is given back as soon as the band stands still
 * @param terminal what it is drawn on
 */
public record State(
    ChartFacts facts,
    Status status,
    Beats now,
    ViewSettings settings,
    Layer layer,
    Words words,
    Heard heard,
    boolean aside,
    Terminal terminal) {
  /** What lies over the picture. */
  public sealed interface Layer {
    /** Nothing. */
    record None() implements Layer {}

    /** The keys, from a first line on. */
    record Help(int first) implements Layer {}

    /** The menu with a line chosen. */
    record Menu(int chosen) implements Layer {}

    /** Waiting for the key or pedal that shall do an action. */
    record Bind(Action action) implements Layer {}
  }

  /**
   * What is told the player.
   *
   * @param notice something told in passing; empty when there is nothing
   * @param beats beats for which it stays
   * @param fault what is wrong with a device, and what to do
   * @param asks whether the notice is a question, which stays until it is answered
   */
  public record Words(String notice, int beats, Optional<String> fault, boolean asks) {
    static final Words NONE = new Words("", 0, Optional.empty(), false);

    Words withNotice(String told, int forBeats) {
      return new Words(told, forBeats, fault, false);
    }

    Words withQuestion(String question) {
      return new Words(question, 1, fault, true);
    }

    Words withFault(Optional<String> wrong) {
      return new Words(notice, beats, wrong, asks);
    }

    /** After a beat. */
    Words aged() {
      int left = asks ? beats : Math.max(0, beats - 1);
      return new Words(left == 0 ? "" : notice, left, fault, asks);
    }
  }

  /**
   * What is heard of the player.
   *
   * @param sounding the notes that sound, as MIDI numbers
   * @param take the name of the take that is recorded; empty where none is
   */
  public record Heard(Set<Integer> sounding, Optional<String> take) {
    static final Heard NOTHING = new Heard(Set.of(), Optional.empty());

    public Heard {
      sounding = Set.copyOf(sounding);
    }

    /** The same with other notes sounding. */
    public Heard withSounding(Set<Integer> notes) {
      return new Heard(notes, take);
    }

    Heard withTake(Optional<String> name) {
      return new Heard(sounding, name);
    }
  }

  /** What the picture is drawn on: its size, and whether only ASCII can be shown. */
  public record Terminal(Size size, boolean ascii) {}

  /** The state before anything has happened. */
  public static State of(
      ChartFacts facts, Status status, ViewSettings settings, Terminal terminal) {
    Beats start = facts.form().startOf(1);
    return new State(
        facts,
        status,
        start,
        settings,
        new Layer.None(),
        Words.NONE,
        Heard.NOTHING,
        false,
        terminal);
  }

  /** Where it is as bar and beat. */
  public Position position() {
    return facts.form().position(now);
  }

  /** Whether the music moves. */
  public Motion motion() {
    return status.motion();
  }

  /** Whether the bars before the form are being counted. */
  public boolean countsIn() {
    return now.isNegative() && (motion() == Motion.PLAYING || motion() == Motion.PAUSED);
  }

  public Size size() {
    return terminal.size();
  }

  public State withFacts(ChartFacts other) {
    return new State(other, status, now, settings, layer, words, heard, aside, terminal);
  }

  public State withStatus(Status other) {
    return new State(facts, other, now, settings, layer, words, heard, aside, terminal);
  }

  State withNow(Beats other) {
    return new State(facts, status, other, settings, layer, words, heard, aside, terminal);
  }

  public State withSettings(ViewSettings other) {
    return new State(facts, status, now, other, layer, words, heard, aside, terminal);
  }

  public State withLayer(Layer other) {
    return new State(facts, status, now, settings, other, words, heard, aside, terminal);
  }

  public State withWords(Words other) {
    return new State(facts, status, now, settings, layer, other, heard, aside, terminal);
  }

  public State withHeard(Heard other) {
    return new State(facts, status, now, settings, layer, words, other, aside, terminal);
  }

  State withAside(boolean other) {
    return new State(facts, status, now, settings, layer, words, heard, other, terminal);
  }

  public State withTerminal(Terminal other) {
    return new State(facts, status, now, settings, layer, words, heard, aside, other);
  }

  public State withSize(Size size) {
    return withTerminal(new Terminal(size, terminal.ascii()));
  }
}
