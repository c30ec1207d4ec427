package hingetone.reviewing;

import hingetone.backing.Backing;
import hingetone.hearing.HeardNote;
import hingetone.output.CommandFailure;
import hingetone.review.Played;
import hingetone.review.Review;
import hingetone.review.ReviewedPhrase;
import hingetone.score.Score;
import hingetone.sound.SoundBank;
import hingetone.sound.SoundFailure;
import hingetone.sound.TimeStretch;
import hingetone.sound.file.Mixdown;
import hingetone.take.PlacedNote;
import java.io.IOException;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.Function;

/**
 * A phrase of a take as sound, slower at its own pitch where that is wanted: what was recorded, or
 * where only notes are known a clean guitar; with the band or alone.
 *
 * @param review the take
 * @param recording what was recorded; empty where only notes are known
 * @param band the band; empty to leave it out
 * @param percent how fast, 100 being as it was played
 * @param banks the sounds to play a score with
 */
public record PhraseSound(
    Review review,
    Optional<ReadTake.Recording> recording,
    Optional<Backing> band,
    int percent,
    Function<Score, SoundBank> banks) {
  private static final int USUAL_RATE = 44_100;
  private static final double BEFORE_SECONDS = 0.03;
  private static final double AFTER_SECONDS = 0.4;

  /** The band beside a recording, which is as loud as it is. */
  private static final float BAND = 0.5f;

  /** Samples a second. */
  public int rate() {
    return recording.map(r -> (int) Math.round(r.sound().rate())).orElse(USUAL_RATE);
  }

  /**
   * A phrase as interleaved stereo.
   *
   * @param number the phrase's number, from 1
   * @throws CommandFailure where it cannot be made
   */
  public float[] of(int number) {
    try {
      return recording.isPresent() ? recorded(number, recording.get()) : played(number, percent);
    } catch (SoundFailure | IOException e) {
      throw CommandFailure.couldNot(e.getMessage());
    }
  }

  private float[] played(int number, double speed) throws SoundFailure, IOException {
    return mixed(new PhraseScore(review, band, speed).of(number));
  }

  private float[] mixed(Score score) throws SoundFailure, IOException {
    float[][] all = {new float[rate()]};
    int[] count = {0};
    Mixdown.of(score, banks.apply(score), rate())
        .play(
            (stereo, frames, done) -> {
              if (all[0].length < count[0] + 2 * frames) {
                all[0] = Arrays.copyOf(all[0], 2 * (count[0] + 2 * frames));
              }
              System.arraycopy(stereo, 0, all[0], count[0], 2 * frames);
              count[0] += 2 * frames;
            });
    return Arrays.copyOf(all[0], count[0]);
  }

  private float[] recorded(int number, ReadTake.Recording from) throws SoundFailure, IOException {
    ReviewedPhrase phrase = review.phrases().get(number - 1);
    double starts = from.notes().get(phrase.span().from()).at();
    double ends =
        from.notes().subList(phrase.span().from(), phrase.span().to()).stream()
            .mapToDouble(HeardNote::end)
            .max()
            .orElseThrow();
    double begin = Math.max(0, starts - BEFORE_SECONDS);
    float[] mono = from.sound().samples(begin, ends + AFTER_SECONDS);
    float[] slow = TimeStretch.of(mono, from.sound().rate(), 100.0 / percent);
    if (band.isEmpty()) {
      return over(new float[0], slow, 0);
    }
    Score score = new PhraseScore(review, band, percent * from.ratio()).of(number);
    double inBar = sinceItsBar(phrase) - (starts - begin);
    int lead = (int) Math.max(0, Math.round(inBar * 100 / percent * rate()));
    return over(mixed(PhraseScore.withoutLead(score)), slow, lead);
  }

  /** How long after its bar line a phrase begins, in seconds as it was played. */
  private double sinceItsBar(ReviewedPhrase phrase) {
    PlacedNote first = review.played().notes().get(phrase.span().from());
    Played.Bar bar = review.played().barAt(first.at());
    return (first.at() - bar.start()) * review.played().msPerQuarter(first.at()) / 1000;
  }

  private static float[] over(float[] stereo, float[] mono, int lead) {
    float[] all = new float[Math.max(stereo.length, 2 * (lead + mono.length))];
    for (int i = 0; i < stereo.length; i++) {
      all[i] = BAND * stereo[i];
    }
    for (int i = 0; i < mono.length; i++) {
      all[2 * (lead + i)] += mono[i];
      all[2 * (lead + i) + 1] += mono[i];
    }
    return all;
  }
}
