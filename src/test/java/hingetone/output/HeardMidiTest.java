package hingetone.output;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.hearing.Alignment;
import hingetone.hearing.HeardNote;
import hingetone.hearing.Technique;
import hingetone.hearing.Transcription;
import hingetone.neck.Spot;
import hingetone.print.HeardBars;
import hingetone.text.reading.Source;
import hingetone.time.Beats;
import hingetone.time.TempoMap;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import org.junit.jupiter.api.Test;

/** Channels are counted from 1, as players count them. */
class HeardMidiTest {
  @Test
  void notes_one_after_the_other_share_channel_1_whatever_their_strings() throws Exception {
    assertThat(notesOn(note(0, 0.4, 67, 1), note(0.4, 0.8, 62, 2), note(0.8, 1, 57, 3)))
        .containsExactly("67 on channel 1", "62 on channel 1", "57 on channel 1");
  }

  @Test
  void where_two_sound_at_once_each_string_has_its_channel() throws Exception {
    assertThat(notesOn(note(0, 0.4, 62, 2), note(0, 0.4, 67, 1), note(0.4, 0.8, 64, 2)))
        .containsExactly("62 on channel 2", "67 on channel 1", "64 on channel 2");
  }

  /** Channel 10 is percussion in General MIDI 1. */
  @Test
  void a_tenth_string_leaves_out_the_channel_of_the_drums() throws Exception {
    assertThat(notesOn(note(0, 0.4, 31, 10), note(0, 0.4, 36, 9), note(0.4, 0.8, 26, 11)))
        .containsExactly("31 on channel 11", "36 on channel 9", "26 on channel 12");
  }

  /** 75 quarters a minute taken at 76.5: a quarter note lasts 0.784314 s, so 784,314 µs. */
  @Test
  void with_a_chart_the_notes_lie_in_its_bars_at_the_tempo_that_was_played() throws Exception {
    String yaml =
        "title: Slip\ntempo: 75\nsections:\n  a:\n    key: F minor\n    meter: 3/4\n    bars: |\n"
            + "      | Fm7 |\n  b:\n    key: G major\n    bars: |\n      | G / C / |\n";
    Form form = Form.of(ChartReader.read(new Source("slip.yaml", yaml)).value().orElseThrow());
    double quarter = 60 / 76.5;
    Transcription written =
        new Transcription(
            9,
            0,
            List.of(note(2 - quarter, 2, 60, 3), note(2 + 3 * quarter, 2 + 4 * quarter, 67, 3)),
            List.of());
    List<HeardNote> notes = written.notes().stream().map(Transcription.Placed::note).toList();
    Alignment played =
        Alignment.find(
                more(notes, quarter),
                TempoMap.of(Beats.of(75)),
                Beats.ONE,
                2,
                place -> form.bar(1).key())
            .orElseThrow();
    assertThat(played.ratio()).isCloseTo(1.02, within(1e-9));
    HeardBars bars = HeardBars.of(form, played, written);
    Sequence sequence = sequence(written, Optional.of(bars));
    assertThat(on(sequence.getTracks()[1])).containsExactly("60 at 1920", "67 at 5760");
    assertThat(metas(sequence.getTracks()[0]))
        .contains(
            "0 meter 3/4", "0 flats 4", "0 quarter of 784314 us", "2880 text Fm7", "2880 marker a")
        .contains("5760 meter 4/4", "5760 flats -1", "5760 text G", "7680 text C");
  }

  /** Notes enough to find the tempo by. */
  private static List<HeardNote> more(List<HeardNote> notes, double quarter) {
    List<HeardNote> more = new ArrayList<>(notes);
    for (int i = 4; i < 30; i++) {
      more.add(note(2 + i * quarter, 2.1 + i * quarter, 60, 3).note());
    }
    return more;
  }

  private static List<String> on(Track line) {
    List<String> on = new ArrayList<>();
    for (int i = 0; i < line.size(); i++) {
      if (line.get(i).getMessage() instanceof ShortMessage message
          && message.getCommand() == ShortMessage.NOTE_ON) {
        on.add(message.getData1() + " at " + line.get(i).getTick());
      }
    }
    return on;
  }

  private static List<String> metas(Track head) {
    List<String> metas = new ArrayList<>();
    for (int i = 0; i < head.size(); i++) {
      if (head.get(i).getMessage() instanceof MetaMessage meta) {
        byte[] data = meta.getData();
        String said =
            switch (meta.getType()) {
              case 0x01 -> "text " + new String(data, StandardCharsets.UTF_8);
              case 0x06 -> "marker " + new String(data, StandardCharsets.UTF_8);
              case 0x51 -> "quarter of " + new BigInteger(1, data) + " us";
              case 0x58 -> "meter " + data[0] + "/" + (1 << data[1]);
              case 0x59 -> "flats " + -data[0];
              default -> "other";
            };
        metas.add(head.get(i).getTick() + " " + said);
      }
    }
    return metas;
  }

  private static Sequence sequence(Transcription written, Optional<HeardBars> bars)
      throws Exception {
    ByteArrayOutputStream file = new ByteArrayOutputStream();
    HeardMidi.write(Path.of("quay.mid"), written, bars, file);
    return MidiSystem.getSequence(new ByteArrayInputStream(file.toByteArray()));
  }

  private static Transcription.Placed note(double at, double end, int key, int string) {
    HeardNote note = new HeardNote(at, end, -20, key, key, Technique.PLAIN, false, List.of(), 0.9);
    return new Transcription.Placed(note, Optional.of(new Spot(string, 3)));
  }

  private static List<String> notesOn(Transcription.Placed... notes) throws Exception {
    Transcription written = new Transcription(1, 0, List.of(notes), List.of());
    Track line = sequence(written, Optional.empty()).getTracks()[1];
    List<String> on = new ArrayList<>();
    for (int i = 0; i < line.size(); i++) {
      if (line.get(i).getMessage() instanceof ShortMessage message
          && message.getCommand() == ShortMessage.NOTE_ON) {
        on.add(message.getData1() + " on channel " + (message.getChannel() + 1));
      }
    }
    return on;
  }
}
