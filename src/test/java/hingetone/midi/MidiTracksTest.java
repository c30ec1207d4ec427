package hingetone.midi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MidiTracksTest {
  private static final String HEADER = "4D546864 00000006 0001 0002 0060";

  @TempDir Path folder;

  private MidiTracks read(String hex) throws IOException {
    byte[] bytes = HexFormat.of().parseHex(hex.replaceAll("\\s", ""));
    return MidiTracks.read(Files.write(folder.resolve("file.mid"), bytes));
  }

  /** The file of four tracks that Standard MIDI Files 1.0 gives as its example (from memory). */
  @Test
  void the_example_of_the_standard_is_read() throws IOException {
    MidiTracks file =
        read(
            "4D546864 00000006 0001 0004 0060"
                + "4D54726B 00000014 00FF5804 04021808 00FF5103 07A120 8300FF2F00"
                + "4D54726B 00000010 00C005 81 40 90 4C20 81404C00 00FF2F00"
                + "4D54726B 0000000F 00C12E 60914340 82204300 00FF2F00"
                + "4D54726B 00000015 00C246 00923060 003C60 83003000 003C00 00FF2F00");
    assertThat(file.quarter()).isEqualTo(96);
    assertThat(file.tracks()).hasSize(4);
    assertThat(file.ticks()).isEqualTo(384);
    MidiTracks.Meta tempo = file.tracks().get(0).texts().get(1);
    assertThat(HexFormat.of().formatHex(tempo.data())).isEqualTo("07a120");
    assertThat(file.tracks().get(1).messages())
        .containsExactly(
            new Received(0, 0xC0, 0, 5, 0),
            new Received(192, 0x90, 0, 76, 32),
            new Received(384, 0x90, 0, 76, 0));
  }

  @Test
  void each_way_of_being_broken_has_its_sentence() {
    String[][] broken = {
      {"", "is empty."},
      {"52494646", "is no MIDI file."},
      {"4D546864 00000006 0002 0002 0060", "is a MIDI file of format 2"},
      {"4D546864 00000006 0001 0002 E728", "counts in frames of film"},
      {"4D546864 00000006 0001 0002 0000", "no ticks in a quarter note"},
      {"4D546864 7FFFFFFF 0001 0002 0060", "has no tracks."},
      {HEADER, "has no tracks."},
      {HEADER + "4D54726B 7FFFFFFF 00", "breaks off in its track 1."},
      {HEADER + "4D54726B 00000003 00 4C 20", "is damaged: its track 1"},
      {HEADER + "4D54726B 00000003 00 90 4C", "is damaged: its track 1"},
      {HEADER + "4D54726B 00000004 00 90 4C FF", "is damaged: its track 1"},
      {HEADER + "4D54726B 00000005 FFFFFFFFFF", "is damaged: its track 1"},
      {HEADER + "4D54726B 00000008 00 FF 01 FFFFFF7F 00", "is damaged: its track 1"},
    };
    for (String[] file : broken) {
      assertThatThrownBy(() -> read(file[0]))
          .isInstanceOf(IOException.class)
          .hasMessageContaining(file[1]);
    }
  }

  @Test
  void chunks_of_other_kinds_are_passed_over() throws IOException {
    String other = HexFormat.of().formatHex("XyZw".getBytes(StandardCharsets.US_ASCII));
    MidiTracks file =
        read(HEADER + other + "00000002 FFFF" + "4D54726B 00000004 00FF2F00" + other + "00");
    assertThat(file.tracks()).hasSize(1);
  }
}
