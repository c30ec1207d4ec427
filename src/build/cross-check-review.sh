#!/usr/bin/env bash
# What review says of a third of the labelled takes, against the labels (takes/README.md); the bounds are what it reaches
# today less a little, so that it does not get worse unnoticed. Needs python3-mido and the built program.
set -euo pipefail
cd "$(dirname "$0")/../.."
[ -f target/hingetone.jar ] || { echo "target/hingetone.jar is missing: mvn verify builds it"; exit 1; }
review() { java -XX:TieredStopAtLevel=1 -XX:+UseSerialGC -jar target/hingetone.jar review "$@"; }

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir "$work/all" "$work/set" "$work/answers"
/usr/bin/python3 src/build/takes/generate.py --part tuning --out "$work/all"
for chart in "$work"/all/*[147].yaml; do
  name=$(basename "$chart" .yaml)
  cp "$work/all/$name".* "$work/set/"
  review "$work/set/$name.mid" --chart "$work/set/$name.yaml" --json > "$work/answers/$name.json"
done
/usr/bin/python3 src/build/takes/score.py "$work/set" --answers "$work/answers" \
  --floor boundaries=0.70 --floor roles=0.60 --floor returns=0.50 --floor crossings=0.95 --floor landings=0.52
