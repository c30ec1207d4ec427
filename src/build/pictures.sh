#!/usr/bin/env bash
# Plays a demo chart in terminals of several sizes and draws what they show: the pictures of the README and of src/docs.
# By hand. Needs tmux, the font DejaVu Sans Mono, and the built program with its tests.
# usage: pictures.sh
set -euo pipefail
cd "$(dirname "$0")/../.."
work=$(mktemp -d)
trap 'tmux -L pictures kill-server 2> /dev/null || true; rm -rf "$work"' EXIT

# Another session keeps the server alive between two pictures.
tmux -L pictures new-session -d -s keep

# name, columns, rows, what the screen must show, "light" or "", keys to press first
shot() {
  local name=$1 columns=$2 rows=$3 wanted=$4 paper=$5
  shift 5
  tmux -L pictures new-session -d -s shot -x "$columns" -y "$rows" \
    "XDG_CONFIG_HOME=$work/$name COLORTERM=truecolor java -jar target/hingetone.jar play demo-charts/lantern-quay.yaml"
  sleep 2
  for key in "$@"; do tmux -L pictures send-keys -t shot "$key"; done
  until tmux -L pictures capture-pane -p -t shot | grep -q "$wanted"; do sleep 0.05; done
  sleep 0.1
  tmux -L pictures capture-pane -N -e -p -t shot \
    | java -cp 'src/target/test-classes:src/target/classes:target/lib/*' hingetone.screen.terminal.ScreenPicture \
      "src/docs/pictures/$name-${columns}x$rows.png" $paper
  tmux -L pictures kill-session -t shot
}

shot playing 100 30 'low .* bar 3 of 8 beat 2' ''
shot before-the-crossing 80 24 'low .* bar 8 of 8 beat 3' ''
shot after-the-crossing 120 40 'high .* bar 1 of 8 beat 2' ''
shot far 120 40 'low .* bar 6 of 8 beat 2' '' f
shot wide 180 24 'low .* bar 7 of 8 beat 2' light
shot small 40 8 'bar 4 of 8 beat 3' ''
