package hingetone.play;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.journal.PracticeLog;
import hingetone.midi.Received;
import hingetone.screen.Message;
import hingetone.take.TakeEvent;
import hingetone.take.TakeFiles;
import hingetone.take.TakeSummary;
import java.nio.file.Files;
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
import org.junit.jupiter.api.io.TempDir;

class TakeKeeperTest {
  private static final long BEAT = 500_000_000;
  private static final String CHART =
      """
      title: Two doors
      tempo: 120
      sections:
        one: {key: E minor, bars: '| Em7 | D7 |'}
        two: {key: G minor, bars: '| Gm7 | C7 |'}
      """;

  @TempDir Path folder;

  private final List<Message> told = new ArrayList<>();

  private TakeKeeper keeper(Optional<String> name) {
    Performance.Takes takes =
        new Performance.Takes(
            new TakeFiles(folder), CHART, 0, name, new PracticeLog(folder.resolve("log")));
    return new TakeKeeper(takes, Runnable::run, told::add);
  }

  /** A bar with a note bent by a whole tone on its second beat. */
  private static void bar(TakeKeeper keeper, int number, long from) {
    keeper.add(new TakeEvent.Bar(number, 0), from);
    for (int beat = 1; beat <= 4; beat++) {
      long at = from + (beat - 1) * BEAT;
      keeper.add(new TakeEvent.Beat(at, beat), at);
      if (beat == 2) {
        sent(keeper, at + BEAT / 2, 0x90, 64, 90);
        sent(keeper, at + BEAT * 3 / 4, 0xE0, 127, 127);
        sent(keeper, at + BEAT, 0x80, 64, 0);
        sent(keeper, at + BEAT, 0xE0, 0, 64);
      }
    }
  }

  private static void sent(TakeKeeper keeper, long at, int command, int first, int second) {
    keeper.add(new TakeEvent.Sent(new Received(at, command, 2, first, second)), at);
  }

  private List<String> files() throws Exception {
    try (var all = Files.list(folder)) {
      return all.map(f -> f.getFileName().toString()).sorted().toList();
    }
  }

  private List<String> listing(String name) throws Exception {
    Sequence sequence = MidiSystem.getSequence(folder.resolve(name + ".mid").toFile());
    List<String> lines = new ArrayList<>();
    for (Track track : sequence.getTracks()) {
      for (int i = 0; i < track.size(); i++) {
        String at = track.get(i).getTick() / 960.0 + " ";
        if (track.get(i).getMessage() instanceof ShortMessage m
            && (m.getCommand() == 0x90 || m.getCommand() == 0xE0)) {
          lines.add(
              at + Integer.toHexString(m.getCommand()) + " " + m.getData1() + " " + m.getData2());
        } else if (track.get(i).getMessage() instanceof MetaMessage m
            && List.of(0x01, 0x06, 0x07).contains(m.getType())) {
          lines.add(at + new String(m.getData(), "UTF-8"));
        }
      }
    }
    return lines;
  }

  @Test
  void a_take_is_the_chart_and_the_notes_in_the_bars_as_they_were_played() throws Exception {
    TakeKeeper keeper = keeper(Optional.of("evening"));
    bar(keeper, 0, 0);
    bar(keeper, 1, 4 * BEAT);
    bar(keeper, 4, 8 * BEAT);
    bar(keeper, 5, 12 * BEAT);
    keeper.close();
    assertThat(files()).containsExactly("evening.mid", "evening.yaml");
    assertThat(Files.readString(folder.resolve("evening.yaml"))).isEqualTo(CHART);
    assertThat(listing("evening"))
        .contains(
            "0.0 bar 0",
            "4.0 one",
            "4.0 Em7",
            "8.0 bar 4",
            "8.0 two",
            "8.0 C7",
            "12.0 Em7",
            "1.5 90 64 90",
            "5.5 90 64 90",
            "9.5 90 64 90",
            "13.5 90 64 90",
            // A whole tone of twelve: 8192 + 8192 * 2 / 12 = 9557 = 74 * 128 + 85.
            "5.75 e0 85 74");
    TakeSummary summary = TakeSummary.of(new TakeFiles(folder), "evening");
    assertThat(summary.chart()).contains("Two doors");
    assertThat(summary.notes()).isEqualTo(4);
    assertThat(summary.seconds()).isBetween(7.0, 8.1);
  }

  @Test
  void what_was_played_last_is_kept_though_nothing_was_recorded() throws Exception {
    TakeKeeper keeper = keeper(Optional.empty());
    keeper.keepLast();
    assertThat(told)
        .containsExactly(new Message.Notice("Nothing was played lately that could be kept."));
    for (int bar = 1; bar <= 200; bar++) {
      bar(keeper, bar, (bar - 1) * 4 * BEAT);
    }
    keeper.keepLast();
    String name = new TakeFiles(folder).names().get(0);
    int notes = TakeSummary.of(new TakeFiles(folder), name).notes();
    // Four minutes are 120 bars of two seconds, the bar that goes on beside them.
    assertThat(notes).isBetween(120, 122);
    assertThat(listing(name)).anyMatch(line -> line.startsWith("0.0 bar "));
  }

  @Test
  void a_journal_left_by_a_kill_is_kept_at_the_next_start() throws Exception {
    TakeFiles files = new TakeFiles(folder);
    try (TakeFiles.Journal journal = files.begin("cut off", CHART)) {
      journal.add(new TakeEvent.Bar(1, 0));
      journal.add(new TakeEvent.Beat(0, 1));
      journal.add(new TakeEvent.Beat(BEAT, 2));
      journal.add(new TakeEvent.Sent(new Received(BEAT / 2, 0x90, 0, 64, 90)));
    }
    Files.writeString(
        folder.resolve("cut off.journal"), "beat 1000", java.nio.file.StandardOpenOption.APPEND);
    keeper(Optional.empty());
    assertThat(told).contains(new Message.Notice("Kept from last time: cut off"));
    assertThat(files()).containsExactly("cut off.mid", "cut off.yaml");
    assertThat(listing("cut off")).contains("0.5 90 64 90");
  }

  @Test
  void a_take_that_another_program_writes_is_left_alone() throws Exception {
    TakeFiles files = new TakeFiles(folder);
    try (TakeFiles.Journal journal = files.begin("going on", CHART)) {
      keeper(Optional.empty());
      assertThat(files()).containsExactly("going on.journal", "going on.yaml");
      assertThat(files.free("going on")).isEqualTo("going on-2");
      assertThat(journal.name()).isEqualTo("going on");
    }
  }

  @Test
  void a_folder_that_cannot_be_written_is_a_line_and_the_music_goes_on() throws Exception {
    Files.writeString(folder.resolve("takes"), "a file");
    Performance.Takes takes =
        new Performance.Takes(
            new TakeFiles(folder.resolve("takes")),
            CHART,
            0,
            Optional.empty(),
            new PracticeLog(folder.resolve("log")));
    TakeKeeper keeper = new TakeKeeper(takes, Runnable::run, told::add);
    keeper.recordOrEnd();
    bar(keeper, 1, 0);
    assertThat(told.get(told.size() - 1).toString()).contains("No take can be recorded");
  }
}
