#!/usr/bin/env bash
# Lets LilyPond's musicxml2ly read the notation of every demo chart and LilyPond engrave it: no warning of the reader,
# no bar that is not full, as many notes in as out. Needs lilypond and the built program.
set -euo pipefail
cd "$(dirname "$0")/../.."

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

check() { # NAME: NAME.musicxml is read without a warning and engraved with full bars
  musicxml2ly -o "$1.ly" "$1.musicxml" > "$1.read" 2>&1
  lilypond --png -dresolution=60 -o "$1" "$1.ly" > "$1.engraved" 2>&1
  ! grep -iE 'warning|error' "$1.read" && ! grep -iE 'barcheck|error' "$1.engraved"
}

for chart in demo-charts/*.yaml; do
  name=$work/$(basename "$chart" .yaml)
  java -jar target/hingetone.jar render "$chart" -o "$name.musicxml" > /dev/null
  check "$name"
  [ -s "$name.png" ] || [ -s "$name-page1.png" ]
  echo "$(basename "$chart"): $(grep -c '<note>' "$name.musicxml") notes and rests read and engraved"
done

# A check that cannot fail is none: a bar with a note too long must be found out.
sed '0,/<duration>24</s//<duration>36</' "$name.musicxml" > "$work/wrong.musicxml"
if check "$work/wrong" > "$work/noticed"; then
  echo "the check did not notice a bar that is too long"
  exit 1
fi
echo "a bar that is too long is noticed: $(head -n 1 "$work/noticed")"
