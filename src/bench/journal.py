"""Times `journal list`, `history` and `compare` as whole processes on a journal of 100,000 entries.

    mvn -B -q package -DskipTests && python3 src/bench/journal.py [RUNS]

The entries are copies of one that the program itself stored, at 5,000 shows of 10 paths, before and
after, written into the file behind its back. `--version` is timed beside them: it is what any
command costs. Figures are medians of the wall clock.
"""
import os
import pathlib
import random
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import time
import uuid

JAR = pathlib.Path(__file__).parent.parent.parent / "target" / "loopgauge.jar"
ENTRIES = 100_000
PATHS = 10
DETAIL = ("note, setup, document, chain_name, chain_digest, backend, output, input, card_rate_hz,"
          " block_size, tool_version, digest")


def loopgauge(folder, *arguments):
    environment = dict(os.environ, LOOPGAUGE_DATA=str(folder))
    subprocess.run(["java", "-jar", JAR, *arguments], cwd=folder, env=environment,
                   stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)


def fill(folder):
    loopgauge(folder, "demo")
    loopgauge(folder, "measure", "--backend", "simulated", "--path", "vocal-house", "--chain",
              "loopgauge-demo/1/lantern-theatre.yaml", "--journal", "--show", "First", "--when",
              "before")
    store = sqlite3.connect(folder / "journal.db")
    detail = store.execute(f"SELECT {DETAIL} FROM detail").fetchone()
    chance = random.Random(1)
    for n in range(ENTRIES):
        show, turn = divmod(n, 2 * PATHS)
        name = str(uuid.UUID(int=chance.getrandbits(128), version=4))
        store.execute(
            "INSERT INTO entry (id, at_ms, zone, show_name, day_part, path, outcome, delay_samples,"
            " rate_hz, uncertainty_samples) VALUES (?, ?, 'UTC', ?, ?, ?, 'measured', ?, 48000,"
            " 0.005)",
            (name, 1_700_000_000_000 + show * 86_400_000 + turn * 60_000, f"Show {show}",
             "before" if turn < PATHS else "after", f"path-{turn % PATHS}",
             371.4 + chance.gauss(0, 0.002)))
        store.execute(f"INSERT INTO detail (entry_id, {DETAIL}) VALUES (?{', ?' * len(detail)})",
                      (name, *detail))
    store.commit()
    store.close()


def seconds(folder, *arguments):
    started = time.perf_counter()
    loopgauge(folder, *arguments)
    return time.perf_counter() - started


def main():
    runs = int(sys.argv[1]) if len(sys.argv) > 1 else 9
    asked = {
        "--version": ["--version"],
        "journal list": ["journal", "list"],
        "journal history": ["journal", "history", "--path", "path-3"],
        "journal compare": ["journal", "compare", "--show", "Show 4000"],
    }
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        fill(folder)
        times = {what: [] for what in asked}
        for _ in range(runs):
            for what, arguments in asked.items():
                times[what].append(seconds(folder, *arguments))
    for what, taken in times.items():
        print(f"{what:16} {statistics.median(taken):.2f} s")


main()
