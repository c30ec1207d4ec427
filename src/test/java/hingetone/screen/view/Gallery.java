package hingetone.screen.view;

import hingetone.screen.State;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

/** Writes the pictures that {@link ViewTest} expects, to be looked at before they are kept. */
final class Gallery {
  private Gallery() {}

  public static void main(String[] args) throws IOException {
    Path folder = Path.of(args[0]);
    Files.createDirectories(folder);
    for (Map.Entry<String, State> entry : ViewTest.states().entrySet()) {
      State state = entry.getValue();
      String picture = View.render(state, state.size()).text();
      Files.writeString(folder.resolve(entry.getKey() + ".txt"), picture);
    }
  }
}
