package hingetone.phrase.maker;

import hingetone.plan.Prompt;
import hingetone.time.Beats;
import java.util.Random;

/**
 * What is asked of the maker.
 *
 * @param prompt the prompt
 * @param space its room
 * @param pickup the longest pickup that it and the replies to it have room for, in quarter notes
 * @param body how long after the landing it and the replies to it have room, in quarter notes
 * @param random what varies
 */
record PhraseTask(Prompt prompt, PromptSpan space, Beats pickup, Beats body, Random random) {}
