"""An event file whose crew would break a rule of the race is refused where files are checked and loaded."""

from __future__ import annotations

from pathlib import Path

import pytest

from server.api.building import BuildError, build

DEMO = Path(__file__).resolve().parents[3] / "demo_event"
YARD = 'parking = "estate yard, ask at the gate", walk_in_minutes = 4'
REFUSED = [
    # (what is replaced, by what, the rule, text of the line it is said on)
    (
        YARD,
        f'{YARD}, open_to = "Sat 11:00"',
        "no crew at Brindle Gate after Saturday 11:00",
        'point = "brindle"',
    ),
    ("vehicles_max = 2", "vehicles_max = 1", "the rules allow 1", 'car = "'),
]


def demo(old: str, new: str) -> str:
    """The demo's event file with one thing changed."""
    text = (DEMO / "event.toml").read_text(encoding="utf-8")
    assert old in text
    return text.replace(old, new, 1)


def files() -> dict[str, bytes]:
    """Every file the demo has beside its event file."""
    return {p.name: p.read_bytes() for p in DEMO.iterdir() if p.is_file()}


def test_the_demo_itself_is_allowed() -> None:
    """Nothing in the demo breaks a rule of its race."""
    assert build((DEMO / "event.toml").read_text(encoding="utf-8"), files()).event.meetings


@pytest.mark.parametrize(("old", "new", "rule", "row"), REFUSED)
def test_a_broken_rule_stands_in_the_way_of_loading(old: str, new: str, rule: str, row: str) -> None:
    """The error names the rule, the line of the meeting and what to do."""
    text = demo(old, new)
    with pytest.raises(BuildError) as refused:
        build(text, files(), "my.toml")
    found = [p for p in refused.value.problems if rule in str(p.what)]
    assert found, str(refused.value)
    rows = [n for n, line in enumerate(text.split("\n"), 1) if row in line]
    assert any(p.line is not None and min(abs(p.line - n) for n in rows) <= 1 for p in found)
    assert all(p.remedy for p in found)


def test_a_second_car_brought_along_breaks_the_rule_too() -> None:
    """One car is named for all of Jonas's meetings, but Ana, elsewhere with the van, has to bring it: two vehicles,
    which only the movements can see."""
    text = demo("vehicles_max = 2", "vehicles_max = 1")
    kept = [m for m in text.split("[[meetings]]") if 'car = "van"' not in m or "[event]" in m]
    text = "[[meetings]]".join(kept).replace('pacer_leaves = "tomas"\n', "")
    with pytest.raises(BuildError) as refused:
        build(text, files(), "my.toml")
    assert any("rule: one vehicle at most" in str(p.what) for p in refused.value.problems), str(refused.value)
