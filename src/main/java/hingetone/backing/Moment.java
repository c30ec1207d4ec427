package hingetone.backing;

/** What the band does for whoever speaks, or for the line that comes, in one bar. */
enum Moment {
  PLAIN(1, 0),
  /** Under a statement: softer, the pattern kept, nothing added. */
  ROOM(0.93, -1),
  /** At a reply's end. */
  LIFT(1.06, 1),
  /** Into another key. */
  BUILD(1.08, 1),
  /** After another key has come. */
  DROP(0.9, -1);

  private final double loudness;
  private final int ornaments;

  Moment(double loudness, int ornaments) {
    this.loudness = loudness;
    this.ornaments = ornaments;
  }

  /** How loud the band plays, 1 being as drawn. */
  double loudness() {
    return loudness;
  }

  /** How many ornaments the drummer adds, or leaves away, beside those he plays anyhow. */
  int ornaments() {
    return ornaments;
  }
}
