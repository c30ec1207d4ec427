package hingetone.backing;

import hingetone.chart.Chart;
import hingetone.groove.Feel;
import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import hingetone.groove.Human;
import hingetone.midi.MidiFile;
import hingetone.score.Note;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.text.Page;
import hingetone.time.Meter;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;

/**
 * Measures what a groove's exported MIDI files hold, over the demo charts, some laps of each: read
 * back with the JDK's own reader, not with the code that wrote them.
 */
final class ExportMeasure {
  /** The percussion keys of General MIDI System Level 1, its percussion key map. */
  private static final int LOWEST_DRUM = 35;

  private static final int HIGHEST_DRUM = 81;

  final Groove groove;
  int notes;
  int unpaired;
  int wrongDrums;
  int wrongPrograms;
  int unequalBytes;

  /** How far a note lies from its place at most, strums apart. */
  double mostOff;

  /** How much later than that a strummed chord's last note comes at most. */
  double mostStrum;

  int mostTouch;

  /** How often a note lies at which tick of its pair, everything exactly in place. */
  final Map<Integer, Integer> inPair = new TreeMap<>();

  ExportMeasure(Groove groove, int laps) throws IOException {
    this.groove = groove;
    List<Meter> meters = groove.meters().isEmpty() ? List.of(Meter.COMMON) : groove.meters();
    for (String name : BandMeasure.CHARTS) {
      for (Meter meter : meters) {
        measure(BandMeasure.chart(name, groove.name(), meter), laps);
      }
    }
  }

  private void measure(Chart chart, int laps) throws IOException {
    Backing played = Backing.of(chart, Grooves.builtIn());
    Backing again = Backing.of(chart, Grooves.builtIn());
    Backing exact = played.exact();
    for (int lap = 1; lap <= laps; lap++) {
      byte[] bytes = MidiFile.bytes(played.lapOf(lap, laps));
      unequalBytes += Arrays.equals(bytes, MidiFile.bytes(again.lapOf(lap, laps))) ? 0 : 1;
      readBack(bytes);
      compare(played.lap(lap), exact.lap(lap));
      for (Track track : sequence(MidiFile.bytes(exact.lap(lap))).getTracks()) {
        places(track);
      }
    }
  }

  private static Sequence sequence(byte[] bytes) throws IOException {
    try {
      return MidiSystem.getSequence(new ByteArrayInputStream(bytes));
    } catch (InvalidMidiDataException e) {
      throw new IOException(e);
    }
  }

  private void readBack(byte[] bytes) throws IOException {
    for (Track track : sequence(bytes).getTracks()) {
      Map<Integer, Integer> on = new HashMap<>();
      for (int i = 0; i < track.size(); i++) {
        if (track.get(i).getMessage() instanceof ShortMessage m) {
          read(m, on);
        }
      }
      unpaired += on.values().stream().mapToInt(Math::abs).sum();
    }
  }

  private void read(ShortMessage m, Map<Integer, Integer> on) {
    int key = 128 * m.getChannel() + m.getData1();
    boolean drums = m.getChannel() == 9;
    if (isStrike(m)) {
      notes++;
      on.merge(key, 1, Integer::sum);
      boolean known = m.getData1() >= LOWEST_DRUM && m.getData1() <= HIGHEST_DRUM;
      wrongDrums += drums && !known ? 1 : 0;
    } else if (m.getCommand() == ShortMessage.NOTE_OFF || m.getCommand() == ShortMessage.NOTE_ON) {
      on.merge(key, -1, Integer::sum);
    } else if (m.getCommand() == ShortMessage.PROGRAM_CHANGE && !drums) {
      boolean bass = m.getChannel() == Role.BASS.channel();
      int own = groove.sound(bass ? Role.BASS : Role.CHORDS).program();
      wrongPrograms += m.getData1() == own ? 0 : 1;
    }
  }

  private static boolean isStrike(ShortMessage m) {
    return m.getCommand() == ShortMessage.NOTE_ON && m.getData2() > 0;
  }

  private void places(Track track) {
    int pair = (int) groove.feel().pair().toUnits(MidiFile.TICKS);
    for (int i = 0; i < track.size(); i++) {
      MidiEvent event = track.get(i);
      if (event.getMessage() instanceof ShortMessage m && isStrike(m)) {
        inPair.merge((int) (event.getTick() % pair), 1, Integer::sum);
      }
    }
  }

  /** Note by note, how far from its exact place and strength each is played. */
  private void compare(Score played, Score exact) {
    Human human = groove.human();
    for (Role role : List.of(Role.DRUMS, Role.BASS, Role.CHORDS)) {
      List<Note> notes = played.part(role).orElseThrow().notes();
      List<Note> places = exact.part(role).orElseThrow().notes();
      List<Note> left = new ArrayList<>(places);
      for (Note note : notes) {
        Note place =
            left.stream()
                .filter(p -> p.onset().equals(note.onset()) && p.key() == note.key())
                .findFirst()
                .orElseThrow();
        left.remove(place);
        Human.Lane lane = Human.Lane.of(role, note.key());
        double off = (note.offsetMicros() - place.offsetMicros()) / 1000.0 - human.late(lane);
        if (role == Role.CHORDS) {
          mostStrum = Math.max(mostStrum, off - human.timingMillis());
          mostOff = Math.max(mostOff, -off);
        } else {
          mostOff = Math.max(mostOff, Math.abs(off));
        }
        mostTouch = Math.max(mostTouch, Math.abs(note.velocity() - place.velocity()));
      }
    }
  }

  /** How many notes lie at a tick of their pair. */
  int at(int tick) {
    return inPair.getOrDefault(tick, 0);
  }

  /** Notes of a swung groove that lie where a straight off-beat would. */
  int straight() {
    int half = (int) groove.feel().pair().toUnits(MidiFile.TICKS) / 2;
    return groove.feel().percent() == Feel.STRAIGHT_PERCENT ? 0 : at(half);
  }

  /** Where the stated percentage puts it, to the nearest tick. */
  int offBeatDue() {
    double pair = groove.feel().pair().toUnits(MidiFile.TICKS);
    return (int) Math.round(pair * groove.feel().percent() / 100);
  }

  String row() {
    return String.format(
        Locale.ROOT,
        "| %s | %,d | %d | %d | %d | %d | %,d at %d, %d | ±%.1f of ±%d | %.1f of %d | %d of %d |",
        groove.name(),
        notes,
        unpaired,
        wrongDrums,
        wrongPrograms,
        unequalBytes,
        at(offBeatDue()),
        offBeatDue(),
        straight(),
        mostOff,
        groove.human().timingMillis(),
        mostStrum,
        groove.chords().strumMillis(),
        mostTouch,
        groove.human().touch());
  }

  /** Prints the table of {@code src/docs/band.md}, or writes it into the page named. */
  public static void main(String[] args) throws IOException {
    StringBuilder table = new StringBuilder();
    table.append("| exported | notes | unpaired | drums | programs | bytes | off-beat, straight |");
    table.append(" timing, ms | strum, ms | touch |\n|---|---|---|---|---|---|---|---|---|---|\n");
    for (Groove groove : Grooves.builtIn().all()) {
      table.append(new ExportMeasure(groove, BandMeasure.LAPS).row()).append('\n');
    }
    if (args.length == 0) {
      System.out.print(table);
    } else {
      Page.replaceTable(Path.of(args[0]), "| exported |", table.toString());
    }
  }
}
