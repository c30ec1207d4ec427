#!/usr/bin/env bash
# Renders every demo chart and has the files read by programs that are not ours: python3-mido and
# abcmidi (MIDI), ffmpeg and aubio (sound). Fails when anything is off, and when its own check would
# let a damaged file pass. Run it after the build: target/hingetone.jar must be there.
set -euo pipefail
cd "$(dirname "$0")/../.."

python=$(for p in python3 /usr/bin/python3; do "$p" -c 'import mido' 2> /dev/null && echo "$p" && break; done)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

for chart in demo-charts/*.yaml; do
  name=$(basename "$chart" .yaml)
  java -jar target/hingetone.jar render "$chart" -o "$work/$name.mid" --laps 2
  java -jar target/hingetone.jar render "$chart" -o "$work/$name.wav" --laps 2
  "$python" src/build/cross_check_sound.py "$chart" "$work/$name.mid" "$work/$name.wav"
done

# The check itself: it must refuse a tempo that is a microsecond off and a note that never ends.
damage() {
  "$python" - "$1" "$2" "$3" << 'PY'
import sys, mido
midi = mido.MidiFile(sys.argv[1])
if sys.argv[3] == "tempo":
    next(m for m in midi.tracks[0] if m.type == "set_tempo").tempo += 1
else:
    track = midi.tracks[2]
    off = next(m for m in track if m.type == "note_off" or (m.type == "note_on" and m.velocity == 0))
    track[track.index(off)] = mido.Message("control_change", channel=off.channel, control=11, value=100, time=off.time)
midi.save(sys.argv[2])
PY
}
for kind in tempo note; do
  damage "$work/$name.mid" "$work/damaged.mid" "$kind"
  if "$python" src/build/cross_check_sound.py "$chart" "$work/damaged.mid" > /dev/null; then
    echo "the check lets a damaged $kind pass"
    exit 1
  fi
done
echo "sound and MIDI agree with the charts"
