package hingetone.transport;

/** What moves a timeline: a loop on a thread of its own that turns until closed. */
interface Driver extends Runnable {
  /** A command is waiting. */
  void wake();

  /** Ends the loop; from any thread. The loop silences what it drives before it ends. */
  void end();

  /** Silences and closes the device from outside, also while the loop is stuck inside it. */
  void closeDevice();
}
