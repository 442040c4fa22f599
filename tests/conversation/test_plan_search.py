"""What people ask and the event file says in its writer's words: the line, and none for a question of something else."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

import pytest

import demo_event
from server.api.written import written
from server.conversation.telling.answer import PointHere, RunnerHere
from server.conversation.understanding import Context, lines_about
from server.event.model import Event
from server.event.read import parse_event

NOW = datetime(2027, 9, 11, 19, tzinfo=UTC)
FOLDER = Path(demo_event.__file__).parent


@pytest.fixture(scope="module")
def event() -> Event:
    """The demo's race."""
    found = parse_event((FOLDER / "event.toml").read_text("utf-8")).event
    assert found is not None
    return found


def asked(event: Event, who: str, words: str, *, plain: bool = False) -> list[str]:
    """Kind and place of each line found for somebody's question."""
    points = tuple(
        PointHere(p.id, p.name, p.km or 0.0, p.also, p.crew_access, p.finish)
        for p in event.course_of("maren").points
    )
    parts = event.parts_of(who)
    ctx = Context(
        NOW,
        "Europe/London",
        (RunnerHere("maren", "Maren", "214", event.starts, points),),
        parts=frozenset(p.kind for p in parts),
        own_runners=("maren",),
        people=tuple((p.id, p.name) for p in event.people),
    )
    found = lines_about(words, ctx, written(event, parts), me=who, plain=plain)
    return [f"{w.kind} {w.place or w.person}".strip() for w in found]


@pytest.mark.parametrize(
    ("who", "words", "lines"),
    [
        ("ana", "do I need to ask anyone before I drive into the estate yard?", ["parking brindle"]),
        ("ana", "do i hav to ask anyone at the estat yard", ["parking brindle"]),
        ("jonas", "is it right that they close the road at ravel tonight?", ["rule"]),
        ("jonas", "darf ich nach elf noch über ravel weiterfahren", ["rule"]),
        ("jonas", "après 23h on passe plus à ravel c'est ça ?", ["rule"]),
        ("tomas", "what do I have to carry as pacer?", ["must"]),
        ("tomas", "Was soll ich ihr auf keinen Fall sagen?", ["not_hear"]),
        ("tomas", "she wants to sit down every 10 min. what do i say to her", ["prompt"]),
        ("tomas", "who's sleeping when tonight? don't want to wake anybody", ["sleep ana", "sleep jonas"]),
        ("jonas", "can I go to bed now", ["sleep jonas"]),
        ("ana", "what's in the ember drop bag", ["bag ember"]),
        ("ana", "if i miss her at brindle what then", ["missed brindle"]),
        ("jonas", "has he got the spare head torch with him", ["kit ravel"]),
    ],
)
def test_the_line_is_found(event: Event, who: str, words: str, lines: list[str]) -> None:
    """In three languages, with typing errors, by what it says or by what it is for."""
    assert asked(event, who, words) == lines


@pytest.mark.parametrize(
    "words",
    [
        "will it rain tonight on the tops",
        "where is the nearest petrol station",
        "is there a pub near ravel",
        "do they have a microwave there",
        "how is my mother's bus running, she is coming to the finish",
        "who's winning?",
        "do you ever sleep",
        "cant sleep. is she happy?",
        "whats that howling",
        "Wie wird das Wetter?",
        "gibts da oben eine steckdose",
        "y a du vent chez vous là haut ?",
        "is she there?? is she there???",
    ],
)
def test_something_else_gets_no_line(event: Event, words: str) -> None:
    """Rather none than a wrong one, however one word of a line may stand in it."""
    assert asked(event, "ana", words) == []


def test_what_is_told_is_no_question(event: Event) -> None:
    """The words of a report are those of the lists too."""
    assert asked(event, "ana", "gone 1813 with torch and the warm top") == []


def test_only_what_somebody_may_see_is_looked_through(event: Event) -> None:
    """Who waits at home sees it all; somebody without a part the rules of the race alone."""
    kinds = {w.kind for w in written(event, event.parts_of("ines"))}
    assert {"rule", "must", "kit", "sleep", "prompt", "missed", "escape"} <= kinds
    assert {w.kind for w in written(event, ())} == {"rule", "must"}
