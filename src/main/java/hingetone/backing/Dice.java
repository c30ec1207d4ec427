package hingetone.backing;

import java.util.Random;

/**
 * Chance from a seed: the same seed, player and place always throw the same.
 *
 * @param seed the chart's seed
 * @param lap the lap, from 1
 */
record Dice(long seed, int lap) {
  /** A source of chance for one player in one bar. */
  Random at(String player, int bar) {
    long mixed = mix(mix(mix(seed) + player.hashCode()) + 31L * lap);
    return new Random(mix(mixed + bar));
  }

  /** The finaliser of SplitMix64 (Steele, Lea and Flood 2014), so that near seeds differ. */
  private static long mix(long value) {
    long z = value + 0x9E3779B97F4A7C15L;
    z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }
}
