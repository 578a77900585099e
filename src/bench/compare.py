"""Times whole processes, Loopgauge's and numpy-peer.py's two, on the same pairs of recordings.

    mvn -B -q package -DskipTests && python3 src/bench/compare.py [RUNS]

They run in turn, so that whatever else the machine does meets all. Times are medians of the
wall clock and of user and system time together; memory is the largest resident set.
"""
import os
import pathlib
import statistics
import subprocess
import sys
import tempfile
import time
import wave

import numpy

HERE = pathlib.Path(__file__).parent
JAR = HERE.parent.parent / "target" / "loopgauge.jar"
RATE = 48000
DELAY = 523


def write(name, signal):
    with wave.open(str(name), "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(RATE)
        file.writeframes((signal * 32767).astype("<i2").tobytes())


def make_pair(folder, seconds):
    random = numpy.random.default_rng(1)
    sent = random.normal(0, 0.1, seconds * RATE)
    back = random.normal(0, 0.005, sent.size)
    back[DELAY:] += 0.5 * sent[:-DELAY]
    names = [folder / f"sent-{seconds}.wav", folder / f"back-{seconds}.wav"]
    for name, signal in zip(names, (sent, back)):
        write(name, signal)
    return [str(name) for name in names]


def run(command):
    """Wall seconds, processor seconds and MiB of one run."""
    start = time.perf_counter()
    process = subprocess.Popen(command, stdout=subprocess.DEVNULL)
    _, status, used = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    if process.returncode != 0:
        sys.exit(f"{command[0]} ended with {process.returncode}")
    wall = time.perf_counter() - start
    return wall, used.ru_utime + used.ru_stime, used.ru_maxrss / 1024


def compare(folder, seconds, runs):
    sent, back = make_pair(folder, seconds)
    ours = ["java", "-jar", str(JAR), "analyze", "--reference", sent, "--return", back]
    padded = [sys.executable, str(HERE / "numpy-peer.py"), sent, back]
    commands = {"loopgauge": ours, "numpy, 2^n": padded, "numpy, plain": [*padded, "--plain"]}
    for command in commands.values():
        run(command)
    results = [[run(command) for command in commands.values()] for _ in range(runs)]
    print(f"{seconds} s pair, {runs} runs" + "".join(f"{name:>14}" for name in commands))
    for i, name in enumerate(("wall s", "user+system s", "peak MiB")):
        medians = [statistics.median(r[which][i] for r in results) for which in range(3)]
        ratios = [statistics.median(r[0][i] / r[which][i] for r in results) for which in range(3)]
        print(f"  {name:18}" + "".join(f"{value:14.2f}" for value in medians))
        print("    loopgauge against" + "".join(f"{ratio:14.2f}" for ratio in ratios))


if __name__ == "__main__":
    runs = int(sys.argv[1]) if len(sys.argv) > 1 else 15
    with tempfile.TemporaryDirectory() as folder:
        for seconds in (5, 60):
            compare(pathlib.Path(folder), seconds, runs)
