#!/usr/bin/env bash
# Renders every demo chart and lets tools that are not ours judge the files: mido and abcmidi's mftext the MIDI,
# ffmpeg's ebur128 and aubio the sound. Needs ffmpeg, aubio-tools, python3-mido, abcmidi, and the built program.
set -euo pipefail
cd "$(dirname "$0")/../.."

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

for chart in demo-charts/*.yaml; do
  name=$work/$(basename "$chart" .yaml)
  java -jar target/hingetone.jar render "$chart" --laps 2 -o "$name.mid"
  java -jar target/hingetone.jar render "$chart" --laps 2 -o "$name.wav"
  /usr/bin/python3 src/build/cross_check_sound.py "$chart" "$name.mid" "$name.wav"
done

# A check that cannot fail is none: a chart at another tempo must be found out.
chart=demo-charts/lantern-quay.yaml
java -jar target/hingetone.jar render "$chart" --tempo 113 -o "$work/other.mid"
java -jar target/hingetone.jar render "$chart" --tempo 113 -o "$work/other.wav"
if /usr/bin/python3 src/build/cross_check_sound.py "$chart" "$work/other.mid" "$work/other.wav" > "$work/other.txt"; then
  echo "the check did not notice a wrong tempo"
  exit 1
fi
echo "a wrong tempo is noticed: $(tail -n 1 "$work/other.txt")"

# The same seed gives the same notes and the same sound, to the byte.
java -jar target/hingetone.jar render "$chart" --seed 5 -o "$work/one.wav" > /dev/null
java -jar target/hingetone.jar render "$chart" --seed 5 -o "$work/two.wav" > /dev/null
cmp "$work/one.wav" "$work/two.wav"
echo "the same seed, the same bytes"
