#!/usr/bin/env python3
"""Sits down before the program again and again and does everything at random.

    src/build/random_sessions.py [COUNT] [SEED] [FIRST]

Each session draws a chart, options, a terminal and a locale, starts the program in a shell under tmux, and for a few
seconds strikes keys, pastes, changes the window's size, sends signals, sends it to the background and fetches it back.
Then the program must show that it moves, and end when told. Wrong is: a picture that stands still, an end that does not
come, another exit status than the way it ended gives, a trace or a library's line on the screen, an alternate screen,
cursor, bracketed paste or terminal mode that is not as it was. By hand, in real time, about eight seconds a session.
Needs tmux and the built program. Ends with status 1 where something was wrong.
"""
import os
import pathlib
import random
import re
import signal
import statistics
import subprocess
import sys
import tempfile
import time

ROOT = pathlib.Path(__file__).resolve().parents[2]
JAR = ROOT / "target" / "hingetone.jar"
KEYS = list("abcdefghijklmnoprstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789+-=<>,.()[]?/;:'!@#$%^&*~`|ß漢") + [
    "Space", "Enter", "Tab", "Escape", "Up", "Down", "Left", "Right", "Home", "End", "PPage", "NPage", "BSpace",
    "C-l", "F1", "F12", "IC", "DC", "M-x"]
