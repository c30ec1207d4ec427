package hingetone.transport;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** What a receiver that obeys every message would still be sounding. */
final class Sounding {
  private Sounding() {}

  /** The keys left on, as {@code channel:key}; fails on a note struck twice or ended twice. */
  static Set<String> after(List<Rig.Sent> sent) {
    Set<String> on = new TreeSet<>();
    for (Rig.Sent s : sent) {
      String key = s.message().getChannel() + ":" + s.message().getData1();
      if (s.isNoteOn() && !on.add(key)) {
        throw new AssertionError("struck while sounding: " + s.line());
      }
      if (s.isNoteOff() && !on.remove(key)) {
        throw new AssertionError("ended while silent: " + s.line());
      }
    }
    return on;
  }
}
