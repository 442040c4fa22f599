"""The pure rooms reach out to nothing: their imports are read and held to the list of what is pure."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
PURE = (
    "server/course", "server/plan", "server/forecast", "server/watch", "server/wording", "server/event",
    "server/facts", "bot/words",
)  # fmt: skip
OUTSIDE = frozenset(
    {
        "aiohttp", "sqlalchemy", "aiosqlite", "asyncpg", "alembic", "telegram", "apscheduler", "aiosmtplib",
        "asyncio", "socket", "ssl", "http", "urllib", "requests", "httpx", "subprocess", "threading", "os",
        "time", "sqlite3", "random", "secrets", "structlog", "logging", "click", "jinja2", "prometheus_client",
    }
)  # fmt: skip
OUTER_ROOMS = ("server.api", "server.pages", "server.journal", "server.app", "server.ticker", "server.cli",
               "server.settings", "server.log", "server.clock", "bot.desk", "bot.channels", "bot.worker")  # fmt: skip
CLOCKS = frozenset({"now", "today", "utcnow", "time", "monotonic", "perf_counter"})
FILES_ALLOWED = {
    "server/wording/sentences.py": "its own sentences, once",
    "server/forecast/fit": "a command, not part of the room",
}

MODULES = sorted(
    p.relative_to(ROOT)
    for room in PURE
    for p in (ROOT / room).rglob("*.py")
    if not str(p.relative_to(ROOT)).startswith("server/forecast/fit/")
)


def imported(tree: ast.AST) -> set[str]:
    """Every module a file imports, wherever in it the import stands."""
    found: set[str] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            found |= {a.name for a in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            found.add(node.module)
            found |= {f"{node.module}.{a.name}" for a in node.names}
    return found


def asks_a_clock_or_a_file(tree: ast.AST) -> set[str]:
    """Calls such as datetime.now() and open(): what would make an answer depend on more than its arguments."""
    found: set[str] = set()
    for node in ast.walk(tree):
        if not isinstance(node, ast.Call):
            continue
        if isinstance(node.func, ast.Name) and node.func.id in ("open", "input", "print"):
            found.add(node.func.id)
        if isinstance(node.func, ast.Attribute) and node.func.attr in CLOCKS:
            owner = node.func.value
            if isinstance(owner, ast.Name) and owner.id in ("datetime", "date", "time"):
                found.add(f"{owner.id}.{node.func.attr}")
    return found


def test_there_are_rooms_to_read() -> None:
    """The list of pure rooms finds modules in each, so that a moved folder fails here and not silently."""
    for room in PURE:
        assert any(str(m).startswith(room) for m in MODULES), room


@pytest.mark.parametrize("module", MODULES, ids=str)
def test_a_pure_module_reaches_out_to_nothing(module: Path) -> None:
    """No library that talks to the world, no outer room, no clock, no file."""
    tree = ast.parse((ROOT / module).read_text(encoding="utf-8"))
    names = imported(tree)
    assert {n for n in names if n.split(".")[0] in OUTSIDE} == set()
    assert {n for n in names if n.startswith(OUTER_ROOMS)} == set()
    assert asks_a_clock_or_a_file(tree) == set()


@pytest.mark.parametrize(
    ("text", "bad"),
    [
        ("import aiohttp", True),
        ("def f():\n    from sqlalchemy import select", True),
        ("from server.journal import Journal", True),
        ("from server import journal", True),
        ("from datetime import datetime\nx = datetime.now()", True),
        ("open('x')", True),
        ("import numpy", False),
        ("from server.facts.entry import Entry", False),
    ],
)
def test_the_reader_sees_what_it_must(text: str, bad: bool) -> None:
    """The check itself can fail: it finds hidden imports, outer rooms, clocks and files."""
    tree = ast.parse(text)
    names = imported(tree)
    found = {n for n in names if n.split(".")[0] in OUTSIDE or n.startswith(OUTER_ROOMS)}
    assert bool(found | asks_a_clock_or_a_file(tree)) is bad
