"""Which way each car of the crew comes, as far as an event file alone says it."""

from __future__ import annotations

from server.event import parse_event

MINI = """
[[people]]
name = "Sam"
phone = "+44 1632 960015"
parts = [ { kind = "crew", drives = true, car = "estate" } ]

[[drives]]
from = "start"
to = "chapel"
minutes = 70
confirmed_by = "sam"

[[drives]]
from = "chapel"
to = "finish"
minutes = 40
confirmed_by = "sam"

[[meetings]]
point = "finish"
crew = ["sam"]
car = "estate"
"""


def test_a_car_brought_beside_another_has_its_way_on_from_there(good) -> None:
    """Sam brings the estate to the chapel, which the van's crew meet her at too: its way to the finish begins there,
    not where the car first stood, whether the meeting names a car or its crew's parts do."""
    text = good.replace('name = "grey estate"', 'name = "grey estate"\nstarts_at = "start"') + MINI
    text = text.replace('kinds = ["finish"]', 'kinds = ["finish"]\ncrew = { parking = "yard" }')
    text = text.replace('point = "chapel"\ncrew = ["ana"]', 'point = "chapel"\ncrew = ["ana", "sam"]')
    assert parse_event(text).problems == ()
    by_part = text.replace(
        'point = "chapel"\ncrew = ["ana", "sam"]\ncar = "van"', 'point = "chapel"\ncrew = ["ana", "sam"]'
    )
    assert parse_event(by_part).problems == ()
    alone = text.replace('crew = ["ana", "sam"]', 'crew = ["ana"]')
    assert [str(p.what) for p in parse_event(alone).problems] == [
        "there is no drive from 'start' to 'finish', so 'estate' has no leave-by"
    ]


def test_a_car_that_stays_where_it_is_needs_no_drive(good) -> None:
    """She comes back to the car park of the meeting before, by its coordinates; half a kilometre on it is a drive."""
    point = "lat = 54.2, lon = -2.3"
    loop = (
        good.replace('kinds = ["finish"]', f'kinds = ["finish"]\ncrew = {{ {point} }}')
        + """
[[meetings]]
point = "finish"
crew = ["ana"]
car = "van"
"""
    )
    missing = "there is no drive from 'chapel' to 'finish', so 'van' has no leave-by"
    for here, is_told in ((point, False), ("lat = 54.205, lon = -2.3", True)):
        text = loop.replace('crew = { parking = "yard" }', f"crew = {{ {here} }}")
        assert (missing in [str(p.what) for p in parse_event(text).problems]) is is_told
