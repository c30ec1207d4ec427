package hingetone.command;

import java.nio.file.Path;
import java.util.List;

/** The program in a process of its own, as this build made it. */
public final class ChildProgram {
  /** What starts it; its arguments follow. */
  public static final List<String> COMMAND =
      List.of(
          Path.of(System.getProperty("java.home"), "bin", "java").toString(),
          "-XX:TieredStopAtLevel=1",
          "--add-exports=java.desktop/com.sun.media.sound=ALL-UNNAMED",
          "-cp",
          System.getProperty("java.class.path"),
          Main.class.getName());

  private ChildProgram() {}
}
