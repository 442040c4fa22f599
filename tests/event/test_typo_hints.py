"""Slips that everybody makes are said in plain words, with the line as it should stand; one slip is one mistake."""

from __future__ import annotations

from datetime import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from server.event.read import parse_event
from server.event.typo_hints import as_moment, slip

FILE = """[event]
name = "The Hill"
time_zone = "Europe/London"
starts = 2027-06-19T05:00
route = "route.gpx"
emergency_number = "112"

[race_control]
name = "Race control"
phone = "+44 1632 960001"

[[points]]
id = "start"
name = "Start"
km = 0
kinds = ["start"]

[[points]]
id = "mill"
name = "Mill"
km = 15
kinds = ["crew access"]
crew = { parking = "weir" }
reports = [{ by = "crew", chance = 0.9 }]

[[points]]
id = "finish"
name = "Finish"
km = 60
kinds = ["finish"]

[[runners]]
id = "maren"
name = "Maren"
target = { finish = "9:00" }

[[people]]
id = "maren"
name = "Maren"
parts = [{ kind = "runner", runner = "maren" }]

[[people]]
id = "ines"
name = "Ines"
phone = "+44 1632 960012"
parts = [{ kind = "safety contact", runner = "maren", ladder = 1, calls_race_control = true }]

[[people]]
id = "ana"
name = "Ana"
phone = "+44 1632 960011"
parts = [{ kind = "crew", runner = "maren" }]

[[meetings]]
point = "mill"
runner = "maren"
crew = ["ana"]
"""


def errors(old: str, new: str) -> list[str]:
    """The errors of the file with one change."""
    assert old in FILE
    return [str(p) for p in parse_event(FILE.replace(old, new, 1)).errors]


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("19.06.2027 05:00", "2027-06-19T05:00"),
        ("19.6.2027 5:00 Uhr", "2027-06-19T05:00"),
        ("19/06/2027 at 5:00", "2027-06-19T05:00"),
        ("19 June 2027 5:00", "2027-06-19T05:00"),
        ("19. Juni 2027, 05:00", "2027-06-19T05:00"),
        ("2027-6-19T5:00", "2027-06-19T05:00"),
    ],
)
def test_a_date_as_one_writes_it_is_shown_as_the_file_has_it(written: str, meant: str) -> None:
    """With quotes or without; the line to write stands in the error."""
    assert as_moment(written) == meant
    (bare,) = errors("starts = 2027-06-19T05:00", f"starts = {written}")
    assert bare.startswith("event.toml:4: error: the date ")
    assert bare.endswith(f"Write starts = {meant}.")
    assert "TOML" not in bare
    (quoted,) = errors("starts = 2027-06-19T05:00", f'starts = "{written}"')
    assert quoted.endswith(f"Write starts = {meant}, without quotes.")


@given(st.datetimes(datetime.fromisoformat("2000-01-01"), datetime.fromisoformat("2099-12-31")))
def test_every_day_written_day_first_is_that_day(at: datetime) -> None:
    """As it is written on the continent and in Britain."""
    wall = at.replace(second=0, microsecond=0)
    assert datetime.fromisoformat(as_moment(f"{at:%d.%m.%Y %H:%M}")) == wall
    assert datetime.fromisoformat(as_moment(f"{at:%d/%m/%Y}")).date() == at.date()


@given(st.text(max_size=60))
def test_no_line_is_too_odd(row: str) -> None:
    """Whatever stands there, there is an answer or none, and no exception."""
    assert slip(row) is None or all(slip(row) or ())
    assert isinstance(as_moment(row), str)


def test_days_that_there_are_not() -> None:
    """31 June is no day, however it is written."""
    assert as_moment("31.06.2027") == ""
    (said,) = errors("2027-06-19T05:00", "2027-06-31T05:00")
    assert "is no day or time that there is" in said
    (said,) = errors("2027-06-19T05:00", "2027-06-19")
    assert "Add the time of day: starts = 2027-06-19T05:00" in said


@pytest.mark.parametrize("number", ["+44 1632 960001", "01632 960001", "01632960001", "(01632) 960-001"])
def test_a_telephone_number_without_quotes(number: str) -> None:
    """Said as what it is, not as a fault of syntax; an example has quotes and country code."""
    (said,) = errors('phone = "+44 1632 960001"', f"phone = {number}")
    assert f"the telephone number {number} stands without quotes" in said
    assert 'phone = "+44 1632 960001"' in said


def test_one_mistyped_id_is_one_mistake() -> None:
    """The runner's own id is wrong: her part, her crew's, her safety contact's and her meeting all point at it."""
    (said,) = errors('id = "maren"\nname = "Maren"\ntarget', 'id = "marn"\nname = "Maren"\ntarget')
    assert "there is no runner 'maren' (also on lines 46, 52, 56). Did you mean 'marn'?" in said
    warnings = [
        p
        for p in parse_event(FILE.replace('id = "maren"', 'id = "marn"', 1)).problems
        if "mix" in str(p.what)
    ]
    assert warnings == []


def test_a_ladder_that_is_truly_empty_is_told() -> None:
    """Without a mistyped runner nothing is held back."""
    said = errors("ladder = 1, ", "")
    assert any("the ladder is empty" in s for s in said)


@pytest.mark.parametrize(
    ("line", "said"),
    [
        (
            "starts = 19.06.2027 05:00",
            "das Datum 19.06.2027 05:00 ist anders geschrieben, als diese Datei es hat. Schreib starts",
        ),
        ("starts = 2027-06-31T05:00", "gibt es als Tag oder Uhrzeit nicht. Prüf Tag, Stunde und Minute"),
        ("phone = 01632 960001", "die Telefonnummer 01632 960001 steht ohne Anführungszeichen. Setz sie mit"),
    ],
)
def test_the_slips_are_told_in_german(line: str, said: str) -> None:
    """For a crew that reads German, whole."""
    key = line.split(" = ")[0]
    old = "starts = 2027-06-19T05:00" if key == "starts" else 'phone = "+44 1632 960001"'
    (problem,) = parse_event(FILE.replace(old, line, 1)).errors
    assert said in problem.in_language("de")