TERMINALS = ["tmux-256color", "screen", "screen-256color", "xterm-256color", "xterm", "vt100", "linux", "dumb", "no-such"]
LOCALES = ["C.UTF-8", "C", "POSIX", "en_US.ISO-8859-1"]
CHORDS = ["m7", "7", "maj7", "m", "", "7b9", "m7b5", "7sus4", "9", "7#9", "dim7", "6"]
ROOTS = ["C", "Db", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B"]
MODES = ["major", "minor", "dorian", "mixolydian", "blues"]
METERS = ["4/4", "3/4", "5/4", "6/8", "7/8", "12/8", "2/2", "1/4"]
NOISE = re.compile(r"Exception|^\s+at \S+\(|\b(INFO|WARNING|SEVERE)\b|fault of its own", re.M)

# What ends it: an exit status for each.
ENDS = {"key": 0, "ctrl c": 0, signal.SIGTERM: 143, signal.SIGINT: 0, signal.SIGHUP: 129}


def chart(draw):
    """A chart of two sections in two keys."""
    lines = [f"tempo: {draw.randint(40, 390)}", f"meter: {draw.choice(METERS)}", f"count-in: {draw.randint(0, 2)}", "sections:"]
    for name in ("low", "high"):
        bars = [draw.choice(ROOTS) + draw.choice(CHORDS) for _ in range(draw.randint(1, 8))]
        lines += [f"  {name}:", f"    key: {draw.choice(ROOTS)} {draw.choice(MODES)}",
                  f'    bars: "| {" | ".join(bars)} |"']
    return "\n".join(lines) + "\n"


def options(draw):
    chosen = ["--plain"] if draw.random() < 0.2 else []
    chosen += ["--show-me=all"] if draw.random() < 0.3 else []
    chosen += ["--no-count-in"] if draw.random() < 0.2 else []
    chosen += ["--left-handed"] if draw.random() < 0.2 else []
    chosen += ["--ramp=60:300:20:1"] if draw.random() < 0.2 else []
    return chosen


class Session:
    """One sitting, in a tmux server of its own."""

    def __init__(self, number, seed, work):
        self.number, self.draw, self.work = number, random.Random(f"{seed} {number}"), work / str(number)
        self.work.mkdir()
        self.socket, self.faults, self.peak = f"sit{os.getpid()}-{number}", [], 0
        self.term = self.draw.choice(TERMINALS)
        self.locale = self.draw.choice(LOCALES)
        self.options = options(self.draw)
        self.plain = "--plain" in self.options or self.term == "dumb"

    def tmux(self, *words):
        run = subprocess.run(["tmux", "-L", self.socket, *words], capture_output=True, text=True, errors="replace")
        return run.stdout

    def screen(self):
        return self.tmux("capture-pane", "-p", "-t", "sit")

    def type(self, *keys):
        self.tmux("send-keys", "-t", "sit", *keys)

    def pid(self):
        try:
            return int((self.work / "pid").read_text())
        except (OSError, ValueError):
            return 0

    def alive(self):
        return self.pid() and os.path.exists(f"/proc/{self.pid()}")

    def state(self):
        try:
            return pathlib.Path(f"/proc/{self.pid()}/stat").read_text().rsplit(")", 1)[1].split()[0]
        except OSError:
            return ""

    def wait(self, wanted, seconds):
        until = time.time() + seconds
        while time.time() < until:
            if wanted():
                return True
            time.sleep(0.05)
        return bool(wanted())

    def measure(self):
        try:
            text = pathlib.Path(f"/proc/{self.pid()}/status").read_text()
            self.peak = max(self.peak, int(re.search(r"VmHWM:\s+(\d+)", text).group(1)))
        except (OSError, AttributeError):
            pass

    def wrong(self, words):
        self.faults.append(words)

    def start(self):
        (self.work / "chart.yaml").write_text(chart(self.draw))
        # At each prompt the shell notes the status of what has ended and the terminal's modes.
        prompt = f"s=$?; stty -a > {self.work}/modes.new; mv {self.work}/modes.new {self.work}/modes; echo $s >> {self.work}/statuses"
        environment = {**os.environ, "PROMPT_COMMAND": prompt, "PS1": "> ", "XDG_CONFIG_HOME": str(self.work / "config"),
                       "XDG_DATA_HOME": str(self.work / "data"), "ALSA_CONFIG_PATH": "/dev/null", "HISTFILE": ""}
        subprocess.run(["tmux", "-L", self.socket, "-f", "/dev/null", "new-session", "-d", "-s", "sit", "-x", "100", "-y", "30",
                        "bash --norc --noprofile"], env=environment, check=True)
        self.wait(lambda: (self.work / "modes").exists(), 5)
        self.before = self.modes()
        words = " ".join(self.options)
        program = f"exec env TERM={self.term} LC_ALL={self.locale} java -jar {JAR} play {words} {self.work}/chart.yaml"
        self.type(f"clear; sh -c 'echo $$ > {self.work}/pid; {program}'", "Enter")
        self.wait(self.alive, 15)
        time.sleep(1.5)

    def modes(self):
        text = (self.work / "modes").read_text()
        # The size follows the window; JLine leaves another number in the field of the line discipline.
        return re.sub(r"(rows|columns|line =) \d+;?|line = \S+", "", text)

    def key(self):
        key = self.draw.choice(KEYS)
        # q leaves the program, which is tried at the end.
        self.type("-l", key) if len(key) == 1 and key not in "q" else self.type(key if key != "q" else "Space")
        if self.plain:
            self.type("Enter")

    def act(self):
        kind = self.draw.random()
        if kind < 0.55:
            for _ in range(self.draw.choice([1, 1, 3, 40])):
                self.key()
        elif kind < 0.7:
            text = "".join(self.draw.choice("qQ\n\x03 abc123") for _ in range(self.draw.randint(1, 3000)))
            if not self.plain:
                self.tmux("set-buffer", text.replace("\x03", ""))
                self.tmux("paste-buffer", "-p", "-t", "sit")
        elif kind < 0.88:
            self.tmux("resize-window", "-t", "sit", "-x", str(self.draw.choice([1, 2, 9, 20, 40, 80, 100, 220])),
                      "-y", str(self.draw.choice([1, 2, 6, 12, 24, 30, 60])))
        elif kind < 0.95:
            self.aside()
        else:
            # Nothing can catch that; the shell takes the terminal back, with what is not read yet.
            time.sleep(0.5)
            os.kill(self.pid(), signal.SIGSTOP)
            time.sleep(0.3)
            self.back()

    def aside(self):
        """To the shell and back, when all keys are read."""
        time.sleep(0.5)
        self.type("C-z")
        if not self.wait(lambda: self.state() == "T", 3):
            self.wrong("Ctrl-Z does not stop it")
            return
        time.sleep(0.2)
        if self.shown() != "0 1":
            self.wrong(f"while it is stopped the alternate screen and cursor are {self.shown()}")
        self.back()

    def back(self):
        self.type("C-c")
        time.sleep(0.1)
        self.type("fg", "Enter")
        if not self.wait(lambda: self.state() not in ("T", ""), 3):
            self.wrong("fg does not wake it")
        time.sleep(0.4)

    def shown(self):
        return self.tmux("display", "-p", "-t", "sit", "#{alternate_on} #{cursor_flag}").strip()

    def moves(self):
        """From the top, twice looked at: beats must have been shown between."""
        self.tmux("resize-window", "-t", "sit", "-x", "100", "-y", "30")
        if self.plain:
            self.type("C-u", "0", "Enter")
        else:
            for key in ("Escape", "Escape", "0"):
                self.type(key)
                time.sleep(0.15)
        time.sleep(0.7)
        first = self.screen()
        if not self.wait(lambda: self.screen() != first, 4):
            self.wrong("the picture stands still")

    def end(self):
        way = self.draw.choice(list(ENDS))
        self.measure()
        if way == "key":
            self.type("q", "Enter") if self.plain else self.type("q")
        elif way == "ctrl c":
            self.type("C-c")
        else:
            os.kill(self.pid(), way)
        if not self.wait(lambda: not self.alive(), 6):
            self.wrong(f"it does not end by {way}")
            os.kill(self.pid(), signal.SIGKILL)
            return
        self.wait(lambda: self.statuses(), 2)
        time.sleep(0.3)
        expected = 130 if self.plain and way in ("ctrl c", signal.SIGINT) else ENDS[way]
        if self.statuses()[:1] != [expected]:
            self.wrong(f"ended by {way} with status {self.statuses()}, not {expected}")
        self.left_behind()

    def early(self):
        """The menu's last line leaves the program too; nothing else may end it."""
        self.wait(self.statuses, 2)
        time.sleep(0.3)
        if self.statuses()[:1] != [0]:
            self.wrong(f"it ended by itself with {self.statuses()}: {self.screen().strip()[-200:]}")
        self.left_behind()

    def statuses(self):
        """After the first prompts: 0 from before the start, 148 of each time it was stopped."""
        lines = [int(line) for line in (self.work / "statuses").read_text().split()]
        return [status for status in lines[1:] if status not in (147, 148)]

    def left_behind(self):
        if self.shown() != "0 1":
            self.wrong(f"the alternate screen and cursor are {self.shown()}")
        if self.modes() != self.before:
            self.wrong("the terminal's modes are not as they were")
        noise = NOISE.search(self.tmux("capture-pane", "-p", "-S", "-200", "-t", "sit"))
        if noise:
            self.wrong(f"on the screen: {noise.group()}")
        # A paste that the terminal still brackets would reach the shell with signs around it.
        self.type("C-u")
        self.tmux("set-buffer", "pasted")
        self.tmux("paste-buffer", "-p", "-t", "sit")
        time.sleep(0.2)
        if "200~" in self.screen():
            self.wrong("pastes are still bracketed")

    def run(self):
        try:
            self.start()
            if not self.alive():
                self.wrong("it did not start: " + self.screen().strip()[-200:])
                return
            until = time.time() + self.draw.uniform(1, 4)
            while time.time() < until and self.alive():
                self.act()
                time.sleep(self.draw.uniform(0, 0.25))
            self.measure()
            if self.alive():
                self.moves()
                self.end()
            else:
                self.early()
        except ProcessLookupError:
            self.early()
        finally:
            self.tmux("kill-server")

    def words(self):
        return f"session {self.number} (TERM={self.term}, {self.locale}, {' '.join(self.options) or 'no options'})"


def main():
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 100
    seed = sys.argv[2] if len(sys.argv) > 2 else "1"
    first = int(sys.argv[3]) if len(sys.argv) > 3 else 1
    bad, peaks = 0, []
    with tempfile.TemporaryDirectory() as folder:
        for number in range(first, first + count):
            session = Session(number, seed, pathlib.Path(folder))
            session.run()
            peaks.append(session.peak)
            bad += bool(session.faults)
            for fault in session.faults:
                print(f"{session.words()}: {fault}", flush=True)
    print(f"{count} sessions, seed {seed}: {bad} with faults; memory at most {max(peaks) / 1000:.0f} MB,"
          f" median {statistics.median(peaks) / 1000:.0f} MB")
    sys.exit(1 if bad else 0)


if __name__ == "__main__":
    main()
