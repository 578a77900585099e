"""Times the journal's commands as whole processes of 256 MiB on a journal of 100,000 entries.

    mvn -B -q package -DskipTests && python3 src/bench/journal.py [RUNS [FOLDER]]

The entries are copies of one that the program itself stored, of 5,000 evenings with 10 paths, before
and after, taken in by `journal import`. Each fifth evening is of the show "Season". Then 50 rows of it are damaged behind the program's back, five ways,
ten each. Every command that asks for all must end with 5 and name all 50. Figures are medians of
the wall clock and of processor time. FOLDER keeps the journal for another time.
"""
import json
import os
import pathlib
import random
import re
import resource
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import time
import uuid
from datetime import datetime, timedelta, timezone

JAR = pathlib.Path(__file__).parent.parent.parent / "target" / "loopgauge.jar"
ENTRIES = 100_000
PATHS = 10
AT_A_TIME = 5_000
DAMAGED = 50
LATER_KEYS = {"offset", "origin", "number", "link", "orderAt", "digest"}
DAMAGE = ["UPDATE entry SET zone = 'Europe/Lantern' WHERE id = ?",
          "UPDATE entry SET delay_samples = 1e300 WHERE id = ?",
          "UPDATE entry SET rate_hz = -1 WHERE id = ?",
          "UPDATE entry SET outcome = 'loud' WHERE id = ?",
          "UPDATE entry SET uncertainty_samples = -1 WHERE id = ?"]


def loopgauge(folder, *arguments, heap="2g"):
    environment = dict(os.environ, LOOPGAUGE_DATA=str(folder))
    return subprocess.run(["java", "-Xmx" + heap, "-jar", JAR, *arguments], cwd=folder,
                          env=environment, capture_output=True, text=True)


def exported(folder):
    """One entry that the program measured, by the keys of an export."""
    loopgauge(folder, "demo")
    loopgauge(folder, "measure", "--backend", "simulated", "--path", "vocal-house", "--chain",
              "loopgauge-demo/1/lantern-theatre.yaml", "--yes", "--journal", "--show", "First",
              "--when", "before")
    entry = json.loads(loopgauge(folder, "journal", "export").stdout)["entries"][0]
    (folder / "journal.db").unlink()
    return {key: value for key, value in entry.items() if key not in LATER_KEYS}


def copies(entry):
    chance = random.Random(1)
    first = datetime(2024, 1, 1, 18, tzinfo=timezone.utc)
    for n in range(ENTRIES):
        show, turn = divmod(n, 2 * PATHS)
        samples = round(entry["delaySamples"] + chance.gauss(0, 0.002), 4)
        document = re.sub(r'("delaySamples"\s*:\s*)[-0-9.]+', rf"\g<1>{samples}",
                          entry["document"], count=1)
        at = first + timedelta(days=show, minutes=turn)
        yield dict(entry, id=str(uuid.UUID(int=chance.getrandbits(128), version=4)),
                   at=at.strftime("%Y-%m-%dT%H:%M:%SZ"), show=f"Show {show}" if show % 5 else "Season",
                   when="before" if turn < PATHS else "after", path=f"path-{turn % PATHS}",
                   delaySamples=samples, document=document)


def fill(folder):
    entries = list(copies(exported(folder)))
    part = folder / "part.json"
    for begin in range(0, ENTRIES, AT_A_TIME):
        part.write_text(json.dumps({"schema": 1, "command": "journal export", "outcome": "exported",
                                    "entries": entries[begin:begin + AT_A_TIME]}))
        taken = loopgauge(folder, "journal", "import", part.name)
        assert taken.returncode == 0, taken.stderr
    part.unlink()


def damage(folder):
    store = sqlite3.connect(folder / "journal.db")
    for trigger in ("entry_is_kept", "entry_stays", "detail_is_kept"):
        store.execute(f"DROP TRIGGER IF EXISTS {trigger}")
    ids = [row[0] for row in store.execute("SELECT id FROM entry ORDER BY at_ms")]
    for n in range(DAMAGED):
        sql = DAMAGE[n % len(DAMAGE)]
        store.execute(sql, (ids[n * ENTRIES // DAMAGED],))
    store.commit()
    store.close()


def processor_seconds():
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def timed(folder, arguments):
    (folder / "out.json").unlink(missing_ok=True)
    used, started = processor_seconds(), time.perf_counter()
    done = loopgauge(folder, *arguments, heap="256m")
    named = set(re.findall(r"entry\s+([0-9a-f-]{36})\s+(?:is|holds)", done.stdout + done.stderr))
    return (time.perf_counter() - started, processor_seconds() - used, done.returncode, len(named))


def table(folder, runs, asked):
    for what, arguments in asked.items():
        taken = [timed(folder, arguments) for _ in range(runs)]
        wall, used = (statistics.median(run[part] for run in taken) for part in (0, 1))
        code, named = taken[-1][2:]
        print(f"| `{what}` | {wall:.1f} s | {used:.1f} s | {code} | {named} |", flush=True)


def asked():
    return {
        "--version": ["--version"],
        "journal list": ["journal", "list"],
        "journal list --last 100000": ["journal", "list", "--last", str(ENTRIES)],
        "journal list --shows": ["journal", "list", "--shows"],
        "journal compare (2 x 10)": ["journal", "compare", "--show", "Show 4001"],
        "journal compare (20,000)": ["journal", "compare", "--show", "Season"],
        "journal history (10,000)": ["journal", "history", "--path", "path-0"],
        "journal export": ["journal", "export", "-o", "out.json"],
        "journal check": ["journal", "check"],
    }


def main():
    runs = int(sys.argv[1]) if len(sys.argv) > 1 else 5
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(sys.argv[2] if len(sys.argv) > 2 else name).absolute()
        folder.mkdir(exist_ok=True)
        print("| command | wall | processor | exit code | damaged ones named |\n|---|---|---|---|---|")
        if not (folder / "journal.db").exists():
            fill(folder)
            table(folder, runs, asked())
            damage(folder)
        table(folder, runs, asked())


main()
