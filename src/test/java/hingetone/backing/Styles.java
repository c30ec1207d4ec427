package hingetone.backing;

import hingetone.groove.BassStyle.LeadIn;
import hingetone.groove.ChordStyle.Voicing;
import hingetone.groove.Human;
import hingetone.score.Fullness;
import hingetone.score.Role;
import hingetone.text.Page;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * What makes the style of each groove, said in a sentence and measured on what is played. What each
 * style asks is common practice. Run it to write {@code src/docs/styles.md} anew.
 */
final class Styles {
  static final Path FILE = Path.of("src/docs/styles.md");

  private static final String SNARE = "acoustic snare/side stick";
  private static final String KICK = "bass drum 1";
  private static final String HAT = "closed hi-hat/open hi-hat/ride cymbal 1";
  private static final String EIGHTHS = "1 1+1/2 2 2+1/2 3 3+1/2 4 4+1/2";
  private static final String SECOND_EIGHTHS = "1+1/2 2+1/2 3+1/2 4+1/2";
  private static final String DOTTED = "1 1+3/4 2 2+3/4 3 3+3/4 4 4+3/4";
  private static final String TRIPLETS = "1 1+2/3 2 2+2/3 3 3+2/3 4 4+2/3";

  /** Of a hundred: ornaments and a varied bar now and then are a player's right. */
  private static final double ALWAYS = 90;

  private static final double MOSTLY = 75;
  private static final double NEVER = 5;

  private Styles() {}

  /** A sentence about a groove, and whether what is played bears it out. */
  record Claim(String groove, String says, Predicate<StylePlay> holds) {
    @Override
    public String toString() {
      return groove + ": " + says;
    }
  }

