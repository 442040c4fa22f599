"""From an event file and the files beside it to a plan: what it rests on is used, named, and refused where wrong."""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest

from server.api.building import BuildError, build
from server.event import Severity
from server.event.model import Goal, GroundState
from server.forecast.bridge import reference_of
from server.forecast.posterior import posterior
from server.plan.day import UNDERFOOT
from tests.plan import synthetic as made
from tests.plan.conftest import gpx
from tests.plan.english import said, source

HEAD = """\
[event]
name = "Ridge Fifty"
time_zone = "Europe/London"
starts = 2027-06-19T05:00
route = "route.gpx"
emergency_number = "112"
limit = "16:00"
{event}
[race_control]
phone = "+44 1632 960001"
[[points]]
id = "start"
name = "Fold"
kinds = ["start"]
[[points]]
id = "barn"
name = "Low Barn"
km = 25
{point}
[[points]]
id = "finish"
name = "Fold end"
kinds = ["finish"]
reports = [ {{ by = "volunteer", chance = 0.9 }} ]
[[runners]]
id = "maren"
name = "Maren"
{runner}
{more}
"""
FINISH = 'target = { finish = "9:00" }'
RACE = 'past_race = { name = "Fell 30", km = 30, ascent_m = 900, time = "4:10" }'


def text(runner: str = FINISH, *, event: str = "", point: str = "", more: str = "") -> str:
    """An event of 50 km with a point half way."""
    return HEAD.format(runner=runner, event=event, point=point, more=more)


@pytest.fixture(scope="module")
def route() -> bytes:
    """50 km north over hills of 100 m."""
    rows = [(50.0 + k * 0.0045 / 4, 10.0, 300.0 + 50.0 * math.sin(k / 6)) for k in range(400)]
    return gpx(rows)


@pytest.fixture(scope="module")
def runs() -> dict[str, bytes]:
    """Three of her runs, one in each format."""
    rng = np.random.default_rng(5)
    long, hill, easy = (
        replace(run, started=run.started + timedelta(days=k))
        for k, run in enumerate(made.record(rng, km, 0.06, 9.5, pauses=1) for km in (20.0, 14.0, 12.0))
    )
    return {"long.fit": made.to_fit(long), "hills.tcx": made.to_tcx(hill), "easy.gpx": made.to_gpx(easy)}


def splits(n: int = 40, at_barn: float = 0.46) -> bytes:
    """n finishers around 9 h, at the barn after that share."""
    rows = [
        f"{9 * 3600 * (0.9 + 0.2 * k / n) * at_barn:.0f},{9 * 3600 * (0.9 + 0.2 * k / n):.0f}"
        for k in range(n)
    ]
    return ("Low Barn,Fold end\n" + "\n".join(rows)).encode()


def planned(event: str, route: bytes, **files: bytes):
    """Her timetable, and what was built."""
    built = build(event, {"route.gpx": route, **{k.replace("_", "."): v for k, v in files.items()}})
    return built.timetables["maren"]


