package hingetone.screen.view;

import hingetone.score.Role;
import hingetone.screen.Action;
import hingetone.screen.State;
import hingetone.screen.ViewSettings.Panel;
import hingetone.sequencer.Status;

/** What an action's thing stands at, in a word or two: {@code 80%}, {@code out}, {@code notes}. */
final class ActionValue {
  private ActionValue() {}

  /** The value; empty where there is none to tell. */
  static String of(Action action, State state) {
    Status band = state.status();
    return switch (action) {
      case SLOWER, FASTER, SLOWER_BY_FIVE, FASTER_BY_FIVE, TAP -> band.tempo() + " bpm";
      case RAMP -> band.ramp().map(ramp -> "to " + ramp.goal()).orElse("off");
      case DRUMS -> part(Role.DRUMS, band);
      case BASS -> part(Role.BASS, band);
      case CHORDS -> part(Role.CHORDS, band);
      case LEAD -> part(Role.LEAD, band);
      case DRUMS_SOFTER, DRUMS_LOUDER -> level(Role.DRUMS, band);
      case BASS_SOFTER, BASS_LOUDER -> level(Role.BASS, band);
      case CHORDS_SOFTER, CHORDS_LOUDER -> level(Role.CHORDS, band);
      case CLICK_SOFTER, CLICK_LOUDER -> level(Role.CLICK, band);
      case LEAD_SOFTER, LEAD_LOUDER -> level(Role.LEAD, band);
      case SOFTER, LOUDER -> band.volume() + "%";
      case SILENT_BARS -> silentBars(band);
      case GROOVE -> state.facts().groove();
      case CLICK -> onOff(band.metronome().on());
      case CLICK_WAY -> band.metronome().gap().clicked();
      case LOOP, LOOP_FROM, LOOP_TO, LOOP_CROSSING -> onOff(band.loop().isPresent());
      case KEY_UP, KEY_DOWN -> (band.keyShift() > 0 ? "+" : "") + band.keyShift();
      case EVERY_KEY -> onOff(band.keyWalk() != 0);
      case FAR -> onOff(state.settings().far());
      case AHEAD -> onOff(state.settings().shows(Panel.AHEAD));
      case PHRASES -> onOff(state.settings().shows(Panel.PHRASES));
      case NECK -> onOff(state.settings().shows(Panel.NECK));
      case RECORD -> state.heard().take().orElse("");
      case HEARD -> onOff(state.settings().shows(Panel.HEARD));
      case NAMES -> state.settings().noteNames() ? "notes" : "degrees";
      case POSITION -> state.facts().position().map(fret -> "fret " + fret).orElse("free");
      default -> "";
    };
  }

  private static String part(Role role, Status band) {
    return band.muted().contains(role) ? "out" : "in";
  }

  private static String level(Role role, Status band) {
    return band.levels().getOrDefault(role, 100) + "%";
  }

  private static String silentBars(Status band) {
    return band.dropsOut()
        ? band.silentBars().sounding() + " in, " + band.silentBars().silent() + " out"
        : "off";
  }

  private static String onOff(boolean on) {
    return on ? "on" : "off";
  }
}
