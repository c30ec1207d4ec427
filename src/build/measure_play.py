"""The time from the start of the program to its first picture, and then what a while of playing costs, in a
pseudo-terminal of 100 columns and 30 rows at 120 beats a minute.

usage: measure_play.py RUNS SECONDS JAVA JAR CHART [JAR ...]   (more jars are measured by turns in the same run)
"""

import fcntl
import os
import pty
import select
import statistics
import struct
import sys
import termios
import time

PATIENCE = 6.0
WARM = 5.0


class Program:
    """The program playing in a terminal of its own."""

    def __init__(self, java, jar, chart):
        self.start = time.monotonic()
        self.shown = b""
        self.pid, self.terminal = pty.fork()
        if self.pid == 0:
            os.environ["TERM"] = "xterm-256color"
            os.execv(java, [java, "-jar", jar, "play", "--tempo", "120", chart])
        fcntl.ioctl(self.terminal, termios.TIOCSWINSZ, struct.pack("HHHH", 30, 100, 0, 0))

    def read(self):
        if select.select([self.terminal], [], [], 0.02)[0]:
            self.shown += os.read(self.terminal, 65536)

    def processor(self):
        """Seconds of processor time used so far."""
        with open(f"/proc/{self.pid}/stat") as stat:
            fields = stat.read().rpartition(")")[2].split()
        return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")

    def memory(self, field):
        """Megabytes as the system counts them: VmRSS now, VmHWM at most."""
        with open(f"/proc/{self.pid}/status") as status:
            return next(int(line.split()[1]) for line in status if line.startswith(field)) / 1024

    def end(self):
        os.write(self.terminal, b"q")
        time.sleep(0.4)
        os.kill(self.pid, 9)
        os.waitpid(self.pid, 0)
        os.close(self.terminal)


def first_picture(java, jar, chart, title):
    """Seconds until the title stood on the screen, and the seconds of processor time it took."""
    program = Program(java, jar, chart)
    while title not in program.shown and time.monotonic() - program.start < PATIENCE:
        program.read()
    measured = time.monotonic() - program.start, program.processor()
    time.sleep(0.6)
    program.end()
    assert title in program.shown, "no picture came"
    return measured


def play(java, jar, chart, seconds):
    program = Program(java, jar, chart)
    while time.monotonic() - program.start < WARM:
        program.read()
    begin, processor, before = time.monotonic(), program.processor(), len(program.shown)
    while time.monotonic() - begin < seconds:
        program.read()
    lasted = time.monotonic() - begin
    print(
        f"{jar}: playing at 120 for {lasted:.0f} s: {(len(program.shown) - before) / lasted:.0f} bytes a second,"
        f" {100 * (program.processor() - processor) / lasted:.1f} % of a core,"
        f" {program.memory('VmRSS'):.0f} MB in memory, {program.memory('VmHWM'):.0f} MB at most"
    )
    program.end()


def main():
    runs, seconds, java, jar, chart, *more = sys.argv[1:]
    with open(chart) as text:
        title = next(line.split(":", 1)[1].strip() for line in text if line.startswith("title:"))
    times = {j: [] for j in [jar, *more]}
    for _ in range(int(runs)):
        for j in times:
            times[j].append(first_picture(java, j, chart, title.encode()))
    for j, measured in times.items():
        starts = sorted(s for s, _ in measured)
        processor = statistics.median(p for _, p in measured)
        print(
            f"{j}: {len(starts)} runs, first picture after {starts[0]:.2f} to {starts[-1]:.2f} s,"
            f" median {statistics.median(starts):.2f} s, {processor:.2f} s of processor time"
        )
        play(java, j, chart, float(seconds))


main()