class TestUsed:
    """Each source is used and named, with its spread."""

    def test_published_costs_alone(self, route) -> None:
        """With a target and nothing else the source says so."""
        table = planned(text(), route)
        assert table.quality == "cost model"
        assert source(table.source) == "finish in 9:00; pace from published costs by gradient"

    def test_own_runs_in_every_format(self, route, runs) -> None:
        """Her recordings give limits; the source names how many, and how long."""
        table = build(
            text(f'{FINISH}\nown_runs = ["long.fit", "hills.tcx", "easy.gpx"]'), {"route.gpx": route, **runs}
        ).timetables["maren"]
        assert table.quality == "own data"
        assert "3 of her own runs, 46 km" in source(table.source)
        assert any("longest run recorded" in n for n in said(table.notes))

    def test_own_runs_without_a_target(self, route, runs) -> None:
        """No target: the power of her runs says what she takes, with a spread wider than her own shape's, and a
        plan for her known power is near what that power takes."""
        event = text('own_runs = ["long.fit", "hills.tcx", "easy.gpx"]')
        table = build(event, {"route.gpx": route, **runs}).timetables["maren"]
        assert source(table.source).startswith("3 of her own runs")
        assert any("gives" in n and "1 in 10 faster" in n for n in said(table.notes))
        assert table.spread > 0.10
        # The truth: 9.5 W/kg held on runs of 1.5 to 3 h, carried to the hours of this race (POWER_FALLS).
        assert table.power_w_kg == pytest.approx(
            9.5 * (table.rows[-1].arrive[Goal.B].total_seconds() / 3600 / 2) ** -0.07, rel=0.12
        )

    def test_a_past_race_without_a_target(self, route) -> None:
        """No target: the past race gives it, rounded to a minute, with its 10% and 90% sides in the notes."""
        table = planned(text(RACE), route)
        whole = table.rows[-1].arrive[Goal.B]
        assert whole % timedelta(minutes=1) == timedelta(0)
        assert timedelta(hours=6) < whole < timedelta(hours=8)
        assert source(table.source).startswith("Fell 30 in 4:10, by distance and climb")
        assert any("Fell 30 in 4:10, by distance and climb gives" in n for n in said(table.notes))

    def test_the_past_races_range_is_the_goals_and_the_windows(self, route) -> None:
        """When she finishes, 1 in 10 on either side, is one range in the whole plan: the note's, A to C, the window."""
        built = build(text(RACE), {"route.gpx": route})
        table, course = built.timetables["maren"], built.courses["main"]
        (told,) = (n for n in table.notes if n.kind == "predicted")
        whole = {g: table.rows[-1].arrive[g].total_seconds() for g in Goal}
        assert whole[Goal.A] == pytest.approx(told.number("low_s"), abs=60.0)
        assert whole[Goal.C] == pytest.approx(told.number("high_s"), abs=60.0)
        engine = posterior(reference_of(table, course)).view(0.0)
        early, late = engine.quantiles(len(table.rows) - 2, np.array([0.1, 0.9]))
        assert early == pytest.approx(whole[Goal.A], rel=0.004)
        assert late == pytest.approx(whole[Goal.C], rel=0.004)

    def test_a_past_race_beside_a_target_is_said_to_be_beside_it(self, route) -> None:
        """With a target of her own the past race's range is another one, and the note says so."""
        notes = said(planned(text(f'target = {{ finish = "7:00" }}\n{RACE}'), route).notes)
        (line,) = (n for n in notes if "Fell 30 in 4:10, by distance and climb alone would give" in n)
        assert "Goals and windows do not go by it" in line

    def test_a_past_race_that_makes_the_target_unlikely(self, route) -> None:
        """Two hours quicker than the past race says: called unlikely, with the odds, before all other notes."""
        table = planned(text(f'target = {{ finish = "5:20" }}\n{RACE}'), route)
        assert "5:20 is unlikely by Fell 30" in said(table.notes)[0]
        assert "the odds are" in said(table.notes)[0]

    def test_results_give_the_shape(self, route) -> None:
        """Past results: she is at the barn at the field's share of the whole, and the source says how many finishers."""
        table = build(
            text(event='results = "splits.csv"'), {"route.gpx": route, "splits.csv": splits()}
        ).timetables["maren"]
        assert table.quality == "past results"
        assert "finishers in" in source(table.source)
        share = table.row("barn").arrive[Goal.B] / table.rows[-1].arrive[Goal.B]
        assert share == pytest.approx(0.46, abs=0.002)

    def test_results_as_a_spreadsheet_saves_them(self, route) -> None:
        """Semicolons and a byte order mark change nothing."""
        odd = b"\xef\xbb\xbf" + splits().replace(b",", b";")
        event = text(event='results = "splits.csv"')
        one, two = (
            build(event, {"route.gpx": route, "splits.csv": s}).timetables["maren"] for s in (splits(), odd)
        )
        assert one == two

    def test_results_and_own_runs_together(self, route, runs) -> None:
        """Her limits, the field's shape, both named."""
        event = text(f'{FINISH}\nown_runs = ["long.fit"]', event='results = "splits.csv"')
        table = build(event, {"route.gpx": route, "splits.csv": splits(), **runs}).timetables["maren"]
        assert "one of her own runs" in source(table.source)
        assert "past results" in source(table.source)

    @pytest.mark.parametrize(
        ("weather", "name", "leg"),
        [
            ('temperature_c = 31\nhumidity = 60\nfrom = "05:00"\nto = "08:00"', "heat", "barn"),
            ("temperature_c = 31\nfrom_km = 30\nto_km = 40", "heat", "finish"),
            ('ground = "mud"\nto_km = 20', "mud", "barn"),
            ('ground = "snow"\nfrom = "11:00"', "snow", "finish"),
        ],
    )
    def test_weather_costs_minutes_where_and_when_it_is(
        self, route, weather: str, name: str, leg: str
    ) -> None:
        """A spell of hours or km costs named minutes on its leg and none on the other; the target stays."""
        table = planned(text(more=f"[[weather]]\n{weather}"), route)
        costs = {r.point: dict(r.factors).get(name, timedelta(0)) for r in table.rows}
        other = "finish" if leg == "barn" else "barn"
        assert costs[leg] > timedelta(minutes=1)
        assert costs[other] == timedelta(0)
        assert table.rows[-1].arrive[Goal.B] == timedelta(hours=9)

    def test_rain_does_not_make_a_bog_boggier(self, route) -> None:
        """Mud by the weather on ground that is mud already costs nothing more; on a road it costs its full share."""
        bog = '[[stretches]]\nfrom_km = 0\nto_km = 50\nsurface = "bog"\n[[weather]]\nground = "mud"'
        road = '[[stretches]]\nfrom_km = 0\nto_km = 50\nsurface = "road"\n[[weather]]\nground = "mud"'
        wet, hard = (planned(text(more=m), route) for m in (bog, road))
        assert "mud" not in dict(wet.rows[1].factors)
        moving = hard.rows[1].arrive[Goal.B]
        share = dict(hard.rows[1].factors)["mud"] / moving
        # Within the leg the factors multiply: the part of one alone is bounded by 1 - 1 / factor.
        assert share == pytest.approx(1 - 1 / UNDERFOOT[GroundState.MUD], abs=0.03)


