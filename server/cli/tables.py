"""Where commands print their tables."""

from __future__ import annotations

import os

from rich.console import Console

PAPER_WIDTH = 140


def console() -> Console:
    """Where tables go; their width follows the terminal or COLUMNS, and is enough for all columns where neither says."""
    found = Console(highlight=False)
    told = found.is_terminal or os.environ.get("COLUMNS", "").isdigit()
    return found if told else Console(highlight=False, width=PAPER_WIDTH)