  static final List<Claim> CLAIMS =
      List.of(
          claim("back-porch", "The hi-hat plays straight eighths.", all(HAT, EIGHTHS)),
          claim("back-porch", "The backbeat lies on 2 and 4.", all(SNARE, "2 4")),
          claim(
              "back-porch",
              "The bass riff is mostly made of root, thirds, fourth and fifth.",
              play -> play.degrees(0, 3, 4, 5, 7) >= MOSTLY),
          claim("barrel-yard", "The backbeat lies on 2 and 4.", all(SNARE, "2 4")),
          claim(
              "barrel-yard",
              "The guitar rocks from root and fifth to root and sixth in every bar.",
              play -> play.has("chords", 7) >= ALWAYS && play.has("chords", 9) >= ALWAYS),
          claim(
              "barrel-yard",
              "The bass goes along, mostly on root, fifth and sixth.",
              play -> play.degrees(0, 7, 8, 9) >= MOSTLY),
          claim("choir-loft", "Each beat divides in three.", all(HAT, TRIPLETS)),
          claim("choir-loft", "The backbeat lies on 2 and 4.", all(SNARE, "2 4")),
          claim(
              "choir-loft",
              "The bass leads into every chord.",
              play -> play.groove().bass().leadIn() == LeadIn.CHANGES),
          claim(
              "coal-train",
              "Eighths are swung near two to one.",
              all(HAT, EIGHTHS).and(play -> play.groove().feel().percent() == 66)),
          claim("coal-train", "The backbeat lies on 2 and 4.", all(SNARE, "2 4")),
          claim(
              "coal-train",
              "The bass goes up root, third, fifth and sixth.",
              play -> play.degrees(0, 3, 4, 7, 8, 9) >= MOSTLY),
          claim("copper-alley", "Ride or hi-hat keep every beat.", all(HAT, "1 2 3 4")),
          claim(
              "copper-alley",
              "Unless it is light, the bass walks on every beat.",
              play -> play.fuller().all("bass", "1 2 3 4") >= ALWAYS),
          claim(
              "crooked-mile",
              "Five is three and two: the bass drum marks 1 and 4.",
              play -> play.in("5/4").all(KICK, "1 4") >= ALWAYS),
          claim(
              "crooked-mile",
              "Seven is two, two and three: the bass drum marks 1 and 5.",
              play -> play.in("7/8").all(KICK, "1 5") >= ALWAYS),
          claim(
              "dust-lane",
              "Eighths are swung near two to one.",
              all(HAT, EIGHTHS).and(play -> play.groove().feel().percent() == 66)),
          claim("dust-lane", "The backbeat lies on 2 and 4.", all(SNARE, "2 4")),
          claim(
              "dust-lane",
              "The chords are struck on the late notes only.",
              share("chords", SECOND_EIGHTHS)),
          claim("glass-harbour", "The floor tom answers on 2 and 4.", all("low floor tom", "2 4")),
          claim(
              "glass-harbour",
              "Unless it is light, the bass drum plays on each beat and just before the next.",
              play -> play.fuller().all(KICK, DOTTED) >= ALWAYS),
          claim(
              "glass-harbour",
              "Mostly the bass strikes with it.",
              play -> play.together("bass", KICK) >= MOSTLY),
          claim(
              "gravel-road", "Bass drum and bass strike 1.", all(KICK, "1").and(all("bass", "1"))),
          claim("gravel-road", "The backbeat lies on 2 and 4.", all(SNARE, "2 4")),
          claim(
              "hay-ladder",
              "Two beats for the bass, 1 and 3, mostly root and fifth.",
              all("bass", "1 3").and(play -> play.degrees(0, 7) >= MOSTLY)),
          claim("hay-ladder", "The chords come between, on 2 and 4.", all("chords", "2 4")),
          claim(
              "heavy-gate",
              "The only backbeat lies on 3: half time.",
              all(SNARE, "3").and(share(SNARE, "3"))),
          claim(
              "iron-ferry",
              "Unless it is light, the bass drives in eighths.",
              play -> play.fuller().all("bass", EIGHTHS) >= ALWAYS),
          claim("iron-ferry", "The backbeat lies on 2 and 4.", all(SNARE, "2 4")),
          claim(
              "iron-ferry",
              "The chords are root and fifth.",
              play -> play.groove().chords().voicing() == Voicing.POWER),
          claim("lantern-slow", "Each beat divides in three.", all(HAT, TRIPLETS)),
          claim("lantern-slow", "The backbeat lies on 2 and 4.", all(SNARE, "2 4")),
          claim("mirror-hall", "The bass drum strikes every beat.", all(KICK, "1 2 3 4")),
          claim(
              "mirror-hall",
              "Unless it is light, the hi-hat opens between.",
              play -> play.fuller().all("open hi-hat", SECOND_EIGHTHS) >= ALWAYS),
          claim(
              "mirror-hall",
              "The bass is mostly root and octave.",
              play -> play.degrees(0) >= MOSTLY),
          claim("paper-boat", "Two beats a bar, the backbeat on the second.", all(SNARE, "2")),
          claim(
              "penny-arcade",
              "Mostly the bass strikes with the bass drum.",
              play -> play.together(KICK, "bass") >= MOSTLY),
          claim("penny-arcade", "The backbeat lies on 2 and 4.", all(SNARE, "2 4")),
          claim("plain", "Bass drum and bass strike 1.", all(KICK, "1").and(all("bass", "1"))),
          claim(
              "pogo-pier",
              "The chords are struck on the second half of every beat and nowhere else.",
              all("chords", SECOND_EIGHTHS).and(share("chords", SECOND_EIGHTHS))),
          claim(
              "pogo-pier",
              "Unless it is light, the bass walks on every beat.",
              play -> play.fuller().all("bass", "1 2 3 4") >= ALWAYS),
          claim("round-pond", "The bass steps on 1.", all("bass", "1")),
          claim(
              "round-pond",
              "Unless it is light, the chords answer on 2 and 3.",
              play -> play.fuller().all("chords", "2 3") >= ALWAYS),
          claim(
              "salt-hammock",
              "Bass drum and stick or snare drop together on 2 and 4.",
              all(KICK, "2 4").and(all(SNARE, "2 4"))),
          claim(
              "salt-hammock",
              "The bass leaves 1 empty; so does the bass drum, unless the band is full and it goes"
                  + " on every beat.",
              none("bass", "1")
                  .and(play -> play.in(Fullness.LIGHT).any(KICK, "1") <= NEVER)
                  .and(play -> play.in(Fullness.NORMAL).any(KICK, "1") <= NEVER)
                  .and(play -> play.in(Fullness.FULL).all(KICK, "1 2 3 4") >= ALWAYS)),
          claim(
              "salt-hammock",
              "The chords are struck on the second half of every beat, four times a bar.",
              all("chords", SECOND_EIGHTHS).and(none("chords", "1 2 3 4"))),
          claim(
              "slack-rope",
              "The only backbeat lies on 3: half time.",
              all(SNARE, "3").and(share(SNARE, "3"))),
          claim("slack-rope", "Each beat divides in three.", all(HAT, TRIPLETS)),
          claim("tin-kettle", "Everybody strikes 1.", all(KICK, "1").and(all("bass", "1"))),
          claim(
              "tin-kettle",
              "Mostly the backbeat lies on 2 and 4.",
              play -> play.all(SNARE, "2 4") >= MOSTLY),
          claim("velvet-stair", "The backbeat lies on 2 and 4.", all(SNARE, "2 4")),
          claim("velvet-stair", "It comes a little late.", play -> snareLate(play) >= 5),
          claim("winter-rain", "The backbeat lies on 2 and 4.", all(SNARE, "2 4")),
          claim("winter-rain", "It comes far back.", play -> snareLate(play) >= 8));

  private static Claim claim(String groove, String says, Predicate<StylePlay> holds) {
    return new Claim(groove, says, holds);
  }

  private static Predicate<StylePlay> all(String lane, String places) {
    return play -> play.all(lane, places) >= ALWAYS;
  }

  private static Predicate<StylePlay> none(String lane, String places) {
    return play -> play.any(lane, places) <= NEVER;
  }

  private static Predicate<StylePlay> share(String lane, String places) {
    return play -> play.share(lane, places) >= ALWAYS;
  }

  private static int snareLate(StylePlay play) {
    int snare = 38;
    return play.groove().human().late(Human.Lane.of(Role.DRUMS, snare));
  }

  /** The page with its table from the claims. */
  static String withTable(String page) {
    Map<String, String> told =
        CLAIMS.stream()
            .collect(
                Collectors.groupingBy(
                    Claim::groove,
                    LinkedHashMap::new,
                    Collectors.mapping(Claim::says, Collectors.joining(" "))));
    StringBuilder table = new StringBuilder("| groove | what makes its style |\n|---|---|\n");
    told.forEach(
        (groove, says) ->
            table.append("| ").append(groove).append(" | ").append(says).append(" |\n"));
    return Page.withTable(page, "styles", table.toString());
  }

  public static void main(String[] args) throws IOException {
    Files.writeString(FILE, withTable(Files.readString(FILE)));
  }
}
