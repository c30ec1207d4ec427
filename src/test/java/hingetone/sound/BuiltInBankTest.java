package hingetone.sound;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.sound.TinySoundFont.Zone;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.stream.Stream;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Soundbank;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BuiltInBankTest {
  private static final int PROGRAMS = 3;

  @TempDir Path folder;

  private final AtomicInteger made = new AtomicInteger();

  private Path cache() {
    return folder.resolve("cache");
  }

  private Path file() {
    return cache().resolve("built-in-sounds.sf2");
  }

  /** The bank as a program that starts gets it; a small one is made in place of the JDK's. */
  private Soundbank kept() throws SoundFailure {
    return BuiltInBank.kept(cache(), this::make);
  }

  /** No two are alike. */
  private Soundbank make() throws SoundFailure {
    int peak = 10_000 + made.incrementAndGet();
    byte[] bytes =
        TinySoundFont.of(Zone.of(0, 1), Zone.of(0, 2), Zone.of(128, 0)).peak(peak).bytes();
    try {
      return MidiSystem.getSoundbank(new ByteArrayInputStream(bytes));
    } catch (Exception e) {
      throw new SoundFailure("a bank that was just made", e);
    }
  }

  @Test
  void the_bank_is_made_once_and_then_read_again() throws Exception {
    assertThat(kept().getInstruments()).hasSize(PROGRAMS);
    byte[] first = Files.readAllBytes(file());
    assertThat(kept().getInstruments()).hasSize(PROGRAMS);
    assertThat(Files.readAllBytes(file())).isEqualTo(first);
    assertThat(made).hasValue(1);
  }

  @Test
  void the_jdks_own_bank_is_kept_and_read_again() throws Exception {
    int sounds = BuiltInBank.kept(cache(), BuiltInBank::made).getInstruments().length;
    assertThat(sounds).isGreaterThan(100);
    assertThat(kept().getInstruments()).hasSize(sounds);
    assertThat(made).hasValue(0);
  }

  @Test
  void a_file_that_is_damaged_anywhere_or_cut_off_is_made_anew() throws Exception {
    kept();
    byte[] whole = Files.readAllBytes(file());
    for (int place = 0; place < whole.length; place += 53) {
      byte[] damaged = whole.clone();
      damaged[place] ^= 1;
      assertRepairs(damaged);
    }
    for (int length : new int[] {0, 1, 7, 8, 9, whole.length / 2, whole.length - 1}) {
      assertRepairs(Arrays.copyOf(whole, length));
    }
    assertRepairs(Arrays.copyOf(whole, whole.length + 1));
  }

  private void assertRepairs(byte[] damaged) throws Exception {
    Files.write(file(), damaged);
    int before = made.get();
    assertThat(kept().getInstruments()).hasSize(PROGRAMS);
    assertThat(made).hasValue(before + 1);
    kept();
    assertThat(made).hasValue(before + 1);
  }

  /** As the file of a program before this one: the bank alone. */
  @Test
  void a_file_without_a_checksum_is_made_anew() throws Exception {
    Files.createDirectories(cache());
    assertRepairs(TinySoundFont.of(Zone.of(0, 9)).bytes());
  }

  @Test
  void programs_that_start_together_leave_one_whole_file() throws Exception {
    int programs = 8;
    CyclicBarrier start = new CyclicBarrier(programs);
    ExecutorService pool = Executors.newFixedThreadPool(programs);
    List<Future<Soundbank>> banks = new ArrayList<>();
    for (int i = 0; i < programs; i++) {
      banks.add(
          pool.submit(
              () -> {
                start.await();
                return kept();
              }));
    }
    for (Future<Soundbank> bank : banks) {
      assertThat(bank.get().getInstruments()).hasSize(PROGRAMS);
    }
    pool.shutdown();
    assertThat(left()).containsExactly("built-in-sounds.sf2");
    int before = made.get();
    kept();
    assertThat(made).hasValue(before);
  }

  @Test
  void what_a_killed_program_left_is_taken_away_but_not_what_another_writes_now() throws Exception {
    Files.createDirectories(cache());
    Path old = Files.writeString(cache().resolve("built-in-sounds.sf2123.part"), "half");
    Files.setLastModifiedTime(old, FileTime.from(Instant.now().minusSeconds(3600)));
    Files.writeString(cache().resolve("built-in-sounds.sf2456.part"), "half");
    kept();
    assertThat(left()).containsExactly("built-in-sounds.sf2", "built-in-sounds.sf2456.part");
  }

  @Test
  void where_nothing_can_be_kept_it_is_made_anew() throws Exception {
    Path file = Files.writeString(folder.resolve("a-file"), "no folder");
    assertThat(BuiltInBank.kept(file, this::make).getInstruments()).hasSize(PROGRAMS);
    Files.createDirectories(file().resolve("in the way"));
    assertThat(kept().getInstruments()).hasSize(PROGRAMS);
    assertThat(left()).containsExactly("built-in-sounds.sf2");
  }

  private List<String> left() throws IOException {
    try (Stream<Path> files = Files.list(cache())) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void the_cache_folder_is_the_systems_own() {
    Path home = Path.of("/home/player");
    assertThat(BuiltInBank.cacheFolder("Linux", home, set(Map.of())))
        .isEqualTo(home.resolve(".cache/hingetone"));
    assertThat(BuiltInBank.cacheFolder("Linux", home, set(Map.of("XDG_CACHE_HOME", "/var/c"))))
        .isEqualTo(Path.of("/var/c/hingetone"));
    assertThat(BuiltInBank.cacheFolder("Mac OS X", home, set(Map.of())))
        .isEqualTo(home.resolve("Library/Caches/hingetone"));
    assertThat(BuiltInBank.cacheFolder("Windows 11", home, set(Map.of("LOCALAPPDATA", "/local"))))
        .isEqualTo(Path.of("/local/hingetone"));
  }

  /** An environment in which only this is set. */
  private static Function<String, Optional<String>> set(Map<String, String> variables) {
    return name -> Optional.ofNullable(variables.get(name));
  }
}
