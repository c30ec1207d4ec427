package hingetone.midi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.score.Score;
import hingetone.time.Beats;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import org.junit.jupiter.api.Test;

/** Places are given in thousands of ticks; channels are counted from 1 as players count them. */
class BentLineTest {
  private static final double QUARTERS = 1000.0 / 960;

  @Test
  void a_bent_note_and_a_plain_one_read_as_they_were_played() throws Exception {
    assertThat(listing(note(0.1, 0.5, 0, 67, bend(0.2, 1), bend(0.3, 2)), note(0.5, 0.8, 0, 70)))
        .containsExactly(
            "0 ch 1 control 101=0", // MIDI 1.0 detailed specification: registered parameter 0 is
            "0 ch 1 control 100=0", // the pitch bend sensitivity, data entry in semitones and cents
            "0 ch 1 control 6=12",
            "0 ch 1 control 38=0",
            "0 ch 1 control 101=127",
            "0 ch 1 control 100=127",
            "0 ch 1 program 27",
            "100 ch 1 bent 0 cents",
            "100 ch 1 on 67",
            "200 ch 1 bent 100 cents",
            "300 ch 1 bent 200 cents",
            "500 ch 1 off 67",
            "500 ch 1 bent 0 cents",
            "500 ch 1 on 70",
            "800 ch 1 off 70");
  }

  @Test
  void every_bend_within_an_octave_reads_back_within_a_cent() throws Exception {
    for (int cents = -1200; cents <= 1200; cents += 7) {
      List<ShortMessage> messages = messages(note(0, 1, 0, 60, bend(0.5, cents / 100.0)));
      ShortMessage wheel =
          messages.stream()
              .filter(m -> m.getCommand() == ShortMessage.PITCH_BEND)
              .reduce((first, last) -> last)
              .orElseThrow();
      assertThat(cents(wheel)).isCloseTo(cents, within(1.0));
    }
  }

  @Test
  void a_bend_further_than_the_range_stops_at_its_end() throws Exception {
    assertThat(listing(note(0, 1, 0, 60, bend(0.4, 13), bend(0.6, -13))))
        .contains("400 ch 1 bent 1200 cents", "600 ch 1 bent -1200 cents");
  }

  @Test
  void two_strings_at_once_have_a_channel_each_with_its_own_bend_range_and_bend() throws Exception {
    List<String> listing = listing(note(0.1, 0.9, 0, 64), note(0.1, 0.9, 1, 67, bend(0.4, -0.5)));
    assertThat(listing).contains("0 ch 1 control 6=12", "0 ch 2 control 6=12");
    assertThat(listing.stream().filter(line -> !line.startsWith("0 ")))
        .containsExactly(
            "100 ch 1 bent 0 cents",
            "100 ch 2 bent 0 cents",
            "100 ch 1 on 64",
            "100 ch 2 on 67",
            "400 ch 2 bent -50 cents",
            "900 ch 1 off 64",
            "900 ch 2 off 67");
  }

  @Test
  void the_count_in_comes_before_bar_1_and_what_lies_before_it_is_its_start() throws Exception {
    ByteArrayOutputStream file = new ByteArrayOutputStream();
    List<BentLine.Note> notes = List.of(note(-2, 0.1, 0, 60), note(0.2, 0.4, 0, 62));
    BentLine.write(head(Beats.ONE), notes, file);
    Track line =
        MidiSystem.getSequence(new ByteArrayInputStream(file.toByteArray())).getTracks()[1];
    assertThat(listing(line)).contains("0 ch 1 on 60", "1160 ch 1 on 62", "1360 ch 1 off 62");
  }

  private static Score head(Beats countIn) {
    return new Score("Quay", countIn, Beats.ZERO, List.of(), List.of());
  }

  private static BentLine.Note note(
      double at, double end, int channel, int key, BentLine.Bend... bends) {
    return new BentLine.Note(at * QUARTERS, end * QUARTERS, channel, key, 90, List.of(bends));
  }

  private static BentLine.Bend bend(double at, double semitones) {
    return new BentLine.Bend(at * QUARTERS, semitones);
  }

  private static List<String> listing(BentLine.Note... notes) throws Exception {
    return listing(line(notes));
  }

  private static List<String> listing(Track line) {
    List<String> listing = new ArrayList<>();
    for (int i = 0; i < line.size(); i++) {
      if (line.get(i).getMessage() instanceof ShortMessage message) {
        listing.add(
            "%d ch %d %s"
                .formatted(line.get(i).getTick(), message.getChannel() + 1, described(message)));
      }
    }
    return listing;
  }

  private static List<ShortMessage> messages(BentLine.Note... notes) throws Exception {
    Track line = line(notes);
    return IntStream.range(0, line.size())
        .mapToObj(i -> line.get(i).getMessage())
        .filter(ShortMessage.class::isInstance)
        .map(ShortMessage.class::cast)
        .toList();
  }

  private static Track line(BentLine.Note... notes) throws Exception {
    ByteArrayOutputStream file = new ByteArrayOutputStream();
    BentLine.write(head(Beats.ZERO), List.of(notes), file);
    return MidiSystem.getSequence(new ByteArrayInputStream(file.toByteArray())).getTracks()[1];
  }

  private static String described(ShortMessage message) {
    return switch (message.getCommand()) {
      case ShortMessage.NOTE_ON -> "on " + message.getData1();
      case ShortMessage.NOTE_OFF -> "off " + message.getData1();
      case ShortMessage.PITCH_BEND -> "bent %d cents".formatted(Math.round(cents(message)));
      case ShortMessage.PROGRAM_CHANGE -> "program " + message.getData1();
      default -> "control " + message.getData1() + "=" + message.getData2();
    };
  }

  /** What a synthesizer makes of the wheel's 14 bits, ±12 semitones wide. */
  private static double cents(ShortMessage message) {
    return ((message.getData2() << 7 | message.getData1()) - 8192) * 1200.0 / 8192;
  }
}
