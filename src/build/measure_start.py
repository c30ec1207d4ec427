"""The time from the start of the program to its first picture, in a pseudo-terminal of 100 columns and 30 rows.

usage: measure_start.py RUNS JAVA JAR CHART [JAR ...]   (more jars are measured by turns in the same run)
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


def first_picture(java, jar, chart, title):
    """Seconds until the title stood on the screen, and the seconds of processor time it took."""
    start = time.monotonic()
    pid, terminal = pty.fork()
    if pid == 0:
        os.environ["TERM"] = "xterm-256color"
        os.execv(java, [java, "-jar", jar, "play", chart])
    fcntl.ioctl(terminal, termios.TIOCSWINSZ, struct.pack("HHHH", 30, 100, 0, 0))
    shown = b""
    while title not in shown and time.monotonic() - start < PATIENCE:
        if select.select([terminal], [], [], 0.02)[0]:
            shown += os.read(terminal, 65536)
    seconds = time.monotonic() - start
    with open(f"/proc/{pid}/stat") as stat:
        fields = stat.read().rpartition(")")[2].split()
    processor = (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")
    time.sleep(0.6)
    os.write(terminal, b"q")
    time.sleep(0.4)
    os.kill(pid, 9)
    os.waitpid(pid, 0)
    os.close(terminal)
    assert title in shown, "no picture came"
    return seconds, processor


def main():
    runs, java, jar, chart, *more = sys.argv[1:]
    with open(chart) as text:
        title = next(line.split(":", 1)[1].strip() for line in text if line.startswith("title:"))
    times = {j: [] for j in [jar, *more]}
    for _ in range(int(runs)):
        for j in times:
            times[j].append(first_picture(java, j, chart, title.encode()))
    for j, measured in times.items():
        seconds = sorted(s for s, _ in measured)
        processor = statistics.median(p for _, p in measured)
        print(
            f"{j}: {len(seconds)} runs, first picture after {seconds[0]:.2f} to {seconds[-1]:.2f} s,"
            f" median {statistics.median(seconds):.2f} s, {processor:.2f} s of processor time"
        )


main()
