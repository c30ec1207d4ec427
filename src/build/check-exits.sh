#!/usr/bin/env bash
# Plays into a MIDI port that keeps a record, ends the program in every way there is, and looks at what is left behind:
# notes still on, the terminal's modes, its alternate screen and cursor, the exit status. Stops it as a shell does, too,
# and fetches it back. By hand, in real time.
# Needs tmux, python3, and the built program with its tests (mvn -q -DskipTests package).
# usage: check-exits.sh
set -euo pipefail
cd "$(dirname "$0")/../.."

work=$(mktemp -d)
trap 'tmux -L exits kill-server 2> /dev/null || true; rm -rf "$work"' EXIT
export XDG_CONFIG_HOME=$work/config XDG_DATA_HOME=$work/data
classes=$(find src/target -maxdepth 1 -name test-classes):target/hingetone.jar
player="java -cp '$classes' hingetone.command.RecordedPlay"

cat > "$work/notes_left.py" << 'END'
import sys
on, struck, last = set(), 0, []
for line in open(sys.argv[1]):
    message = bytes.fromhex(line)
    last.append(line.strip())
    kind, key = message[0] & 0xF0, (message[0] & 0x0F, message[1] if len(message) > 1 else 0)
    if kind == 0x90 and message[2] > 0:
        on.add(key)
        struck += 1
    elif kind in (0x80, 0x90):
        on.discard(key)
silenced = sum(line[0] == "b" and line[2:] == "7b00" for line in last[-40:])
pedals = sum(line[0] == "b" and line[2:] == "4000" for line in last[-40:])
print(f"{struck} notes struck, {len(on)} left on, {silenced} channels told all notes off, {pedals} pedal up")
ended = sys.argv[2:] != ["stopped"]
sys.exit(1 if on or struck == 0 or ended and (silenced < 16 or pedals < 16) else 0)
END

status=0
check() { # name, how to end it, the status expected; empty where the shell is gone with it
  local record=$work/$1.txt
  tmux -L exits new-session -d -s "$1" -x 100 -y 30 "bash --norc"
  tmux -L exits send-keys -t "$1" "stty -a > $work/before; $player $record play --out Recorder demo-charts/lantern-quay.yaml; echo \$? > $work/status; stty -a > $work/after" Enter
  sleep 7
  rm -f "$work/status"
  pid=$(pgrep -f "RecordedPlay $record" | head -1)
  eval "$2"
  sleep 2
  printf '%-24s ' "$1:"
  python3 "$work/notes_left.py" "$record" || status=1
  if kill -0 "$pid" 2> /dev/null; then echo "  the program still runs" && status=1; fi
  if [ -n "$3" ]; then
    printf '%-24s status %s, alternate screen and cursor %s\n' "" "$(cat "$work/status")" \
      "$(tmux -L exits display -p -t "$1" '#{alternate_on} #{cursor_flag}')"
    [ "$(cat "$work/status")" = "$3" ] || status=1
    [ "$(tmux -L exits display -p -t "$1" '#{alternate_on} #{cursor_flag}')" = "0 1" ] || status=1
    # JLine leaves another number in the field of the line discipline, which the kernel takes from nobody that way.
    diff <(sed 's/ line = .*//' "$work/before") <(sed 's/ line = .*//' "$work/after") || status=1
    tmux -L exits kill-session -t "$1"
  fi
}

# Name, how to stop it: while stopped no note is on and the terminal is the shell's; fetched back, space goes on and the
# picture moves.
suspended() {
  local name=$1 record=$work/$1.txt first
  eval "$2"
  sleep 2
  printf '%-24s ' "$name, stopped:"
  python3 "$work/notes_left.py" "$record" stopped || status=1
  [ "$(tmux -L exits display -p -t "$name" '#{alternate_on} #{cursor_flag}')" = "0 1" ] || { echo "  no prompt" && status=1; }
  tmux -L exits send-keys -t "$name" "fg; echo \$? > $work/status; stty -a > $work/after" Enter
  sleep 2
  tmux -L exits send-keys -t "$name" Space
  sleep 1
  first=$(tmux -L exits capture-pane -p -t "$name")
  sleep 2
  [ "$(tmux -L exits display -p -t "$name" '#{alternate_on}')" = 1 ] || { echo "  no picture" && status=1; }
  [ "$first" != "$(tmux -L exits capture-pane -p -t "$name")" ] || { echo "  the picture stands still" && status=1; }
  tmux -L exits send-keys -t "$name" q
}

# Another session keeps the server alive between two checks.
tmux -L exits new-session -d -s keep
check quit 'tmux -L exits send-keys -t quit q' 0
check control-c 'tmux -L exits send-keys -t control-c C-c' 0
check SIGTERM 'kill -TERM $pid' 143
check SIGINT 'kill -INT $pid' 0
check SIGHUP 'kill -HUP $pid' 129
check control-z 'suspended control-z "tmux -L exits send-keys -t control-z C-z"' 0
check SIGTSTP 'suspended SIGTSTP "kill -TSTP $pid"' 0
check closed-terminal 'tmux -L exits kill-session -t closed-terminal' ''
exit $status
