"""The command: see the package."""

from __future__ import annotations

import sys
from pathlib import Path

import tomli_w

from server.conversation.training.examples import examples, made_of, take
from server.conversation.training.fit import fit, rows_of, write
from server.conversation.training.grammar import WEIGHT, around
from server.conversation.training.report import by_hands

HELD_OUT = Path(__file__).with_name("held_out.toml")
"""How it did by hands left out, in percent of their sentences, when that was last measured."""
MODEL = Path(__file__).parents[1] / "understanding" / "model.npz"


def main(arguments: list[str]) -> int:
    """Run it."""
    if arguments[:1] == ["take"] and len(arguments) == 2:
        for line in take(Path(arguments[1])):
            sys.stdout.write(f"not taken: {line}\n")
        sys.stdout.write(f"{len(examples())} sentences\n")
        return 0
    if arguments not in ([], ["--quick"]):
        sys.stderr.write("usage: python -m server.conversation.training [--quick | take FOLDER]\n")
        return 2
    rows = rows_of(examples())
    made = rows_of(around(examples()), WEIGHT)
    data = write(fit([*rows, *made]), made_of())
    MODEL.write_bytes(data)
    sys.stdout.write(f"{len(rows)} sentences, {len(data) / 1000:.0f} kB\n")
    if not arguments:
        lines, figures = by_hands(rows, made)
        HELD_OUT.write_text(tomli_w.dumps(figures), encoding="utf-8")
        sys.stdout.write("\n".join(lines) + "\n")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