# (runner's lines, event's lines, files beside, file named, text of the line, field, what is said)
_RUN = 'target = { finish = "9:00" }\nown_runs = ["a.gpx"]'
_TWO = 'target = { finish = "9:00" }\nown_runs = ["a.gpx", "b.gpx"]'
_CSV = 'results = "s.csv"'
WRONG = [
    ("missing recording", _RUN, "", {}, "my.toml", "own_runs", "runners.maren.own_runs", "there is no file a.gpx"),
    ("empty recording", _RUN, "", {"a.gpx": b""}, "a.gpx", None, "runners.maren.own_runs", "it is empty"),
    ("no recording", _RUN, "", {"a.gpx": b"hello"}, "a.gpx", None, "runners.maren.own_runs", "neither GPX nor FIT"),
    ("cut fit", _RUN, "", {"a.gpx": "cut fit"}, "a.gpx", None, "runners.maren.own_runs", "FIT file is damaged"),
    ("a route", _RUN, "", {"a.gpx": "route"}, "a.gpx", None, "runners.maren.own_runs", "no track point has a time"),
    ("no heights", _RUN, "", {"a.gpx": "flat"}, "a.gpx", None, "runners.maren.own_runs", "it has no heights"),
    ("latitude", _RUN, "", {"a.gpx": "lat 95"}, "a.gpx", "lat=\"95.", "runners.maren.own_runs", "is outside"),
    ("too short", _RUN, "", {"a.gpx": "two"}, "a.gpx", None, "runners.maren.own_runs", "samples with a time"),
    ("one run twice", _TWO, "", {"a.gpx": "run", "b.gpx": "later"}, "b.gpx", None, "runners.maren.own_runs",
     "at the same time as a.gpx"),
    ("missing results", FINISH, _CSV, {}, "my.toml", "results", "results", "there is no file s.csv"),
    ("empty results", FINISH, _CSV, {"s.csv": b""}, "s.csv", None, "results", "it has no runners"),
    ("results in Latin-1", FINISH, _CSV, {"s.csv": b"Low Barn,Fold end\nM\xfc,9:00"}, "s.csv", "M", "results", "UTF-8"),
    ("no finish", FINISH, _CSV, {"s.csv": b"Low Barn\n4:00"}, "s.csv", "Low Barn", "results", "after the finish"),
    ("no time", FINISH, _CSV, {"s.csv": b"Low Barn,Fold end\n4:00,9:00\n4 h,9:00"}, "s.csv", "4 h", "results", "'4 h'"),
    ("backwards", FINISH, _CSV, {"s.csv": b"Low Barn,Fold end\n\n9:30,9:00"}, "s.csv", "9:30", "results", "earlier time"),
    ("few", FINISH, _CSV, {"s.csv": splits(3)}, "my.toml", "results", "results", "3 finishers are too few"),
    ("other course", FINISH, _CSV, {"s.csv": splits(40, 0.99)}, "my.toml", "target", "runners.maren.target", "too little"),
    ("picture", FINISH, _CSV, {"s.csv": b"\x89PNG\r\n"}, "s.csv", "PNG", "results", "UTF-8"),
    ("past a cut-off", 'target = { finish = "15:59" }', "point", {}, "my.toml", "target", "runners.maren.target", "past"),
    ("target of 2 h", 'target = { finish = "2:00" }', "", {}, "my.toml", "target", "runners.maren.target", "m/s"),
    ("over the limit", 'target = { finish = "17:00" }', "", {}, "my.toml", "target", "runners.maren.target", "time limit"),
    ("past race, limit", RACE.replace("4:10", "12:00"), "", {}, "my.toml", "[[runners]]", "runners.maren.target", "limit"),
    ("slow walker", f"{FINISH}\nwalk_kmh = 1.5", "", {}, "my.toml", "walk_kmh", "runners.maren.walk_kmh", "outside 2 to"),
    ("a card of nothing", FINISH, "card", {}, "my.toml", "[[if_then]]", "if_then[0].try_first", "nothing to try first"),
]  # fmt: skip


