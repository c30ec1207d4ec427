package hingetone.midi;

import hingetone.score.Mark;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.text.Printable;
import hingetone.text.Stamp;
import hingetone.theory.Chord;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.TempoMap;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;

/**
 * Writes a score as a Standard MIDI File: format 1, {@value #TICKS} ticks a quarter.
 *
 * <p>The first track bears the title and holds tempos (always per quarter note), meters, key
 * signatures, a marker for each section and a text for each chord; the parts follow, one track for
 * each channel. The file begins with the count-in. Each place is rounded to a tick once, offsets in
 * microseconds at the tempo of their place.
 */
public final class MidiFile {
  /** What the file bears at its end. */
  public static final Stamp STAMP = new Stamp("mid");

  /** Ticks to the quarter note. */
  public static final int TICKS = 960;

  private static final int TEXT = 0x01;
  private static final int TRACK_NAME = 0x03;
  private static final int MARKER = 0x06;
  private static final int CUE_POINT = 0x07;
  private static final int END_OF_TRACK = 0x2F;
  private static final int TEMPO = 0x51;
  private static final int TIME_SIGNATURE = 0x58;
  private static final int KEY_SIGNATURE = 0x59;
  private static final int CLOCKS_A_QUARTER = 24;

  private final Score score;
  private final TempoMap tempos;
  private final Sequence sequence;

  private MidiFile(Score score) {
    this.score = score;
    this.tempos = score.tempoMap();
    try {
      this.sequence = new Sequence(Sequence.PPQ, TICKS);
    } catch (InvalidMidiDataException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Writes a score to a stream, which stays open. */
  public static void write(Score score, OutputStream output) throws IOException {
    MidiSystem.write(sequence(score), 1, output);
  }

  /** The bytes of the file. */
  public static byte[] bytes(Score score) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      write(score, bytes);
    } catch (IOException e) {
      throw new IllegalStateException("memory does not fail", e);
    }
    return bytes.toByteArray();
  }

  static Sequence sequence(Score score) {
    Sequence sequence = unstamped(score);
    MidiStamp.put(STAMP, sequence);
    return sequence;
  }

  /** The tracks without what the file bears at its end. */
  static Sequence unstamped(Score score) {
    MidiFile file = new MidiFile(score);
    file.addTitleTrack();
    Map<Integer, List<Part>> byChannel = new LinkedHashMap<>();
    for (Part part : score.parts()) {
      byChannel.computeIfAbsent(part.role().channel(), c -> new ArrayList<>()).add(part);
    }
    byChannel.values().forEach(file::addTrack);
    return file.sequence;
  }

  private void addTitleTrack() {
    Track track = sequence.createTrack();
    add(track, 0, text(TRACK_NAME, score.title()));
    for (TempoMap.Step step : tempos.steps()) {
      add(track, tick(step.at()), tempo(step.quartersPerMinute()));
    }
    addChanges(track, Mark.OfMeter.class, mark -> timeSignature(mark.meter()));
    addChanges(track, Mark.OfKey.class, mark -> keySignature(mark.key()));
    score
        .marks(Mark.OfSection.class)
        .forEach(mark -> add(track, tick(mark.at()), text(MARKER, mark.name())));
    score
        .marks(Mark.OfChord.class)
        .forEach(mark -> add(track, tick(mark.at()), text(TEXT, symbol(mark))));
    score
        .marks(Mark.OfCue.class)
        .forEach(mark -> add(track, tick(mark.at()), text(CUE_POINT, mark.words())));
    end(track);
  }

  private static String symbol(Mark.OfChord mark) {
    return mark.chord().map(Chord::symbol).orElse("N.C.");
  }

  /** Adds what changes with marks of a kind; the first of them holds from the start of the file. */
  private <M extends Mark> void addChanges(
      Track track, Class<M> kind, Function<M, MetaMessage> message) {
    Optional<MetaMessage> last = Optional.empty();
    for (M mark : score.marks(kind).toList()) {
      MetaMessage next = message.apply(mark);
      boolean changed = last.isEmpty() || !Arrays.equals(last.get().getData(), next.getData());
      if (changed) {
        add(track, last.isEmpty() ? 0 : tick(mark.at()), next);
      }
      last = Optional.of(next);
    }
  }

