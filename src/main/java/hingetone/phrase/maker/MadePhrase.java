package hingetone.phrase.maker;

import hingetone.neck.Spot;
import hingetone.phrase.Phrase;
import hingetone.plan.Prompt;
import java.util.List;

/**
 * A phrase made for a prompt.
 *
 * @param prompt the prompt it answers
 * @param phrase the phrase; its time 0 is the prompt's landing
 * @param spots where each of its notes is played, in their order
 * @param why how it is meant, one sentence
 */
public record MadePhrase(Prompt prompt, Phrase phrase, List<Spot> spots, String why) {
  public MadePhrase {
    spots = List.copyOf(spots);
    if (spots.size() != phrase.tones().size()) {
      throw new IllegalArgumentException("every note is played somewhere");
    }
  }
}
