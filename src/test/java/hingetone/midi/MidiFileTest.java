package hingetone.midi;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.score.Mark;
import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.theory.Chord;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Tempo;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MidiFileTest {
  private static final Note KICK = new Note(Beats.ZERO, Beats.of(1, 4), 36, 110);

  @Test
  void a_part_that_sounds_otherwise_from_a_place_changes_its_program_just_before_it()
      throws Exception {
    Sound picked = new Sound(34, 90, 64, 10);
    Sound fretless = new Sound(35, 80, 50, 30);
    Note early = new Note(Beats.of(4), Beats.ONE, 40, 90, -20_000);
    Score score =
        new Score(
            "",
            Beats.ZERO,
            Beats.of(8),
            List.of(
                new Mark.OfSound(Beats.ZERO, Role.BASS, picked),
                new Mark.OfSound(Beats.of(4), Role.BASS, fretless)),
            List.of(new Part(Role.BASS, picked, List.of(early))));
    List<String> lines = MidiListing.of(MidiFile.bytes(score), 0);
    int change = lines.indexOf("bar 1 beat 4+19/20 bass program 35");
    assertThat(lines).filteredOn(line -> line.contains("program")).hasSize(2);
    assertThat(change).as(String.join("\n", lines)).isPositive();
    assertThat(lines.subList(change + 1, lines.size())).anyMatch(line -> line.contains("v90"));
  }

  @Test
  void a_file_holds_the_title_track_and_a_track_for_each_part() throws Exception {
    Score score =
        new Score(
            "Two bars",
            Beats.of(4),
            Beats.of(8),
            List.of(
                new Mark.OfMeter(Beats.ZERO, Meter.COMMON),
                new Mark.OfTempo(Beats.ZERO, Tempo.of(137)),
                new Mark.OfSection(Beats.ZERO, "low"),
                new Mark.OfKey(Beats.ZERO, Key.parse("D minor").orElseThrow()),
                new Mark.OfChord(Beats.ZERO, Chord.parse("Dm7")),
                new Mark.OfSection(Beats.of(4), "high"),
                new Mark.OfKey(Beats.of(4), Key.parse("F minor").orElseThrow()),
                new Mark.OfChord(Beats.of(4), Optional.empty())),
            List.of(
                new Part(
                    Role.DRUMS,
                    new Sound(0, 100, 64, 20),
                    List.of(KICK.withOnset(Beats.of(-4)), KICK)),
                new Part(
                    Role.BASS,
                    new Sound(33, 90, 60, 10),
                    List.of(new Note(Beats.of(5, 2), Beats.of(1, 2), 40, 90)))));
    assertThat(MidiListing.of(MidiFile.bytes(score), 1))
        .containsExactly(
            "bar 0 beat 1 title name Two bars",
            "bar 0 beat 1 title tempo 437956",
            "bar 0 beat 1 title meter 4/4 clocks 24",
            "bar 0 beat 1 title signature -1 minor",
            "bar 1 beat 1 title marker low",
            "bar 1 beat 1 title text Dm7",
            "bar 2 beat 1 title signature -4 minor",
            "bar 2 beat 1 title marker high",
            "bar 2 beat 1 title text N.C.",
            "bar 3 beat 1 title end",
            "bar 0 beat 1 drums name Drums",
            "bar 0 beat 1 drums control 7 100",
            "bar 0 beat 1 drums control 10 64",
            "bar 0 beat 1 drums control 91 20",
            "bar 0 beat 1 drums program 0",
            "bar 0 beat 1 drums key 36 v110",
            "bar 0 beat 1+1/4 drums key 36 off",
            "bar 1 beat 1 drums key 36 v110",
            "bar 1 beat 1+1/4 drums key 36 off",
            "bar 3 beat 1 drums end",
            "bar 0 beat 1 bass name Bass",
            "bar 0 beat 1 bass control 7 90",
            "bar 0 beat 1 bass control 10 60",
            "bar 0 beat 1 bass control 91 10",
            "bar 0 beat 1 bass program 33",
            "bar 1 beat 3+1/2 bass E2 v90",
            "bar 1 beat 4 bass E2 off",
            "bar 3 beat 1 bass mark hingetone mid 00000000",
            "bar 3 beat 1 bass end");
  }

  @Test
  void tempo_is_per_quarter_and_follows_meter_and_tempo() throws Exception {
    Score score =
        score(
            Beats.ZERO,
            List.of(
                new Mark.OfMeter(Beats.ZERO, Meter.of(12, 8)),
                new Mark.OfTempo(Beats.ZERO, Tempo.parse("66.5").orElseThrow()),
                new Mark.OfMeter(Beats.of(6), Meter.of(3, 4)),
                new Mark.OfTempo(Beats.of(9), Tempo.of(70))),
            List.of());
    // 66.5 dotted quarters are 99.75 quarters a minute.
    assertThat(MidiListing.of(MidiFile.bytes(score), 0))
        .contains(
            "bar 1 beat 1 title tempo 601504",
            "bar 1 beat 1 title meter 12/8 clocks 36",
            "bar 2 beat 1 title tempo 902256",
            "bar 2 beat 1 title meter 3/4 clocks 24",
            "bar 3 beat 1 title tempo 857143");
  }

  @Test
  void an_offset_moves_a_note_by_its_time_at_the_tempo_of_its_place() throws Exception {
    // At 125 quarters a minute a tick lasts 500 microseconds.
    Score score =
        score(
            Beats.of(4),
            List.of(new Mark.OfTempo(Beats.ZERO, Tempo.of(125))),
            List.of(
                KICK.withOffsetMicros(10_000), KICK.withOnset(Beats.of(1)).withOffsetMicros(-740)));
    assertThat(MidiListing.of(MidiFile.bytes(score), 1))
        .contains(
            "bar 1 beat 1+1/48 drums key 36 v110", // 20 ticks late
            "bar 1 beat 1+959/960 drums key 36 v110");
  }

  @Test
  void a_note_before_the_start_of_the_file_is_struck_at_its_start() throws Exception {
    Score score = score(Beats.ZERO, List.of(), List.of(KICK.withOffsetMicros(-3000)));
    assertThat(MidiListing.of(MidiFile.bytes(score), 0)).contains("bar 1 beat 1 drums key 36 v110");
  }

  @ParameterizedTest
  @CsvSource({
    "E dorian, 2 major", // the notes of D major
    "A blues, 0 minor",
    "F# mixolydian, 5 major", // the notes of B major
    "Eb minor, -6 minor",
    "G# major, -4 major", // eight sharps cannot be written: A flat major sounds the same
  })
  void a_key_has_the_signature_of_its_notes(String key, String signature) throws Exception {
    Score score =
        score(
            Beats.ZERO,
            List.of(new Mark.OfKey(Beats.ZERO, Key.parse(key).orElseThrow())),
            List.of());
    assertThat(MidiListing.of(MidiFile.bytes(score), 0))
        .contains("bar 1 beat 1 title signature " + signature);
  }

  @Test
  void the_click_shares_the_drum_track_because_it_shares_its_channel() throws Exception {
    Part click = new Part(Role.CLICK, Sound.of(0), List.of(KICK.withOnset(Beats.of(-4))));
    Part drums = new Part(Role.DRUMS, new Sound(0, 70, 64, 5), List.of(KICK));
    Score score = new Score("", Beats.of(4), Beats.of(4), List.of(), List.of(click, drums));
    assertThat(MidiListing.of(MidiFile.bytes(score), 1))
        .contains("bar 0 beat 1 drums control 7 70", "bar 0 beat 1 drums key 36 v110")
        .noneMatch(line -> line.contains("click"));
  }

  private static Score score(Beats countIn, List<Mark> marks, List<Note> drums) {
    Part part = new Part(Role.DRUMS, Sound.of(0), drums);
    return new Score("Test", countIn, Beats.of(24), marks, List.of(part));
  }
}
