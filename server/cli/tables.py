"""Where commands print their tables."""

from __future__ import annotations

from rich.console import Console

PAPER_WIDTH = 140


def console() -> Console:
    """Where tables go; their width follows the terminal, and is enough for all columns where there is none."""
    found = Console(highlight=False)
    return found if found.is_terminal else Console(highlight=False, width=PAPER_WIDTH)
