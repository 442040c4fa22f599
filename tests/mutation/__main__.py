"""Breaks a room in small ways, one at a time, and counts how many of these breaks its own tests see.

`python -m tests.mutation watch --sample 60 --seed 1` copies the checkout beside itself into a temporary folder, has
mutmut make every mutant of `server/watch`, draws the sample by the seed and runs `tests/watch` on each. It prints the
share that a test killed and each survivor as a diff; `--json` prints the same as one line of JSON. Needs
`pip install -e '.[test,mutation]'`. What no test of the room runs at all counts as a survivor. Decorated functions and
constants of a module are not mutated.
"""

from __future__ import annotations

import argparse
import json
import os
import random
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Sequence
from dataclasses import asdict, dataclass
from pathlib import Path

import tomlkit

ROOT = Path(__file__).resolve().parents[2]
SURVIVED, NO_TESTS = 0, 33
GENERATE_ONLY = "none*"
"""A pattern that no mutant has: mutmut then makes all of them and runs none."""


@dataclass(frozen=True, slots=True)
class Result:
    """What became of a sample: how many mutants there are in all, and by name which of those drawn survived."""

    room: str
    seed: int
    mutants: int
    drawn: int
    killed: int
    survivors: tuple[str, ...]


def main(argv: Sequence[str] | None = None) -> int:
    """The command; ends with 1 if less than `--least` percent were killed."""
    parser = argparse.ArgumentParser(prog="python -m tests.mutation", description=__doc__)
    parser.add_argument("room", help="a folder of server/ whose tests stand in tests/ under the same name")
    parser.add_argument("--sample", type=int, default=60, help="how many mutants are drawn (60)")
    parser.add_argument("--seed", type=int, default=1, help="which ones (1)")
    parser.add_argument("--least", type=float, default=0.0, help="percent that must be killed (0)")
    parser.add_argument("--only", default="*", help="mutants of files that match, such as 'alarm*' (all)")
    parser.add_argument("--json", action="store_true", help="one line of JSON instead of text")
    args = parser.parse_args(argv)
    if not (ROOT / "server" / args.room).is_dir() or not (ROOT / "tests" / args.room).is_dir():
        parser.error(f"'{args.room}' is no folder of both server/ and tests/")
    with tempfile.TemporaryDirectory(prefix="mutation-") as folder:
        copy = Path(folder)
        _copy(copy, args.room, args.only)
        _mutmut(copy, "run", GENERATE_ONLY, quiet=True)
        names = sorted(_codes(copy))
        if not names:
            parser.error(f"no mutants were made of server/{args.room}: see that `mutmut` runs there")
        drawn = random.Random(args.seed).sample(names, min(args.sample, len(names)))
        _mutmut(copy, "run", "--max-children", str(os.cpu_count() or 1), *drawn, quiet=args.json)
        codes = _codes(copy)
        alive = tuple(n for n in drawn if codes.get(n) in (None, SURVIVED, NO_TESTS))
        result = Result(args.room, args.seed, len(names), len(drawn), len(drawn) - len(alive), alive)
        _print(result, copy, as_json=args.json)
    return 0 if 100.0 * result.killed >= args.least * result.drawn else 1


def _copy(to: Path, room: str, only: str) -> None:
    """What git knows of the checkout, with mutmut told what to break and which tests to run."""
    listed = subprocess.run(
        ["git", "ls-files", "-co", "--exclude-standard"], cwd=ROOT, check=True, capture_output=True, text=True
    )  # fmt: skip
    for name in listed.stdout.splitlines():
        if (ROOT / name).is_file():
            (to / name).parent.mkdir(parents=True, exist_ok=True)
            shutil.copy2(ROOT / name, to / name)
    project = tomlkit.parse((to / "pyproject.toml").read_text(encoding="utf-8"))
    pytest = project["tool"]["pytest"]["ini_options"]
    pytest["addopts"] = pytest["addopts"].replace("-n auto --dist loadscope --no-loadscope-reorder", "-n0")
    project["tool"]["mutmut"] = {
        "source_paths": ["server", "bot", "demo_event"],
        "only_mutate": [f"server/{room}/{only}"],
        # A migration grows to hundreds of thousands of lines when it is mutated.
        "do_not_mutate": ["server/journal/migrations/*"],
        "pytest_add_cli_args_test_selection": [f"tests/{room}"],
        "also_copy": ["README.md", "DEVELOPERS.md", "deploy", "tests"],
    }
    (to / "pyproject.toml").write_text(tomlkit.dumps(project), encoding="utf-8")


def _mutmut(copy: Path, *words: str, quiet: bool) -> None:
    """mutmut in the copy; its own end code says nothing, since survivors and a name that fits nothing are no errors."""
    out = subprocess.DEVNULL if quiet else None
    subprocess.run([sys.executable, "-m", "mutmut", *words], cwd=copy, check=False, stdout=out)


def _codes(copy: Path) -> dict[str, int | None]:
    """What became of each mutant by name; None as long as it was not run."""
    found: dict[str, int | None] = {}
    for meta in (copy / "mutants").rglob("*.meta"):
        found |= json.loads(meta.read_text(encoding="utf-8"))["exit_code_by_key"]
    return found


def _print(result: Result, copy: Path, *, as_json: bool) -> None:
    if as_json:
        print(json.dumps(asdict(result)))
        return
    share = 100.0 * result.killed / result.drawn
    for name in result.survivors:
        shown = subprocess.run(
            [sys.executable, "-m", "mutmut", "show", name], cwd=copy, check=False, capture_output=True, text=True
        )  # fmt: skip
        print(shown.stdout or name)
    print(
        f"server/{result.room}, seed {result.seed}: {result.killed} of {result.drawn} killed ({share:.0f}%), "
        f"drawn from {result.mutants}"
    )


if __name__ == "__main__":
    raise SystemExit(main())
