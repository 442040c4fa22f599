"""No sentence that a person reads stands in code: each is in server/conversation/languages, in every language."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
ROOMS = (
    "bot", "server/pages", "server/watch", "server/api", "server/plan", "server/paper", "server/facts",
    "server/forecast", "server/journal", "server/conversation",
)  # fmt: skip
# Files whose sentences nobody in the race reads, and who does.
FOR_OTHERS = {
    "server/api/openapi_extra.py": "programmers: what the doors for other machines take and answer",
    "server/api/acting.py": "programmers: what each call is for",
    "server/api/calls.py": "programmers: what each call is for",
    "server/api/fill_defaults.py": "programmers: what is missing in what they sent",
    "server/api/envelope.py": "programmers: what each error code means",
    "server/api/openapi.py": "programmers: the description of the interface",
    "server/api/reports.py": "programmers: which call to use instead",
    "server/api/auth.py": "programmers: how long a sender of wrong tokens waits",
    "server/api/metrics.py": "whoever watches the server: what each figure is",
    "server/plan/fuel.py": "whoever checks the plan: the papers that figures come from",
}
PLACES = [
    p
    for room in ROOMS
    for p in sorted((ROOT / room).rglob("*.py"))
    if str(p.relative_to(ROOT)) not in FOR_OTHERS
]
# Four words or more in a row: prose. Codes, keys, slugs, patterns and log events have fewer, or no spaces.
PROSE = re.compile(r"^[^\\|{}()\[\]<>*^$]*\b[A-Za-z’']+(?: [A-Za-z’',]+){3,}[^\\|{}()\[\]<>*^$]*$")
REGEX = re.compile(r"\(\?|\\[bwds]|\)\*|\||\[\^")


def _not_for_people(tree: ast.AST) -> set[int]:
    """Ids of the nodes whose strings no person in the race reads: documentation, errors raised to
    developers or to whoever runs the server, logs, asserts, patterns."""
    apart: set[int] = set()

    def leave_out(node: ast.AST) -> None:
        apart.update(id(n) for n in ast.walk(node))

    for node in ast.walk(tree):
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
            leave_out(node)
        if isinstance(node, ast.Raise | ast.Assert):
            leave_out(node)
        if isinstance(node, ast.Call):
            name = ast.unparse(node.func)
            if name.startswith(("log.", "logger.", "re.")) or name.endswith(
                ("Error", "pattern", "log.exception")
            ):
                leave_out(node)
            for keyword in node.keywords:
                if keyword.arg in ("detail", "says", "help", "why", "problem"):
                    leave_out(keyword)
    return apart


def sentences_in(source: str) -> Iterator[tuple[int, str]]:
    """Every string that reads like a sentence for people, with its line."""
    tree = ast.parse(source)
    apart = _not_for_people(tree)
    for node in ast.walk(tree):
        if id(node) in apart or not isinstance(node, ast.Constant) or not isinstance(node.value, str):
            continue
        text = node.value
        if REGEX.search(text) or not PROSE.match(text.strip()):
            continue
        # Prose for people begins with a capital or ends as a sentence; tables of words for parsing do neither.
        if text.strip()[:1].isupper() or text.strip()[-1:] in ".?!":
            yield node.lineno, text


@pytest.mark.parametrize("path", PLACES, ids=lambda p: str(p.relative_to(ROOT)))
def test_no_sentence_stands_elsewhere(path: Path) -> None:
    """A sentence for people is in `conversation/languages`, where every language has it; here stands only its name."""
    found = [f"line {line}: {text!r}" for line, text in sentences_in(path.read_text(encoding="utf-8"))]
    assert not found, "move to server/conversation/languages: " + "; ".join(found)


def test_what_is_left_out_is_still_needed() -> None:
    """A file is left out only while it has sentences for others; once it has none, it is looked at again."""
    for name in FOR_OTHERS:
        assert list(sentences_in((ROOT / name).read_text(encoding="utf-8"))), (
            f"{name} needs no exception any more"
        )


def test_the_check_finds_a_sentence() -> None:
    """The check would find a sentence put straight into code, and lets codes, logs and errors be."""
    bad = 'def f(): return "She is late at the next point."\n'
    assert [line for line, _ in sentences_in(bad)] == [1]
    good = (
        '"""A docstring may say what it likes, at length."""\n'
        'log.info("server refused what was sent to it.")\n'
        'raise ValueError("This is for whoever runs the server.")\n'
        'KEY = "arrived-next"\n'
        'P = re.compile(r"\\b(?:is she there yet now)\\b")\n'
    )
    assert list(sentences_in(good)) == []
