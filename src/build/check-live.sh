#!/usr/bin/env bash
# Plays each demo chart for a while into a sound output that exists in software only, records it, and compares the
# recording beat by beat with the rendered file. By hand, on a quiet machine: it plays in real time.
# Needs pulseaudio, pulseaudio-utils, libasound2-plugins, tmux, sox, python3-numpy, and the built program.
# usage: check-live.sh [SECONDS]
set -euo pipefail
cd "$(dirname "$0")/../.."
seconds=${1:-25}

work=$(mktemp -d)
export HOME=$work XDG_RUNTIME_DIR=$work PULSE_RUNTIME_PATH=$work/pulse
printf 'pcm.!default { type pulse }\nctl.!default { type pulse }\n' > "$work/.asoundrc"
pulseaudio -n --daemonize=yes --exit-idle-time=-1 --disable-shm=yes \
  -L module-native-protocol-unix -L "module-null-sink sink_name=practice rate=44100"
trap 'tmux -L live kill-server 2> /dev/null || true; pulseaudio --kill; rm -rf "$work"' EXIT

status=0
for pair in lantern-quay:0.535714 mill-race:0.625 slow-tide:1.034483; do
  name=${pair%%:*}
  java -jar target/hingetone.jar render "demo-charts/$name.yaml" -o "$work/$name.wav" > /dev/null
  parec -d practice.monitor --format=s16le --rate=44100 --channels=2 > "$work/$name.raw" &
  recorder=$!
  tmux -L live new-session -d -x 100 -y 30 "java -jar target/hingetone.jar play demo-charts/$name.yaml"
  sleep "$seconds"
  tmux -L live send-keys q
  sleep 1
  kill "$recorder"
  sox -t raw -r 44100 -e signed -b 16 -c 2 "$work/$name.raw" "$work/$name-live.wav"
  printf '%s: ' "$name"
  /usr/bin/python3 src/build/live_against_render.py "$work/$name.wav" "$work/$name-live.wav" "${pair##*:}" || status=1
done
exit $status
