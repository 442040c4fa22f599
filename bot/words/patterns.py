"""Patterns written one alternative a line, so that a table of them can be read and added to."""

from __future__ import annotations

import re
from collections.abc import Mapping


def pattern(lines: str, short: Mapping[str, str] | None = None) -> re.Pattern[str]:
    """One pattern from its alternatives, one a line; a line that ends in a backslash goes on in the next.

    `short` names (capitals) are written out. Brackets group without capturing.
    """
    joined = re.sub(r"\\\n\s*", "", lines.strip())
    written = "|".join(f"(?:{line.strip()})" for line in joined.splitlines() if line.strip())
    for name, long in (short or {}).items():
        written = re.sub(rf"(?<![A-Z]){name}(?![A-Z])", lambda _, to=long: to, written)  # type: ignore[misc]
    return re.compile(re.sub(r"(?<!\\)\((?!\?)", "(?:", written))
