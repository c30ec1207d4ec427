package hingetone.screen;

/** Prints pictures to look at: {@code Gallery ROWS COLUMNS BAR BEAT}. */
final class Gallery {
  private Gallery() {}

  public static void main(String[] args) {
    int rows = Integer.parseInt(args[0]);
    int columns = Integer.parseInt(args[1]);
    State state = Examples.playing(Integer.parseInt(args[2]), args[3]);
    if (args.length > 4) {
      for (String key : args[4].split(",")) {
        state = Update.apply(state, new Message.Stroke(key, 0)).state();
      }
    }
    System.out.println(Examples.picture(state, rows, columns));
  }
}
