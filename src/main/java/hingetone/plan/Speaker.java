package hingetone.plan;

/** Who plays a phrase. */
public enum Speaker {
  PLAYER,
  MACHINE
}
