package hingetone.theory;

/** The seven note letters, in the order of the C major scale. */
public enum Letter {
  C(0, 0),
  D(2, 2),
  E(4, 4),
  F(5, -1),
  G(7, 1),
  A(9, 3),
  B(11, 5);

  private final int semitones;
  private final int fifths;

  Letter(int semitones, int fifths) {
    this.semitones = semitones;
    this.fifths = fifths;
  }

  /** Semitones above C, 0 to 11. */
  public int semitones() {
    return semitones;
  }

  /** Place on the line of fifths, C being 0: F is −1, G 1, B 5. */
  public int fifths() {
    return fifths;
  }
}
