package hingetone.play;

import hingetone.plan.ExampleChoice;
import hingetone.screen.Effect;
import hingetone.screen.ViewSettings;
import hingetone.transport.Transport;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;

/** Does what the screen asks for, as far as the band and the settings are concerned. */
final class BandControl {
  private final Transport transport;
  private final Runnable nextGroove;
  private final Runnable nextSounds;
  private final Consumer<UnaryOperator<Optional<ExampleChoice>>> hear;
  private final Consumer<Optional<Integer>> stayAround;
  private final TakeKeeper takes;
  private final Consumer<ViewSettings> remember;

  /**
   * The control of a transport.
   *
   * @param nextGroove changes the groove
   * @param nextSounds changes the bank of sounds
   * @param hear changes which example phrases are heard
   * @param stayAround keeps the hand around a fret, or frees it
   * @param takes keeps what is played
   * @param remember keeps the settings
   */
  BandControl(
      Transport transport,
      Runnable nextGroove,
      Runnable nextSounds,
      Consumer<UnaryOperator<Optional<ExampleChoice>>> hear,
      Consumer<Optional<Integer>> stayAround,
      TakeKeeper takes,
      Consumer<ViewSettings> remember) {
    this.transport = transport;
    this.nextGroove = nextGroove;
    this.nextSounds = nextSounds;
    this.hear = hear;
    this.stayAround = stayAround;
    this.takes = takes;
    this.remember = remember;
  }

  /** Does an effect; never waits. */
  void perform(Effect effect) {
    if (effect instanceof Effect.Remember settings) {
      remember.accept(settings.settings());
    } else if (effect instanceof Effect.NextGroove) {
      nextGroove.run();
    } else if (effect instanceof Effect.NextSounds) {
      nextSounds.run();
    } else if (effect instanceof Effect.NextExamples) {
      hear.accept(BandControl::next);
    } else if (effect instanceof Effect.NextCrossingExample) {
      hear.accept(now -> Optional.of(ExampleChoice.NEXT_CROSSING));
    } else if (effect instanceof Effect.RecordTake) {
      takes.recordOrEnd();
    } else if (effect instanceof Effect.KeepLast) {
      takes.keepLast();
    } else if (effect instanceof Effect.StayAround position) {
      stayAround.accept(position.fret());
    } else if (effect instanceof Effect.Send change) {
      transport.send(change.command());
    }
  }

  /** None, the statements, all, the crossings, and round again. */
  static Optional<ExampleChoice> next(Optional<ExampleChoice> now) {
    List<ExampleChoice> round =
        List.of(ExampleChoice.STATEMENTS, ExampleChoice.ALL, ExampleChoice.CROSSINGS);
    return round.stream().skip(now.map(round::indexOf).orElse(-1) + 1).findFirst();
  }
}
