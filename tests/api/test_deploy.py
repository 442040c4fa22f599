"""What deploy/ and the README tell people to type is there: commands, options, settings, files."""

from __future__ import annotations

import re
from itertools import pairwise
from pathlib import Path

import click
import pytest

from server.cli.main import stilepost
from server.settings import table

ROOT = Path(__file__).parents[2]
PAGES = sorted(
    [
        ROOT / "README.md",
        ROOT / "DEVELOPERS.md",
        *(p for p in (ROOT / "deploy").iterdir() if p.is_file() and p.suffix != ".png"),
    ]
)
SETTINGS = {row.env for row in table()}


@pytest.mark.parametrize("page", PAGES, ids=lambda p: p.name)
def test_every_setting_named_is_one(page: Path) -> None:
    """A misspelt one would stop the start, at night."""
    named = set(re.findall(r"STILEPOST_[A-Z_]+", page.read_text("utf-8")))
    assert named <= SETTINGS


def commands(page: Path) -> list[list[str]]:
    """Every 'stilepost …' of a page: in backticks, in a shell line, in a unit or a container."""
    text = page.read_text("utf-8").replace('", "', " ").replace('["', "`").replace('"]', "`")
    found = re.findall(
        r"(?:`|/bin/|^|&& )stilepost ([a-z][^`#\n]*?)(?:`|$|\s{2,}#|, (?:then|and)\b)", text, re.M
    )
    return [line.split() for line in found]


@pytest.mark.parametrize("page", PAGES, ids=lambda p: p.name)
def test_every_command_named_is_one(page: Path) -> None:
    """With options that it knows."""
    for name, *words in commands(page):
        command = stilepost.commands.get(name)
        assert command is not None, (page.name, name)
        options = {
            o for p in command.params if isinstance(p, click.Option) for o in (*p.opts, *p.secondary_opts)
        }
        assert {w for w in words if w.startswith("--")} <= options, (page.name, name, words)


@pytest.mark.parametrize("page", PAGES, ids=lambda p: p.name)
def test_every_option_that_takes_a_value_is_given_one(page: Path) -> None:
    """Typed as it stands there it runs: '--qr' alone is refused."""
    for name, *words in commands(page):
        for option in stilepost.commands[name].params:
            if not isinstance(option, click.Option) or option.is_flag:
                continue
            for word, after in pairwise([*words, "--"]):
                assert word not in option.opts or not after.startswith("--"), (page.name, name, words)


def test_the_pages_name_the_commands_that_matter() -> None:
    """The reader of the test above reads: these were found."""
    named = {words[0] for page in PAGES for words in commands(page)}
    assert {
        "serve",
        "bot",
        "invite",
        "invitations",
        "token",
        "load",
        "backup",
        "restore",
        "demo",
        "plan",
    } <= named


@pytest.mark.parametrize("page", PAGES, ids=lambda p: p.name)
def test_every_file_of_ours_that_is_named_exists(page: Path) -> None:
    """Units, containers, pages."""
    text = page.read_text("utf-8")
    for name in re.findall(r"deploy/[A-Za-z@_.-]+\.(?:service|timer|yaml|conf|md)|deploy/Dockerfile", text):
        assert (ROOT / name).exists(), name
    for name in re.findall(r"\]\(([A-Za-z_./-]+)\)", text):
        assert (page.parent / name).exists(), name


def _limit(path: str) -> tuple[float, int] | None:
    """Requests a second and at once that the proxy lets through to a path, read as nginx reads its file: the first pattern
    that fits, else the front '/'; None where it sets no limit."""
    text = (ROOT / "deploy" / "nginx.conf").read_text("utf-8")
    rates = {z: float(r) for z, r in re.findall(r"zone=(\w+):10m rate=(\d+)r/s", text)}
    blocks = re.findall(r"location (=|~)? ?(\S+) \{(.*?)\}", text, re.S)
    exact = [b for how, at, b in blocks if how == "=" and at == path]
    fits = [b for how, at, b in blocks if how == "~" and re.search(at, path)]
    found = (exact + fits + [b for how, at, b in blocks if not how and at == "/"])[0]
    limited = re.search(r"limit_req zone=(\w+) burst=(\d+)", found)
    return None if limited is None else (rates[limited[1]], int(limited[2]))


@pytest.mark.parametrize(
    "path",
    ["/v1/events/e/runners/r/checkins", "/v1/events/e/runners/r/positions", "/v1/events/e/race", "/v1/report",
     "/v1/converse", "/v1/inbox/next", "/v1/outbox/claim", "/hooks/text", "/hooks/telegram", "/v1/chat",
     "/v1/events/e/notices/7/answer", "/v1/entries/e-1/take-back"],
)  # fmt: skip
def test_the_proxy_lets_a_timing_feed_through(path: str) -> None:
    """200 reports a second from one address, twice as many at once."""
    limit = _limit(path)
    assert limit is not None
    assert limit[0] >= 200
    assert limit[1] >= 400


def test_the_proxy_lets_every_call_for_help_through() -> None:
    """And pages less than reports, so that the reader of the test above reads."""
    assert _limit("/v1/events/e/help") is None
    pages = _limit("/board/e")
    assert pages is not None
    assert pages[0] < 200
