"""Which line of a TOML text each value stands on, since the standard parser tells none.

`line_index` takes a text that the standard parser has accepted. `with_seconds` lets people write a time
without seconds, which TOML 1.0 forbids and hands write all the same.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator

Path = tuple[str | int, ...]

_STRINGS_AND_COMMENTS = re.compile(
    r'"""(?:\\.|(?!""").)*"{3,5}'
    r"|'''(?:(?!''').)*'{3,5}"
    r'|"(?:\\.|[^"\\\n])*"'
    r"|'[^'\n]*'"
    r"|\#[^\n]*",
    re.DOTALL,
)
_NO_SECONDS = re.compile(r"(?<![\w:.+-])(\d{4}-\d\d-\d\d[Tt ]\d\d:\d\d)(?![:\d])")
_MARK = re.compile(r"\[\[|\]\]|[\[\]{},=\n]|[^\s\[\]{},=.]+|\.")


def with_seconds(text: str) -> str:
    """Date-times such as 2027-06-19T05:00 outside strings and comments get ':00'; lines stay lines."""
    if _NO_SECONDS.search(text) is None:
        return text
    ends = [m.end() for m in _NO_SECONDS.finditer(masked(text))]
    pieces, last = [], 0
    for end in ends:
        pieces += [text[last:end], ":00"]
        last = end
    return "".join([*pieces, text[last:]])


def line_index(text: str) -> dict[Path, int]:
    """The line (from 1) of every key, table and array item of a valid TOML text."""
    return _Indexer(text).run()


def masked(text: str) -> str:
    """Strings become as many letters s, comments blanks, so that structure can be read by characters."""

    def mask(m: re.Match[str]) -> str:
        return (" " if m[0].startswith("#") else "s") * len(m[0])

    return _STRINGS_AND_COMMENTS.sub(mask, text)


class _Indexer:
    """Walks the tokens of a masked text; knows only structure, as the text is known to be valid."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.starts = [0, *(m.end() for m in re.finditer("\n", text))]
        self.marks = [(m.start(), m.end(), m[0]) for m in _MARK.finditer(masked(text))]
        self.i = 0
        self.lines: dict[Path, int] = {}
        self.counts: dict[Path, int] = {}

    def run(self) -> dict[Path, int]:
        """Every path with its line."""
        here: Path = ()
        while self.i < len(self.marks):
            mark = self.marks[self.i][2]
            if mark == "\n":
                self.i += 1
            elif mark in ("[", "[["):
                here = self._header(mark)
            else:
                self._pair(here)
        return self.lines

    def _header(self, mark: str) -> Path:
        line = self._line()
        self.i += 1
        path: Path = ()
        keys = list(self._keys())
        for n, key in enumerate(keys):
            path = (*path, key)
            if path in self.counts and (n < len(keys) - 1 or mark == "["):
                path = (*path, self.counts[path])
        if mark == "[[":
            self.counts[path] = self.counts.get(path, -1) + 1
            self.lines.setdefault(path, line)
            path = (*path, self.counts[path])
        self.i += 1
        self.lines[path] = line
        return path

    def _pair(self, here: Path) -> None:
        line = self._line()
        path = here
        for key in self._keys():
            path = (*path, key)
            self.lines.setdefault(path, line)
        self.i += 1  # the equals sign
        self._value(path)

    def _keys(self) -> Iterator[str]:
        """The parts of a dotted key, up to what ends it."""
        while self.i < len(self.marks) and self.marks[self.i][2] not in ("=", "]", "]]"):
            start, end, mark = self.marks[self.i]
            self.i += 1
            if mark != ".":
                raw = self.text[start:end]
                yield raw[1:-1] if raw[0] in "\"'" else raw

    def _value(self, path: Path) -> None:
        mark = self.marks[self.i][2]
        if mark == "{":
            self.i += 1
            self._inline_table(path)
        elif mark in ("[", "[["):
            self._array(path)
        else:
            while self.i < len(self.marks) and self.marks[self.i][2] not in (",", "}", "]", "]]", "\n"):
                self.i += 1

    def _inline_table(self, path: Path) -> None:
        while self.marks[self.i][2] != "}":
            if self.marks[self.i][2] in (",", "\n"):
                self.i += 1
            else:
                self._pair(path)
        self.i += 1

    def _array(self, path: Path) -> None:
        """'[[' here is two arrays opening, ']]' two closing: split them."""
        self._split(("[[", "["))
        self.i += 1
        n = 0
        while True:
            self._split(("]]", "]"))
            mark = self.marks[self.i][2]
            if mark == "]":
                self.i += 1
                return
            if mark in (",", "\n"):
                self.i += 1
                continue
            self.lines[(*path, n)] = self._line()
            self._value((*path, n))
            n += 1

    def _split(self, pair: tuple[str, str]) -> None:
        start, end, mark = self.marks[self.i]
        if mark == pair[0]:
            self.marks[self.i : self.i + 1] = [(start, start + 1, pair[1]), (start + 1, end, pair[1])]

    def _line(self) -> int:
        return bisect_right(self.starts, self.marks[self.i][0])
