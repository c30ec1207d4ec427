#!/usr/bin/env bash
# Gives the window 200 other sizes while the program plays, and looks now and then, while it pauses, whether the screen is
# what a fresh drawing gives. By hand, in real time. Needs tmux and the built program.
# usage: check-storm.sh [SEED]
set -euo pipefail
cd "$(dirname "$0")/../.."
RANDOM=${1:-7}

work=$(mktemp -d)
trap 'tmux -L storm kill-server 2> /dev/null || true; rm -rf "$work"' EXIT
tmux -L storm new-session -d -s storm -x 100 -y 30 \
  "java -jar target/hingetone.jar play demo-charts/lantern-quay.yaml 2> $work/err; echo \$? > $work/status; sleep 60"
sleep 3

different=0 compared=0
for i in $(seq 200); do
  tmux -L storm resize-window -t storm -x $((3 + RANDOM % 180)) -y $((1 + RANDOM % 55))
  sleep 0.0$((RANDOM % 9 + 1))
  if ((i % 20 == 0)); then
    tmux -L storm send-keys -t storm Space
    sleep 0.7
    tmux -L storm capture-pane -p -e -t storm > "$work/shown"
    tmux -L storm send-keys -t storm C-l
    sleep 0.4
    tmux -L storm capture-pane -p -e -t storm > "$work/fresh"
    compared=$((compared + 1))
    cmp -s "$work/shown" "$work/fresh" || different=$((different + 1))
    tmux -L storm send-keys -t storm Space
  fi
done
tmux -L storm resize-window -t storm -x 100 -y 30
sleep 0.5
tmux -L storm send-keys -t storm q
sleep 2
echo "200 sizes: $compared pictures compared with fresh ones, $different different; exit status $(cat "$work/status"), $(wc -c < "$work/err") bytes of errors"
[ "$different" = 0 ] && [ "$(cat "$work/status")" = 0 ] && [ ! -s "$work/err" ]
