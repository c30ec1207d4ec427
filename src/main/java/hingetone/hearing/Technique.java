package hingetone.hearing;

/** How a note is played. */
public enum Technique {
  /** Picked, its pitch left alone. */
  PLAIN,
  /** Pushed up by half a semitone or more and left there. */
  BEND,
  /** Struck while bent, then let down. */
  PREBEND,
  /** Bent up and let down again. */
  RELEASE,
  /** Pushed up by about a quarter tone. */
  CURL,
  /** The finger slides along the string to it. */
  SLIDE,
  /** Sounded by the fretting hand: a hammer-on or a pull-off. */
  LEGATO
}
