package hingetone.hearing.live;

import hingetone.hearing.signal.RecentSamples;
import hingetone.hearing.signal.Sampling;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One string at a time, heard while it is played: the stroke as soon as its pitch can be told
 * ({@link FirstHearing}), then where its pitch goes, then its end. Meant for what must answer at
 * once; {@link hingetone.hearing.Ear} hears more, later.
 */
public final class LiveEar {
  /** How often the pitch of a note that sounds is looked at: every 23 ms. */
  private static final int LOOK = 512;

  /** The stretch that is looked at: 46 ms, five periods of a low E. */
  private static final int STRETCH = 1024;

  /** A note has ended so far below its loudest, or below the floor. */
  private static final double FALLEN_DB = 30;

  private static final double FLOOR_DB = -55;

  /** Pitch moves of less than this part of a semitone are none. */
  private static final double MOVED = 0.15;

  /** A jump by more than this is another note, or a mistake; no string is bent so far. */
  private static final double FARTHEST_BEND = 3.5;

  private final FirstHearing attacks = new FirstHearing();
  private final RecentSamples tape = new RecentSamples(1 << 13);
  private long next = LOOK;
  private Optional<Double> sounding = Optional.empty();
  private double struck;
  private double loudest;

  /** What is heard, with its time in seconds from the start. */
  public sealed interface Event {
    double at();
  }

  /**
   * A note is struck.
   *
   * @param midi its pitch, a MIDI number with fractions
   * @param decibels how loud the sound is then, to full scale
   */
  public record Struck(double at, double midi, double decibels) implements Event {}

  /** The pitch of the note that sounds has moved. */
  public record Moved(double at, double midi) implements Event {}

  /** The note that sounded has ended. */
  public record Ended(double at) implements Event {}

  /** Takes more sound, at {@link Sampling#RATE}, ±1; gives what is heard in it. */
  public List<Event> hear(float[] samples) {
    List<Event> events = new ArrayList<>();
    tape.add(samples, samples.length);
    for (FirstHearing.Attack attack : attacks.hear(samples)) {
      sounding.ifPresent(before -> events.add(new Ended(attack.at())));
      sounding = Optional.of(attack.midi());
      struck = attack.midi();
      loudest = level(tape.end());
      events.add(new Struck(attack.at(), attack.midi(), loudest));
    }
    for (; next <= tape.end(); next += LOOK) {
      sounding.ifPresent(now -> follow(now, events));
    }
    return events;
  }

  private void follow(double now, List<Event> events) {
    double at = (double) next / Sampling.RATE;
    double level = level(next);
    loudest = Math.max(loudest, level);
    if (level < Math.max(FLOOR_DB, loudest - FALLEN_DB)) {
      sounding = Optional.empty();
      events.add(new Ended(at));
      return;
    }
    float[] stretch = new float[STRETCH];
    tape.copy(next - STRETCH, stretch);
    FirstHearing.pitch(stretch)
        .filter(midi -> Math.abs(midi - now) > MOVED && Math.abs(midi - struck) < FARTHEST_BEND)
        .ifPresent(
            midi -> {
              sounding = Optional.of(midi);
              events.add(new Moved(at, midi));
            });
  }

  private double level(long end) {
    float[] last = new float[LOOK];
    tape.copy(end - LOOK, last);
    double energy = 0;
    for (float sample : last) {
      energy += sample * sample;
    }
    return Sampling.decibels(Math.sqrt(energy / LOOK));
  }
}
