"""What the help on an event file is made of: tables and their keys, with meaning and example."""

from __future__ import annotations

from dataclasses import dataclass

ALL = (0, 1, 2)
"""The example files there are: keys that exclude each other stand in different ones."""


@dataclass(frozen=True, slots=True)
class Key:
    """One key. `example` as it stands in the file ('' for a table of its own, whose keys are listed there)."""

    name: str
    means: str
    example: str = ""
    within: tuple[int, ...] = ALL


@dataclass(frozen=True, slots=True)
class KeyTable:
    """One table. `many`: there may be several, each begun with [[name]]. `wrap` is how a table inside another is put
    into its key; `before` and `after` are what else the example files need around it."""

    name: str
    means: str
    keys: tuple[Key, ...]
    many: bool = False
    wrap: str = "%s"
    before: str = ""
    after: str = ""
    within: tuple[int, ...] = ALL

    @property
    def head(self) -> str:
        """How it is begun: '[[points]]', 'crew = { … }'."""
        if "." in self.name:
            return f"{self.name.rpartition('.')[2]} = {self.wrap % '{ … }'} in {self.name.rpartition('.')[0]}"
        return f"[[{self.name}]]" if self.many else f"[{self.name}]"
