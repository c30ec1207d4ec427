package hingetone.transport;

import hingetone.sequencer.Command;
import hingetone.sequencer.SequencerEvent;
import hingetone.sequencer.Timeline;
import hingetone.time.Clock;
import hingetone.time.Playhead;
import java.util.Queue;
import java.util.function.Consumer;

/**
 * What a driver moves, listens to and tells.
 *
 * @param timeline what it turns
 * @param playhead where it says where the music is
 * @param commands live changes that wait
 * @param clock the machine's
 * @param listener gets what happens, on the driver's thread
 */
record Playback(
    Timeline timeline,
    Playhead playhead,
    Queue<Command> commands,
    Clock clock,
    Consumer<SequencerEvent> listener) {}
