package hingetone.ground.ways;

import hingetone.neck.Shape;

/**
 * The hand stays where it is: a shape of the new scale that lies under it.
 *
 * @param from the shape before the line
 * @param to the shape after it
 * @param travel millimetres the hand travels
 */
public record Stay(Shape from, Shape to, double travel) {}
