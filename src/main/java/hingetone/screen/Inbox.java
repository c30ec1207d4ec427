package hingetone.screen;

import java.util.ArrayList;
import java.util.List;

/**
 * What waits to be dealt with, in order, and never much of it, however fast keys and pedals come:
 * of what only says how things stand the newest is kept, and of keys the last {@value #MOST_KEYS}.
 */
final class Inbox {
  /** More than a hand can strike during one picture. */
  static final int MOST_KEYS = 16;

  private final List<Message> waiting = new ArrayList<>();
  private int struck;

  /** Leaves a message; from any thread, never waits for long. */
  synchronized void add(Message message) {
    waiting.removeIf(earlier -> isOutdated(earlier, message));
    waiting.add(message);
    if (isStruck(message) && ++struck > MOST_KEYS) {
      dropFirstKey();
    }
    notifyAll();
  }

  /** Waits for messages and takes all there are. */
  synchronized List<Message> take() throws InterruptedException {
    while (waiting.isEmpty()) {
      wait();
    }
    List<Message> all = List.copyOf(waiting);
    waiting.clear();
    struck = 0;
    return all;
  }

  /** Whether nobody needs to hear of a message any more after a newer one. */
  private static boolean isOutdated(Message earlier, Message newer) {
    if (earlier instanceof Message.Playhead) {
      return newer instanceof Message.Playhead || newer instanceof Message.Beat;
    }
    boolean tellsHowThingsStand =
        earlier instanceof Message.Changed
            || earlier instanceof Message.Learned
            || earlier instanceof Message.Resized;
    return tellsHowThingsStand && earlier.getClass() == newer.getClass();
  }

  private static boolean isStruck(Message message) {
    return message instanceof Message.Stroke || message instanceof Message.Pedal;
  }

  private void dropFirstKey() {
    for (int i = 0; i < waiting.size(); i++) {
      if (isStruck(waiting.get(i))) {
        waiting.remove(i);
        struck--;
        return;
      }
    }
  }
}
