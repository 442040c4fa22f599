"""`python -m tests.research.fit.report FOLDER SCRIPT`: the tables of NOTEBOOK.md, on years kept back. Markdown.

Each fold is fitted once, without its years; the scoring script, the odds and the alarm lines are then tried on those
years alone. `--only scores|years|odds|overdue|alarms` prints one of them; `years` is printed only when asked for.
"""

import argparse
from datetime import UTC, datetime
from pathlib import Path

from tests.research.fit import alarms, heldout, overdue, reliability
from tests.research.fit.__main__ import say
from tests.research.fit.fold import FOLDS, folds
from tests.research.fit.tables import courses, load


def main() -> None:
    """Command line."""
    parser = argparse.ArgumentParser(prog="python -m tests.research.fit.report", description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("script", type=Path, help="the scoring script, with references.json beside it")
    parser.add_argument("--only", choices=("scores", "years", "odds", "overdue", "alarms"))
    parser.add_argument("--every", type=int, default=5, help="take each Nth runner; alarms each 2Nth")
    parser.add_argument("--folds", type=int, default=FOLDS, help="only the first N folds")
    chosen = parser.parse_args()
    script: Path = chosen.script
    every: int = chosen.every
    for name, races in courses(load(chosen.folder, script.parent / "references.json")).items():
        found = list(folds(races, chosen.folds))
        say(
            f"\n{name}, {datetime.now(UTC).date()}, each {every}th runner; "
            + "; ".join(f.name() for f in found)
        )
        if chosen.only in (None, "scores"):
            say("\n" + "\n".join(heldout.rows(found, chosen.folder, script, every)))
        if chosen.only == "years":
            say("\n" + "\n".join(heldout.by_year(found, chosen.folder, script, every)))
        if chosen.only in (None, "odds"):
            say("\n".join(reliability.rows(found, every)))
        if chosen.only in (None, "overdue"):
            say("\n" + "\n".join(overdue.rows(found, every)))
        if chosen.only in (None, "alarms"):
            say("\n" + "\n".join(alarms.rows(found, 2 * every)))


if __name__ == "__main__":
    main()