def _made_up(name: str, runs: dict[str, bytes]) -> bytes:
    easy = runs["easy.gpx"]
    rows = easy.split(b"</trkpt>")
    return {
        "cut fit": runs["long.fit"][: len(runs["long.fit"]) // 2],
        "route": b"</trkpt>".join(r.split(b"<time>")[0] for r in rows[:-1]) + b"</trkpt>" + rows[-1],
        "flat": b"".join(_without_heights(easy)),
        "lat 95": easy.replace(b'lat="50.', b'lat="95.', 1),
        "run": easy,
        "later": easy.replace(b'creator="t"', b'creator="another watch"'),
        "two": b"</trkpt>".join(rows[:2]) + b"</trkpt>" + rows[-1],
    }[name]


def _without_heights(data: bytes) -> list[bytes]:
    first, *rest = data.split(b"<ele>")
    return [first, *(r.split(b"</ele>", 1)[1] for r in rest)]


@pytest.mark.parametrize(
    ("name", "runner", "event", "files", "file", "row", "field", "what"), WRONG, ids=[w[0] for w in WRONG]
)
def test_each_mistake_names_file_line_field_and_remedy(
    route, runs, name, runner, event, files, file, row, field, what
) -> None:
    """As a person meets them: the event file and what stands beside it, all of it read, each mistake with its place."""
    extra = {"point": ("", 'cut_off = { when = "in", elapsed = "2:00" }', ""), "card": ("", "", CARD)}.get(
        event, (event, "", "")
    )
    whole = text(runner, event=extra[0], point=extra[1], more=extra[2])
    beside = {k: v if isinstance(v, bytes) else _made_up(v, runs) for k, v in files.items()}
    with pytest.raises(BuildError) as caught:
        build(whole, {"route.gpx": route, **beside}, "my.toml")
    (wrong,) = [p for p in caught.value.problems if p.severity is Severity.ERROR]
    assert what in str(wrong.what)
    assert (wrong.file, wrong.field) == (file, field)
    assert wrong.remedy
    if row is None:
        assert wrong.line is None
    else:
        shown = whole if file == "my.toml" else beside[file].decode("latin-1")
        assert row in shown.split("\n")[wrong.line - 1]


CARD = '[[if_then]]\ntrouble = "a bull in the field"'


def test_every_wrong_file_is_told_at_once(route) -> None:
    """Two broken recordings and broken results give three mistakes, not the first of them."""
    event = text('target = { finish = "9:00" }\nown_runs = ["a.gpx", "b.fit"]', event=_CSV)
    with pytest.raises(BuildError) as caught:
        build(event, {"route.gpx": route, "a.gpx": b"", "b.fit": b"x"})
    errors = [p for p in caught.value.problems if p.severity is Severity.ERROR]
    assert [p.file for p in errors] == ["a.gpx", "b.fit", "event.toml"]


def test_there_are_enough_wrong_files() -> None:
    """With the reader's own table, at least 30 bad inputs of the plan as a person meets them."""
    assert len(WRONG) >= 20


def test_a_past_race_s_ascent_is_compared_like_with_like(route) -> None:
    """Its organiser's figure with this organiser's: the more of it, the longer; without one the difference is said."""

    def plan(event: str = ""):
        return build(text(RACE, event=event), {"route.gpx": route}).timetables["maren"]

    bare, low, high = plan(), plan("stated_ascent_m = 1500"), plan("stated_ascent_m = 3500")
    assert low.rows[-1].arrive[Goal.B] < high.rows[-1].arrive[Goal.B]
    assert "past-ascent" in [n.kind for n in bare.notes]
    assert "past-ascent" not in [n.kind for n in high.notes]


def test_the_organiser_s_ascent_stands_beside_ours(route) -> None:
    """Both figures and by how much they differ; nothing where they are the same."""

    def told(ascent_m: float) -> list[float]:
        built = build(text(event=f"stated_ascent_m = {ascent_m:.0f}"), {"route.gpx": route})
        return [n.number("percent") for n in built.timetables["maren"].notes if n.kind == "ascent"]

    climb = build(text(), {"route.gpx": route}).courses["main"].ascent_m
    assert told(climb * 1.25) == pytest.approx([25], abs=1)
    assert told(climb) == []
