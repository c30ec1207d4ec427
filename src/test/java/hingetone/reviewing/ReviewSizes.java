package hingetone.reviewing;

import hingetone.print.ReviewText;
import hingetone.review.Evening;
import hingetone.review.Played;
import hingetone.review.Review;
import hingetone.take.PlacedNote;
import hingetone.take.TakeReader;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/** Time and memory of a review by the number of notes: run by hand. */
final class ReviewSizes {
  private ReviewSizes() {}

  public static void main(String[] args) throws IOException {
    for (int count : new int[] {1000, 1000, 10_000, 100_000}) {
      Random random = new Random(1);
      List<PlacedNote> notes = new ArrayList<>();
      double at = 4;
      for (int i = 0; i < count; i++) {
        int pitch = 60 + random.nextInt(15);
        notes.add(new PlacedNote(at, at + 0.4, pitch, pitch, 90));
        at += random.nextInt(9) == 0 ? 2 : 0.5;
      }
      TakeReader file =
          new TakeReader(
              List.of(),
              List.of(new TakeReader.TempoFrom(0, 5e5)),
              notes,
              at,
              Optional.empty(),
              Optional.empty());
      long start = System.nanoTime();
      Review review = Review.of(Played.of(file, Evening.chart(), 1, 0), Evening.chart());
      long reviewed = System.nanoTime();
      int lines = ReviewText.of(review).size();
      long written = System.nanoTime();
      System.gc();
      Runtime vm = Runtime.getRuntime();
      System.out.printf(
          "%d notes, %d phrases: reviewed in %.2f s, written (%d lines) in %.2f s, %d MB in use%n",
          count,
          review.phrases().size(),
          (reviewed - start) / 1e9,
          lines,
          (written - reviewed) / 1e9,
          (vm.totalMemory() - vm.freeMemory()) >> 20);
    }
  }
}
