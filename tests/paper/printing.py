"""What a table prints, as plain text."""

from __future__ import annotations

import io
from collections.abc import Callable
from typing import Any

from rich.console import Console


def printed(prints: Callable[..., None], *shown: Any, width: int = 150) -> str:
    """The text of a table printed on a terminal of that width."""
    out = io.StringIO()
    prints(Console(file=out, width=width, color_system=None, legacy_windows=False), *shown)
    return out.getvalue()
