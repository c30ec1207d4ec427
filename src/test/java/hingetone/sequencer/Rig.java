package hingetone.sequencer;

import hingetone.score.Score;
import hingetone.time.Playhead;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.IntFunction;
import javax.sound.midi.ShortMessage;

/**
 * A timeline on a bench: time goes where the test says, and laps are made when they are asked for
 * unless a test says otherwise.
 */
public final class Rig implements MessageSink {
  private static final String[] NAMES = {
    "C", "C#", "D", "D#", "E", "F", "F#", "G", "G#", "A", "A#", "B"
  };

  final Playhead playhead = new Playhead();
  public final ReadyLaps laps;
  final Timeline timeline;
  public final List<Sent> sent = new ArrayList<>();
  final List<SequencerEvent> moments = new ArrayList<>();
  long now;

  /** A message and when it left. */
  public record Sent(long due, ShortMessage message) {
    boolean isNoteOn() {
      return message.getCommand() == ShortMessage.NOTE_ON && message.getData2() > 0;
    }

    boolean isNoteOff() {
      return message.getCommand() == ShortMessage.NOTE_OFF;
    }

    /** {@code 500 on A1 v90 ch1}: milliseconds from the first bar line, kind, note, channel. */
    String line() {
      int key = message.getData1();
      String note = NAMES[key % 12] + (key / 12 - 1);
      double millis = (due - Timeline.LEAD) / 1e6;
      String what =
          isNoteOn()
              ? "on " + note + " v" + message.getData2()
              : isNoteOff() ? "off " + note : other();
      String time = millis == Math.rint(millis) ? "" + (long) millis : "" + millis;
      return time + " " + what + " ch" + message.getChannel();
    }

    private String other() {
      return switch (message.getCommand()) {
        case ShortMessage.CONTROL_CHANGE ->
            "control " + message.getData1() + "=" + message.getData2();
        case ShortMessage.PROGRAM_CHANGE -> "program " + message.getData1();
        default -> Integer.toHexString(message.getStatus());
      };
    }
  }

  public Rig(IntFunction<Score> source) {
    this(source, PlaySetup.USUAL.withoutMidiClock().withVolume(100));
  }

  public Rig(IntFunction<Score> source, PlaySetup setup) {
    this(source, setup, Runnable::run);
  }

  /**
   * A timeline whose laps are made by a worker.
   *
   * @param worker does what it is given, sooner or later
   */
  Rig(IntFunction<Score> source, PlaySetup setup, Executor worker) {
    this.laps = new ReadyLaps(source::apply, parts -> Optional.empty(), this::tell, worker);
    this.timeline = new Timeline(laps, setup, new ClockSignals(setup.midiClock()), true, playhead);
  }

  static Rig playing(Score everyLap) {
    Rig rig = new Rig(n -> everyLap);
    rig.send(new Command.Play());
    return rig;
  }

  public Rig send(Command command) {
    timeline.apply(command, this);
    return this;
  }

  /** Goes on to a moment, in milliseconds after the first bar line. */
  public Rig to(double millis) {
    now = Timeline.LEAD + Math.round(millis * 1e6);
    timeline.advance(now, this);
    return this;
  }

  /** Another band from now on. */
  Rig follow(IntFunction<Score> other) {
    laps.follow(other::apply);
    return send(new Command.Follow());
  }

  /** The notes so far as readable lines. */
  List<String> notes() {
    return sent.stream().filter(s -> s.isNoteOn() || s.isNoteOff()).map(Sent::line).toList();
  }

  List<String> strikes() {
    return sent.stream().filter(Sent::isNoteOn).map(Sent::line).toList();
  }

  List<ShortMessage> messages() {
    return sent.stream().map(Sent::message).toList();
  }

  public List<String> lines() {
    return sent.stream().map(Sent::line).toList();
  }

  <M extends SequencerEvent> List<M> moments(Class<M> kind) {
    return moments.stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  /** The place at a moment, in milliseconds after the first bar line. */
  String place(double millis) {
    return playhead.at(Timeline.LEAD + Math.round(millis * 1e6)).position().toString();
  }

  @Override
  public void send(long due, ShortMessage message) {
    sent.add(new Sent(due, message));
  }

  @Override
  public void tell(SequencerEvent moment) {
    moments.add(moment);
  }
}
