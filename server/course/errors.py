"""The one error of the course room: what is wrong, where, and what to do next."""

from __future__ import annotations

from server.sentences import Worded


class CourseError(Exception):
    """A route file or a place that cannot be used.

    what: the fault in words; file: the name the caller gave; line: 1-based line of the file, None where
    no single line is at fault; remedy: what the person can do next. `str(error)` says them all.
    """

    def __init__(self, what: Worded, *, file: str, remedy: Worded, line: int | None = None) -> None:
        self.what = what
        self.file = file
        self.line = line
        self.remedy = remedy
        super().__init__(what)

    def in_language(self, language: str) -> str:
        """What is wrong and what to do, in a language."""
        return f"{self.what.in_language(language)}. {self.remedy.in_language(language)}"

    def __str__(self) -> str:
        where = self.file if self.line is None else f"{self.file}, line {self.line}"
        return f"{where}: {self.what}. {self.remedy}."
