"""What the planner says, in each language: every saying in the code has its sentence and all of its values."""

from __future__ import annotations

import ast
import tomllib
from datetime import timedelta
from pathlib import Path

import pytest

from server.conversation.telling.cards import built_in_cards, cards_meant, red_flag_line
from server.conversation.telling.planned import say_factor, say_planned
from server.conversation.telling.reader import Reader
from server.conversation.understanding.language import folders
from server.event.model import IfThenCard
from server.plan.movements import Addend, part_of
from server.plan.notes import Saying, note, saying
from server.sentences import GAP, fallback, folder, has, languages

ROOT = Path(__file__).parents[3]


def sayings() -> list[Saying]:
    """Every `note("kind", …)` and `saying("kind", …)` of the plan room, with made-up values of its names."""
    found = []
    for path in sorted((ROOT / "server/plan").rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            name = getattr(getattr(node, "func", None), "id", "")
            if not isinstance(node, ast.Call) or name not in ("note", "saying") or not node.args:
                continue
            kind = node.args[0]
            if not (isinstance(kind, ast.Constant) and isinstance(kind.value, str)):
                continue
            keys = [k.arg for k in node.keywords if k.arg]
            if len(keys) < len(node.keywords):
                continue
            values = {k: _value(k) for k in keys}
            inner = [saying("source-costs")] if len(node.args) > 1 else []
            found.append(note(kind.value, *inner, **values))
    return found


def _value(name: str) -> float | str:
    if name.endswith("_odds"):
        return 0.7
    return 7.0 if "_" in name or name in ("count", "one_in", "times", "seats", "people") else "x"


SAYINGS = sayings()


def test_there_are_sayings_to_try() -> None:
    """The search finds the planner's sayings: a renamed function fails here and not silently."""
    assert len({s.kind for s in SAYINGS}) > 60
    assert any(s.kind == "move-stranded" for s in SAYINGS)


@pytest.mark.parametrize("language", languages())
def test_every_part_of_a_drive_has_a_word(language: str) -> None:
    """What a way is made of is told in each language: the names stand in the code that makes them."""
    names = set()
    for path in sorted((ROOT / "server/plan/movements").glob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "Addend":
                names |= {a.value for a in node.args[:1] if isinstance(a, ast.Constant)}
    names |= {"traffic", "full car park", "fuel"}
    assert len(names) >= 11
    for name in names:
        text = say_planned(Reader(language, "UTC", "UTC"), part_of(Addend(name, timedelta(minutes=4))))
        assert "4 min" in text


@pytest.mark.parametrize("language", languages())
@pytest.mark.parametrize("said", SAYINGS, ids=[s.kind for s in SAYINGS])
def test_every_saying_has_its_sentence(language: str, said: Saying) -> None:
    """No saying of the planner lacks a sentence or leaves a gap in it."""
    text = say_planned(Reader(language, "Europe/London", "Europe/London"), said)
    assert text
    assert GAP not in text


def test_units_are_shown_by_the_numbers_name() -> None:
    """Seconds read as h:mm, km in the reader's unit, a pace as m:ss; a list in words."""
    miles = Reader("en", "Europe/London", "Europe/London", miles=True)
    plain = Reader("en", "Europe/London", "Europe/London")
    walking = note(
        "walking", saying("span", from_km=3.0, to_km=4.5), walked_whole_km=12.2, course_whole_km=161.0
    )
    assert say_planned(plain, walking).endswith("12 km of 161 km; the longest are 3.0 km to 4.5 km")
    assert "8 miles of 100 miles" in say_planned(miles, walking)
    easy = saying("source-easy", easy_pace_s=390.0, margin_pace_s=90.0)
    assert say_planned(plain, easy) == "easy pace 6:30 plus 1:30 min/km, scaled from 50 km"


@pytest.mark.parametrize(
    "name", ["level ground", "hills", "fade", "night", "heat", "mud", "snow", "altitude"]
)
def test_every_factor_has_a_word(name: str) -> None:
    """What the pace model names is worded; what a person named stays as it is."""
    german = Reader("de", "Europe/London", "Europe/London")
    assert has(f"plan-factor-{name.replace(' ', '-')}")
    assert say_factor(german, name) != name
    assert say_factor(german, "surface: bog") == "bog"
    assert say_factor(german, "wet ground") == "wet ground"


@pytest.mark.parametrize("language", languages())
def test_cards_of_every_language_are_the_same_cards(language: str) -> None:
    """Same ids in the same order, as many steps and flags, in words of its own; words by which each is meant,
    where people write in it."""
    behind, other = (built_in_cards("1", "112", x) for x in (fallback(), language))
    assert [c.id for c in other] == [c.id for c in behind]
    for one, same in zip(behind, other, strict=True):
        assert len(same.try_first) == len(one.try_first), one.id
        assert len(same.red_flags) == len(one.red_flags), one.id
        assert len(same.life_flags) == len(one.life_flags), one.id
    if language in folders():
        words = tomllib.loads((folder(language) / "troubles.toml").read_text(encoding="utf-8"))
        assert set(words) == {c.id for c in other}
        assert all(said and all(said) for said in words.values())
    assert (other == behind) is (language == fallback())
    line = red_flag_line("1", "112", language)
    assert "112" in line
    assert "{" not in line


@pytest.mark.parametrize(
    ("words", "cards"),
    [
        ("what if her stomach goes wrong", ("stomach",)),
        ("ihr Fuß ist wund", ("feet",)),
        ("Kopf gestoßen, was tun", ("head-injury",)),
        ("she is throwing up", ("stomach",)),
        ("blisters", ("feet",)),
        ("she fell", ("fall",)),
        ("she took a wrong turn", ("wrong-turn",)),
        ("what if she wants to stop", ("wants-to-stop",)),
        ("her torch is broken", ("lost-kit",)),
        ("she can't get warm", ("cannot-get-warm",)),
        ("ihr ist übel", ("stomach",)),
        ("Karte Füße", ("feet",)),
        ("card stomach", ("stomach",)),
        ("she hit her head", ("head-injury",)),
        ("sie hat sich den Kopf gestoßen", ("head-injury",)),
        ("she was stung by a wasp", ("allergy",)),
        ("her blood sugar", ("diabetes",)),
        ("sie ist zusammengebrochen", ("collapse",)),
        ("i am too tired to drive", ("drowsy-driver",)),
        ("she is late", ("runner-late",)),
        ("cards", ()),
    ],
)
def test_the_card_that_is_meant(words: str, cards: tuple[str, ...]) -> None:
    """People's own words lead to the card; none fits where none is meant."""
    assert cards_meant(built_in_cards("1", "112"), words) == cards


def test_a_card_of_the_events_own_is_found_by_its_trouble() -> None:
    """A trouble nobody foresaw is found by likeness of its words."""
    bull = IfThenCard("bull", "a bull in the field", ("round by the wall",))
    assert cards_meant((*built_in_cards("1", "112"), bull), "a bull is in the field") == ("bull",)
