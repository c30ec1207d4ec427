package hingetone.exchange;

import hingetone.time.Beats;
import java.util.Random;

/**
 * What is asked of the maker.
 *
 * @param prompt the prompt
 * @param space its room
 * @param length the longest that phrase and replies alike have room for, in quarter notes
 * @param pickup the longest pickup that they all have room for, in quarter notes
 * @param random what varies
 */
record Task(Prompt prompt, Space space, Beats length, Beats pickup, Random random) {}
