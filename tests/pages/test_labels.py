"""The pages' words get the values they speak of: a name that differs took the whole board down, for everybody."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path

import aiohttp
import pytest
from fluent.syntax import parse
from fluent.syntax.ast import Message, VariableReference
from fluent.syntax.visitor import Visitor

from server import sentences
from server.pages import labels
from server.pages.labels import label
from server.sentences import languages
from tests.pages.conftest import Site

PAGES = Path(labels.__file__).parent
SPOKEN_BY = {"word", "t", "label"}
"""Functions whose first text is the key of a label."""


class _Names(Visitor):  # type: ignore[misc] # fluent.syntax has no types
    def __init__(self) -> None:
        self.found: set[str] = set()

    def visit_VariableReference(self, node: VariableReference) -> None:
        self.found.add(node.id.name)


def _wanted(language: str) -> dict[str, set[str]]:
    """Of every label of a language the names of its values."""
    (text,) = sentences.sources(language, pages=True).values()
    wanted = {}
    for entry in parse(text).body:
        if isinstance(entry, Message):
            names = _Names()
            names.visit(entry.value)
            wanted[entry.id.name] = names.found
    return wanted


def _in_code(path: Path) -> Iterator[tuple[str, set[str]]]:
    """Key and names of every call that writes its key out, and of those that begin one ("race-" + …) all it may be."""
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if not isinstance(node, ast.Call):
            continue
        name = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
        texts = [a for a in node.args if isinstance(a, ast.Constant) and isinstance(a.value, str)]
        if name not in SPOKEN_BY or not texts:
            continue
        given = {k.arg for k in node.keywords if k.arg}
        for k in node.keywords:
            if k.arg is None and isinstance(k.value, ast.Dict):
                given |= {key.value for key in k.value.keys if isinstance(key, ast.Constant)}
        yield str(texts[-1].value), given


def _in_templates(path: Path) -> Iterator[tuple[str, set[str]]]:
    for key, values in re.findall(r"\bt\(\s*\"([a-z-]+)\"((?:[^()]|\([^()]*\))*)\)", path.read_text("utf-8")):
        yield key, set(re.findall(r"\b(\w+)\s*=(?!=)", values))


def _calls() -> list[tuple[str, str, set[str]]]:
    code = [(p.name, *c) for p in sorted(PAGES.rglob("*.py")) for c in _in_code(p)]
    return code + [(p.name, *c) for p in sorted((PAGES / "templates").iterdir()) for c in _in_templates(p)]


@pytest.mark.parametrize("language", languages())
def test_every_label_is_given_the_values_it_speaks_of(language: str) -> None:
    """The names in the Fluent file are those in the code, wherever the key is written out."""
    wanted = _wanted(language)
    calls = _calls()
    assert len(calls) > 50
    wrong = [
        f"{where}: {key} lacks {', '.join(sorted(wanted[key] - given))}"
        for where, key, given in calls
        if key in wanted and wanted[key] - given
    ]
    assert wrong == []


async def test_the_board_stands_when_somebody_says_where_they_are(site: Site) -> None:
    """Ana writes that she stands at a point: everybody's board says so and since when."""
    headers = {"Origin": site.url}
    async with aiohttp.ClientSession(
        cookies={"stilepost": await site.token("ana")}, headers=headers
    ) as session:
        said = {"key": "k1", "text": "i'm at brindle gate"}
        async with session.post(site.url + "/v1/chat", json=said) as reply:
            assert "you are at Brindle Gate" in (await reply.json())["data"]["text"]
    site.clock.advance(timedelta(minutes=1))
    for person in ("ana", "jonas", "ines"):
        async with (
            aiohttp.ClientSession(cookies={"stilepost": await site.token(person)}) as session,
            session.get(site.url + "/") as reply,
        ):
            assert reply.status == 200
            assert "at Brindle Gate since" in await reply.text()


async def test_the_card_of_who_is_there_names_no_leave_by(site: Site) -> None:
    """Ana stands at her next meeting: her card says so and until when to wait; Jonas's board keeps its leave-by."""
    headers = {"Origin": site.url}
    pages = {}
    for person, text in (("ana", "i'm at brindle gate"), ("jonas", "where is she")):
        cookies = {"stilepost": await site.token(person)}
        async with aiohttp.ClientSession(cookies=cookies, headers=headers) as session:
            await session.post(site.url + "/v1/chat", json={"key": "k1", "text": text})
            async with session.get(site.url + "/") as reply:
                pages[person] = (await reply.text()).split("<h4>")[1].split("</dl>")[0]
    assert "you are there" in pages["ana"]
    assert "Leave by" not in pages["ana"]
    assert "Wait until" in pages["ana"]
    assert "Leave by" in pages["jonas"]


def test_a_value_that_is_lacking_costs_a_word_and_not_the_page() -> None:
    """At night half a sentence is worth more than no board; the log says what is wrong."""
    assert label("en", "people-at", name="Brindle Gate").startswith("at Brindle Gate since")
