package hingetone.ground.scales;

import hingetone.theory.Scale;

/**
 * A scale for a chord in its place.
 *
 * @param scale the scale
 * @param fit how well it fits, 0 to 1
 * @param why the reason, a sentence for players
 */
public record FittingScale(Scale scale, double fit, String why) {}
