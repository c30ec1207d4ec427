package hingetone.screen.view;

import hingetone.plan.Prompt;
import hingetone.screen.Action;
import hingetone.screen.BarsAhead;
import hingetone.screen.ChangeWords;
import hingetone.screen.ChartFacts.Crossing;
import hingetone.screen.Message;
import hingetone.screen.State;
import hingetone.screen.ViewSettings.Panel;
import hingetone.screen.view.Outlook.Coming;
import hingetone.screen.view.Outlook.Nearing;
import hingetone.text.Quote;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The same events in words, a line each, early enough to be read aloud: a chord is announced a beat
 * or more before it sounds, a crossing four bars and one bar before, a turn two beats before.
 */
public final class PlainView {
  private static final int CROSSING_BARS = 4;
  private static final int TURN_BEATS = 2;

  private PlainView() {}

  /** The lines that a message gives rise to. */
  public static List<String> lines(State before, Message message, State after) {
    List<String> lines = new ArrayList<>();
    if (message instanceof Message.Beat) {
      beat(lines, new Outlook(after), after);
    } else if (message instanceof Message.Notice notice) {
      lines.add(notice.words());
    } else if (message instanceof Message.Question question) {
      lines.add(question.words());
    } else if (message instanceof Message.Verdict verdict) {
      if (after.settings().shows(Panel.HEARD)) {
        lines.add(sentence(verdict.words()));
      }
    } else if (message instanceof Message.Fault fault) {
      lines.add(fault.words().map(words -> "Warning: " + words).orElse("The device is back."));
    } else if (message instanceof Message.Changed changed) {
      lines.addAll(ChangeWords.of(before.status(), changed.status()));
    } else if (message instanceof Message.Stroke stroke) {
      word(lines, stroke.key(), before, after);
    }
    return lines;
  }

  /** A key or a word that was typed: what nobody knows is answered, too. */
  private static void word(List<String> lines, String key, State before, State after) {
    if (before.words().asks() && !after.words().asks()) {
      return; // it was the answer
    }
    Optional<Action> action = Action.ofKey(key, before.settings());
    if (action.isEmpty() && before.layer().equals(after.layer())) {
      lines.add("Nothing is called \"" + Quote.of(key) + "\". The word help lists what is.");
    } else if (action.equals(Optional.of(Action.HELP))) {
      lines.addAll(help());
    } else if (!before.words().notice().equals(after.words().notice())) {
      lines.add(after.words().notice());
    }
  }

  private static List<String> help() {
    return Action.groups().stream()
        .map(
            group ->
                Arrays.stream(Action.values())
                    .filter(action -> action.group().equals(group))
                    .map(action -> action.id() + ", " + action.words())
                    .collect(Collectors.joining("; ", group + ": ", ".")))
        .toList();
  }

  private static void beat(List<String> lines, Outlook moment, State state) {
    if (state.countsIn()) {
      lines.add("Count-in " + moment.beat() + ".");
    } else if (moment.beat() == 1 && moment.bar().isFirstOfSection()) {
      String section = ", section " + moment.bar().section().name() + " in " + moment.bar().key();
      boolean ending = BarsAhead.isEnding(state, moment.position().bar());
      String where = PlacePanel.lap(state, moment) + (ending ? "" : section);
      lines.add(sentence(where + ", " + moment.chord()));
    }
    moment.nextLine().ifPresent(nearing -> crossing(lines, moment, nearing));
    turn(lines, moment);
    chord(lines, moment);
  }

  private static void crossing(List<String> lines, Outlook moment, Nearing nearing) {
    Crossing crossing = nearing.crossing();
    boolean onLine = moment.beat() == 1;
    long bars = moment.bars(nearing.until());
    if (onLine && bars == CROSSING_BARS) {
      String stays = crossing.common().isEmpty() ? "nothing" : String.join(" ", crossing.common());
      lines.add("In 4 bars " + crossing.to() + ". Stays: " + stays + ".");
      crossing.hold().stream().limit(1).forEach(hold -> lines.add("Hold: " + hold + "."));
      crossing.run().stream().limit(1).forEach(run -> lines.add("Run: " + run + "."));
    } else if (onLine && bars == 1) {
      lines.add("Last bar before " + crossing.to() + ".");
    }
  }

  private static void turn(List<String> lines, Outlook moment) {
    Optional<Prompt> next = moment.nextTurn().filter(turn -> !moment.isBehind(turn));
    if (next.isPresent() && moment.beatsUntil(next.get().speakFrom()).ceil() == TURN_BEATS) {
      Prompt turn = next.get();
      String again = TurnWords.again(turn).map(words -> ", " + words).orElse("");
      List<String> notes = moment.landing(turn);
      String on = notes.isEmpty() ? "" : " on " + String.join(" or ", notes);
      String land =
          turn.isRest()
              ? ""
              : ", land" + on + " in " + moment.beatsUntil(turn.landOn()).ceil() + " beats";
      lines.add(sentence(TurnWords.title(turn) + " in 2 beats" + land + again));
    }
  }

  private static void chord(List<String> lines, Outlook moment) {
    List<Coming> coming = moment.coming(1);
    if (!coming.isEmpty() && moment.meter().toBeats(coming.get(0).until()).ceil() == 1) {
      lines.add("Next " + coming.get(0).chord() + ".");
    }
  }

  private static String sentence(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1) + ".";
  }
}
