package hingetone.screen;

import hingetone.screen.picture.Size;
import hingetone.time.Beats;
import hingetone.time.Position;
import java.util.Optional;

/**
 * Everything that is visible.
 *
 * @param facts the chart's facts
 * @param band what the band is set to
 * @param phase what the band does
 * @param now where it is, in quarter notes from bar 1, laps counted on
 * @param settings what the player chose to see
 * @param layer what lies over the picture
 * @param notice something told in passing; empty when there is nothing
 * @param noticeBeats beats for which it stays
 * @param fault what is wrong with a device, and what to do
 * @param aside whether the terminal is given back as soon as the band stands still
 * @param ascii whether only ASCII can be shown
 * @param size the terminal's size
 */
public record State(
    ChartFacts facts,
    BandSettings band,
    Phase phase,
    Beats now,
    ViewSettings settings,
    Layer layer,
    String notice,
    int noticeBeats,
    Optional<String> fault,
    boolean aside,
    boolean ascii,
    Size size) {
  /** What the band does. */
  public enum Phase {
    STOPPED,
    PLAYING,
    PAUSED
  }

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

  /** The state before anything has happened. */
  public static State of(
      ChartFacts facts, BandSettings band, ViewSettings settings, boolean ascii, Size size) {
    Beats start = facts.form().startOf(1);
    return new State(
        facts,
        band,
        Phase.STOPPED,
        start,
        settings,
        new Layer.None(),
        "",
        0,
        Optional.empty(),
        false,
        ascii,
        size);
  }

  /** Where it is as bar and beat. */
  public Position position() {
    return facts.form().position(now);
  }

  /** Whether the bars before the form are being counted. */
  public boolean countsIn() {
    return now.isNegative() && phase != Phase.STOPPED;
  }

  State withFacts(ChartFacts facts) {
    return copy(facts, band, phase, now, settings, layer, fault);
  }

  public State withBand(BandSettings band) {
    return copy(facts, band, phase, now, settings, layer, fault);
  }

  public State withPhase(Phase phase) {
    return copy(facts, band, phase, now, settings, layer, fault);
  }

  State withNow(Beats now) {
    return copy(facts, band, phase, now, settings, layer, fault);
  }

  public State withSettings(ViewSettings settings) {
    return copy(facts, band, phase, now, settings, layer, fault);
  }

  public State withLayer(Layer layer) {
    return copy(facts, band, phase, now, settings, layer, fault);
  }

  public State withFault(Optional<String> fault) {
    return copy(facts, band, phase, now, settings, layer, fault);
  }

  State withAside(boolean aside) {
    return new State(
        facts, band, phase, now, settings, layer, notice, noticeBeats, fault, aside, ascii, size);
  }

  public State withSize(Size size) {
    return new State(
        facts, band, phase, now, settings, layer, notice, noticeBeats, fault, aside, ascii, size);
  }

  /** The same with something told for some beats. */
  State withNotice(String words, int beats) {
    return new State(
        facts, band, phase, now, settings, layer, words, beats, fault, aside, ascii, size);
  }

  private State copy(
      ChartFacts facts,
      BandSettings band,
      Phase phase,
      Beats now,
      ViewSettings settings,
      Layer layer,
      Optional<String> fault) {
    return new State(
        facts, band, phase, now, settings, layer, notice, noticeBeats, fault, aside, ascii, size);
  }
}
