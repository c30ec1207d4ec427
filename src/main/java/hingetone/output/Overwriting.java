package hingetone.output;

import hingetone.text.Stamp;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * What a command may put its output in place of: never what it reads; an earlier export of the same
 * kind that nobody has changed since, and says so; anything else only with {@code --force}.
 *
 * @param inputs what the command reads
 * @param force whether other files may be replaced
 */
public record Overwriting(List<Path> inputs, boolean force) {
  /**
   * Looks at where an output goes.
   *
   * @param stamp what the output will bear
   * @return what to add to the line about it: what is replaced, or nothing
   * @throws CommandFailure when it must not go there
   */
  String check(Path file, Stamp stamp) throws IOException {
    for (Path input : inputs) {
      if (Files.exists(file) && Files.exists(input) && Files.isSameFile(file, input)) {
        throw CommandFailure.wrongInput(
            file + " is what this command reads, which is never replaced; give another name.");
      }
    }
    if (!Files.isRegularFile(file) || Files.size(file) == 0) {
      return "";
    }
    if (force) {
      return ", in place of what was there";
    }
    if (!Files.isWritable(file)) {
      throw refused(file, "may not be written to");
    }
    return switch (stamp.find(file)) {
      case OURS -> ", in place of an earlier export";
      case OF_ANOTHER_KIND -> throw refused(file, "holds another kind of export");
      case CHANGED -> throw refused(file, "was changed after hingetone wrote it");
      case FOREIGN -> throw refused(file, "is there already, and hingetone did not write it");
    };
  }

  private static CommandFailure refused(Path file, String why) {
    return CommandFailure.wrongInput(
        file + " " + why + ": give another name, or --force to replace it.");
  }
}
