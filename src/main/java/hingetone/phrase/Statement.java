package hingetone.phrase;

import hingetone.time.Meter;

/**
 * A statement of the bank: written down beforehand, for the maker to move and fit.
 *
 * @param name what it is called in its file
 * @param feel where its off-beats belong
 * @param meter the meter it is written in
 * @param slowest the slowest tempo it is meant for, in counted notes a minute
 * @param fastest the fastest
 * @param phrase its notes around the bar line it lands on, in the key it is written in
 */
public record Statement(
    String name, OffBeats feel, Meter meter, int slowest, int fastest, Phrase phrase) {}
