package hingetone.exchange;

/** Who plays a phrase. */
public enum Speaker {
  PLAYER,
  MACHINE
}
