"""Who can't come to meetings and who stands in, as it was said."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from server.event.model import Car, MeetingPlan, Part, PartKind
from server.facts.covering import fallen_and_taken
from server.facts.entry import Kind, Why

K = Kind


@pytest.fixture
def crewed(event: Any) -> Any:
    """Ana goes to m1 and m3 in the van, jonas to m2 in the estate; tom's part is with the van."""
    van, estate = (Car(x, x, 5) for x in ("van", "estate"))
    meetings = tuple(
        MeetingPlan(m, p, "maren", crew=(who,), car=car)
        for m, p, who, car in (
            ("m1", "mill", "ana", "van"),
            ("m2", "chapel", "jonas", "estate"),
            ("m3", "moss", "ana", "van"),
        )
    )
    parts = (*event.parts, Part("tom", PartKind.CREW, "maren", car="van"))
    return replace(event, cars=(van, estate), meetings=meetings, parts=parts)


def said(make: Any, *rows: tuple[Any, ...]) -> list[Any]:
    """Entries from (kind, by, meeting or None, …fields), a minute apart."""
    found = []
    for n, (kind, by, meeting, *more) in enumerate(rows):
        fields = more[0] if more else {}
        found.append(make(kind, f"5:{n:02}", id=f"e{n}", by=by, runner=None, about=meeting, **fields))
    return found


CANT, CAN, TAKES, ASKED = K.CANNOT_COME, K.CAN_COME, K.TAKES_OVER, K.ASKED_TO_SWAP


@pytest.mark.parametrize(
    ("rows", "fallen", "taken"),
    [
        ([(CANT, "ana", "m1")], {("ana", "m1")}, {}),
        ([(CANT, "ana", None)], {("ana", None)}, {}),
        # Said by one of another: that one can't come, not whoever said it.
        ([(CANT, "jonas", "m1", {"person": "ana"})], {("ana", "m1")}, {}),
        ([(CANT, "ana", "m1"), (CAN, "ana", "m1")], set(), {}),
        ([(CANT, "ana", "m1"), (CAN, "ana", "m3")], {("ana", "m1")}, {}),
        ([(CANT, "ana", "m1"), (CAN, "ana", None)], set(), {}),
        # To no meeting at all, and then to one: that is the end of it.
        ([(CANT, "ana", None), (CAN, "ana", "m1")], set(), {}),
        # To a later one: to none before it.
        ([(CANT, "ana", None), (CAN, "ana", "m3")], {("ana", "m1")}, {}),
        ([(CANT, "ana", "m1"), (CAN, "jonas", "m1")], {("ana", "m1")}, {}),
        ([(CANT, "ana", "m1"), (TAKES, "jonas", "m1")], {("ana", "m1")}, {"m1": "jonas"}),
        # The first who took it holds it.
        ([(CANT, "ana", "m1"), (TAKES, "jonas", "m1"), (TAKES, "tom", "m1")], {("ana", "m1")}, {"m1": "jonas"}),
        # Who stands in and can't either: the meeting is free again.
        ([(CANT, "ana", "m1"), (TAKES, "jonas", "m1"), (CANT, "jonas", "m1")], {("ana", "m1"), ("jonas", "m1")}, {}),
        ([(CANT, "ana", "m1"), (TAKES, "jonas", "m1"), (CANT, "jonas", None)], {("ana", "m1"), ("jonas", None)}, {}),
        (
            [(CANT, "ana", "m1"), (TAKES, "jonas", "m1"), (CANT, "jonas", "m2")],
            {("ana", "m1"), ("jonas", "m2")},
            {"m1": "jonas"},
        ),
        # Who comes again has their own meetings again; another's stay with who took them.
        ([(CANT, "ana", "m1"), (TAKES, "jonas", "m1"), (CAN, "ana", "m1")], set(), {}),
        ([(CANT, "ana", None), (TAKES, "jonas", "m3"), (CAN, "ana", None)], set(), {}),
        ([(CANT, "ana", "m1"), (TAKES, "tom", "m2"), (CAN, "ana", "m1")], set(), {"m2": "tom"}),
        # With the car goes who is to ride in it.
        ([(CANT, "tom", None), (TAKES, "jonas", "m1"), (CAN, "tom", None)], set(), {}),
        ([(CANT, "tom", None), (TAKES, "ana", "m2"), (CAN, "tom", None)], set(), {"m2": "ana"}),
        # Taking one over says that one can.
        ([(CANT, "jonas", "m1"), (TAKES, "jonas", "m1")], set(), {"m1": "jonas"}),
        ([(CANT, "jonas", None), (TAKES, "jonas", "m1")], set(), {"m1": "jonas"}),
        ([(CANT, "jonas", "m2"), (TAKES, "jonas", "m1")], {("jonas", "m2")}, {"m1": "jonas"}),
        # Asked to take it: the asker keeps it until they do.
        ([(ASKED, "ana", "m1", {"to": "jonas"})], set(), {}),
        ([(ASKED, "ana", "m1", {"to": "jonas"}), (TAKES, "jonas", "m1")], {("ana", "m1")}, {"m1": "jonas"}),
        ([(ASKED, "ana", "m1", {"to": "jonas"}), (TAKES, "tom", "m1")], set(), {"m1": "tom"}),
        ([(ASKED, "ana", None, {"to": "jonas"}), (TAKES, "jonas", None)], set(), {}),
    ],
)  # fmt: skip
def test_who_can_not_come_and_who_stands_in(
    entry: Any, crewed: Any, rows: Any, fallen: set[tuple[str, str | None]], taken: dict[str, str]
) -> None:
    """After what was said in that order."""
    cant, stand_in = fallen_and_taken(said(entry, *rows), crewed)
    assert {(f.person, f.meeting) for f in cant} == fallen
    assert {t.meeting: t.person for t in stand_in} == taken


