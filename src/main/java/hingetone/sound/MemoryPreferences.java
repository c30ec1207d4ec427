package hingetone.sound;

import java.util.Map;
import java.util.TreeMap;
import java.util.prefs.AbstractPreferences;
import java.util.prefs.Preferences;
import java.util.prefs.PreferencesFactory;

/**
 * Preferences that live in memory and end with the program.
 *
 * <p>The JDK's synthesizer reads {@code java.util.prefs} when it opens, which would create a folder
 * in the user's home and write a line over the screen. {@link #install} must therefore be called
 * before anything touches Java Sound. This class keeps no preferences in static fields: to make one
 * settles for good whose preferences are used, which would be before {@link #install} has spoken.
 */
public final class MemoryPreferences implements PreferencesFactory {
  private final Node user = new Node(null, "");
  private final Node system = new Node(null, "");

  /** Made by {@code java.util.prefs} itself, by name. */
  public MemoryPreferences() {}

  /** Makes these the preferences of this run. */
  public static void install() {
    System.setProperty("java.util.prefs.PreferencesFactory", MemoryPreferences.class.getName());
  }

  @Override
  public Preferences userRoot() {
    return user;
  }

  @Override
  public Preferences systemRoot() {
    return system;
  }

  private static final class Node extends AbstractPreferences {
    private final Map<String, String> values = new TreeMap<>();
    private final Map<String, Node> children = new TreeMap<>();

    Node(Node parent, String name) {
      super(parent, name);
    }

    @Override
    protected void putSpi(String key, String value) {
      values.put(key, value);
    }

    @Override
    protected String getSpi(String key) {
      return values.get(key);
    }

    @Override
    protected void removeSpi(String key) {
      values.remove(key);
    }

    @Override
    protected void removeNodeSpi() {
      ((Node) parent()).children.remove(name());
    }

    @Override
    protected String[] keysSpi() {
      return values.keySet().toArray(new String[0]);
    }

    @Override
    protected String[] childrenNamesSpi() {
      return children.keySet().toArray(new String[0]);
    }

    @Override
    protected AbstractPreferences childSpi(String name) {
      return children.computeIfAbsent(name, n -> new Node(this, n));
    }

    @Override
    protected void syncSpi() {}

    @Override
    protected void flushSpi() {}
  }
}
