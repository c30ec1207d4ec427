package hingetone.output;

import hingetone.text.Choice;
import hingetone.text.Suggestion;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** A kind of file that a command can write. */
public enum FileKind {
  MID,
  WAV,
  MUSICXML,
  TXT;

  /** The word for it, which is also the ending of its files. */
  @Override
  public String toString() {
    return Choice.word(this);
  }

  /**
   * What to write into a file.
   *
   * @param file its ending says the kind, where it is one of those
   * @param said the kind that is asked for
   * @param possible those that can be written
   * @throws CommandFailure when neither says it, or one contradicts the other
   */
  public static FileKind of(Path file, Optional<FileKind> said, List<FileKind> possible) {
    String name = file.toString().toLowerCase(Locale.ROOT);
    String ending = name.replaceFirst("^.*[./]", "");
    Optional<FileKind> meant =
        Choice.named(values(), ending).filter(kind -> name.endsWith("." + kind));
    if (said.isPresent() && meant.isPresent() && !said.equals(meant)) {
      throw CommandFailure.wrongInput(
          file + " ends in ." + meant.get() + ", but --as says " + said.get() + ".");
    }
    return said.or(() -> meant)
        .filter(possible::contains)
        .orElseThrow(() -> unclear(name, said.map(FileKind::toString).orElse(ending), possible));
  }

  private static CommandFailure unclear(String name, String word, List<FileKind> possible) {
    List<String> words = possible.stream().map(FileKind::toString).toList();
    if (name.equals("-")) {
      return CommandFailure.wrongInput(
          "Say with --as what to write to standard output: " + String.join(", ", words) + ".");
    }
    String hint = Suggestion.nearest(word, words).map(w -> " Did you mean ." + w + "?").orElse("");
    return CommandFailure.wrongInput(
        name
            + " has no ending I can write: I know ."
            + String.join(", .", words)
            + ", and --as says it for any other name."
            + hint);
  }

  /** Reads a kind. */
  public static final class Named implements ITypeConverter<FileKind> {
    @Override
    public FileKind convert(String text) {
      List<String> words = Choice.words(values());
      return Choice.named(values(), text)
          .orElseThrow(
              () ->
                  new TypeConversionException(
                      "\""
                          + text
                          + "\" is no kind: I expected "
                          + String.join(", ", words)
                          + Suggestion.nearest(text, words)
                              .map(w -> ". Did you mean " + w + "?")
                              .orElse("")));
    }
  }
}