def test_why_and_in_which_words(entry: Any, crewed: Any) -> None:
    """Each reason is kept apart, the first words of each, with the entry they rest on; none given is 'not said'."""
    rows = [
        (CANT, "ana", "m1", {"why": Why.CAR, "words": "flat tyre"}),
        (CANT, "ana", "m1", {"words": "sorry"}),
        (CANT, "ana", "m1", {"why": Why.CAR, "words": "still flat"}),
    ]
    found, _ = fallen_and_taken(said(entry, *rows), crewed)
    assert [(f.why, f.words, f.stamp.entry) for f in found] == [
        (Why.CAR, "flat tyre", "e0"),
        (Why.NOT_SAID, "sorry", "e1"),
    ]


def test_who_gave_a_meeting_away_did_so_by_the_word_that_took_it(entry: Any, crewed: Any) -> None:
    """The asker's words, at the moment of the other's yes; a second yes finds nothing to take."""
    rows = [
        (ASKED, "ana", "m1", {"to": "jonas", "words": "can you do the mill"}),
        (TAKES, "jonas", "m1"),
        (CAN, "ana", "m1"),
        (TAKES, "jonas", "m1"),
    ]
    found, taken = fallen_and_taken(said(entry, *rows[:2]), crewed)
    assert [(f.person, f.why, f.words, f.stamp.entry) for f in found] == [
        ("ana", Why.NOT_SAID, "can you do the mill", "e1")
    ]
    assert taken[0].stamp.entry == "e1"
    found, taken = fallen_and_taken(said(entry, *rows), crewed)
    assert [f.person for f in found] == []
    assert [(t.person, t.stamp.entry) for t in taken] == [("jonas", "e3")]


def test_who_gave_a_meeting_away_is_quoted_in_their_own_name(crewed: Any, entry: Any) -> None:
    """And not in that of whoever took it."""
    rows = (ASKED, "ana", "m1", {"to": "jonas", "words": "jonas, you go"}), (TAKES, "jonas", "m1")
    (gave,), _ = fallen_and_taken(said(entry, *rows), crewed)
    assert (gave.stamp.by, gave.words) == ("ana", "jonas, you go")