  private void addTrack(List<Part> parts) {
    Track track = sequence.createTrack();
    Role owner = ChannelSetup.owners(parts.stream().map(Part::role).toList(), Role::channel).get(0);
    add(track, 0, text(TRACK_NAME, owner.title()));
    ChannelSetup.of(score).stream()
        .filter(timed -> timed.role() == owner)
        .forEach(timed -> add(track, tick(timed), timed.message()));
    Map<Integer, Long> earliest = new HashMap<>();
    List<MidiEvent> notes = new ArrayList<>();
    for (TimedMessage timed : MidiEvents.of(parts)) {
      ShortMessage message = timed.message();
      long tick = Math.max(tick(timed), earliest.getOrDefault(message.getData1(), 0L));
      // A note that is shorter than a tick still takes one.
      earliest.put(message.getData1(), MidiEvents.isNoteOn(message) ? tick + 1 : tick);
      notes.add(new MidiEvent(message, tick));
    }
    notes.sort(
        Comparator.comparingLong(MidiEvent::getTick)
            .thenComparing(event -> (ShortMessage) event.getMessage(), MidiEvents.ORDER));
    notes.forEach(track::add);
    end(track);
  }

  private void end(Track track) {
    add(track, Math.max(tick(score.length()), track.ticks()), meta(END_OF_TRACK));
  }

  private long tick(Beats at) {
    return tick(at, Beats.ZERO);
  }

  private long tick(TimedMessage timed) {
    Beats quartersEachMicro = tempos.quartersPerMinute(timed.at()).dividedBy(Beats.of(60_000_000));
    return tick(timed.at(), quartersEachMicro.times(timed.offsetMicros()));
  }

  /**
   * The tick of a place and a shift, rounded once; whole quarters apart, which keeps numbers low.
   */
  private long tick(Beats at, Beats shift) {
    Beats place = at.plus(score.countIn());
    return Math.max(0, place.floor() * TICKS + place.fraction().plus(shift).toUnits(TICKS));
  }

  private static void add(Track track, long tick, MidiMessage message) {
    track.add(new MidiEvent(message, tick));
  }

  /** Microseconds a quarter, rounded to the nearest, in three bytes. */
  private static MetaMessage tempo(Beats quartersPerMinute) {
    long micros = Beats.of(60_000_000).dividedBy(quartersPerMinute).toUnits(1);
    return meta(TEMPO, (int) (micros >> 16), (int) (micros >> 8), (int) micros);
  }

  private static MetaMessage timeSignature(Meter meter) {
    int clocks = (int) meter.beatLength().toUnits(CLOCKS_A_QUARTER);
    int power = Integer.numberOfTrailingZeros(meter.denominator());
    return meta(TIME_SIGNATURE, meter.numerator(), power, clocks, 8);
  }

  /**
   * The signature of the key's notes; minor where the key is minor or blues, else written as major,
   * for a file has no other modes. Beyond seven accidentals it is that of the same sounds.
   */
  private static MetaMessage keySignature(Key key) {
    int signature = key.signature();
    int written = signature > 7 ? signature - 12 : signature < -7 ? signature + 12 : signature;
    String mode = key.mode().name();
    boolean minor = mode.equals("minor") || mode.equals("blues");
    return meta(KEY_SIGNATURE, written, minor ? 1 : 0);
  }

  private static MetaMessage text(int type, String text) {
    return meta(type, Printable.line(text).getBytes(StandardCharsets.UTF_8));
  }

  private static MetaMessage meta(int type, int... values) {
    byte[] bytes = new byte[values.length];
    for (int i = 0; i < values.length; i++) {
      bytes[i] = (byte) values[i];
    }
    return meta(type, bytes);
  }

  private static MetaMessage meta(int type, byte[] bytes) {
    try {
      return new MetaMessage(type, bytes, bytes.length);
    } catch (InvalidMidiDataException e) {
      throw new IllegalArgumentException(e.getMessage(), e);
    }
  }
}
