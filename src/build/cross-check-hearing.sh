#!/usr/bin/env bash
# Renders a small labelled set of guitar phrases, lets `transcribe` write them down and scores the notes; beside it
# aubionotes at its best setting. Needs fluidsynth, fluid-soundfont-gm, aubio-tools, python3-numpy, python3-scipy,
# python3-mido, and the built program.
set -euo pipefail
cd "$(dirname "$0")/../.."

# Lower than what is reached by some hundredths, so that another fluidsynth does not fail it.
floors=(--floor all=0.90 --floor picked-clean=0.90 --floor picked-driven=0.85 --floor fingered-dry=0.90
  --floor stops=0.80 --floor octaves=0.80)

[ -f target/hingetone.jar ] || { echo "target/hingetone.jar is missing: mvn verify builds it"; exit 1; }
hear() { java -XX:TieredStopAtLevel=1 -XX:+UseSerialGC -jar target/hingetone.jar transcribe "$@"; }

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
score() { /usr/bin/python3 src/build/hearing/score.py "$work/set" "$@"; }

/usr/bin/python3 src/build/hearing/make_set.py small "$work/set"

echo "aubionotes at its best setting, its constant lateness taken off:"
score --notes-from "aubionotes -H 512 -B 1024 -i {}" --late best --worst 0

echo
echo "transcribe:"
mkdir "$work/answers"
for sound in "$work"/set/*.wav; do
  hear --json "$sound" > "$work/answers/$(basename "$sound" .wav).json"
done
score --answers "$work/answers" --worst 3 "${floors[@]}"

# A check that cannot fail is none: the same notes 100 ms early must fall below the floors.
if score --answers "$work/answers" --late 0.1 --worst 0 "${floors[@]}" > "$work/early.txt"; then
  echo "the score did not notice notes that are 100 ms off"
  exit 1
fi
echo
echo "notes 100 ms off are noticed: $(tail -n 1 "$work/early.txt")"
