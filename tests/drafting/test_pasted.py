"""A race's table as people paste it: whatever separates its columns, in three languages, in whatever order."""

from __future__ import annotations

from datetime import datetime

import pytest

from server.drafting.pasted import PastedRow, read_cut_off, read_table

START = datetime.fromisoformat("2027-06-19T05:00")
MILL = PastedRow(1, "Mill", 21.5, "Sat 11:30", crew=True)
HEAD = PastedRow(2, "Mill", 21.5, "Sat 11:30", crew=True)


@pytest.mark.parametrize(
    ("text", "row"),
    [
        ("Mill\t21,5 km\t11:30\tyes", MILL),
        ("21.5;Mill;Sat 11:30;x", MILL),
        ("Mill, 21.5, 11:30, yes", MILL),
        ("| 21,5 km | Mill | 11:30 Uhr | ja |", MILL),
        ("Mill  km 21.5  11h30  oui", MILL),
        ("21,5 Mill 11:30 crew yes", MILL),
        ('"Mill";21,5;"samedi 11:30";oui', MILL),
        ("km\tName\tCut-off\tCrew\n21.5\tMill\t11:30\tyes", HEAD),
        ("Punkt;Kilometer;Anstieg;Zeitlimit;Betreuung\nMill;21,5;640;11:30;ja", HEAD),
        ("Point,Dist.,Barrière horaire,Assistance\nMill,21.5,11h30,oui", HEAD),
        ("Name,miles,cutoff\nMill,13.36,11:30 am", PastedRow(2, "Mill", 21.5, "Sat 11:30")),
        ("km;Place;Limit (elapsed)\n21.5;Mill;6:30", PastedRow(2, "Mill", 21.5, elapsed="6:30")),
        ("Mill 21.5 km +6:30 no crew", PastedRow(1, "Mill", 21.5, elapsed="6:30", crew=False)),
        ("Mill 30:00", PastedRow(1, "Mill", None, elapsed="30:00")),
        ("Aid 5 Mill\t21.5\t11:30\t-", PastedRow(1, "Aid 5 Mill", 21.5, "Sat 11:30", crew=False)),
    ],
)
def test_a_row_is_read(text: str, row: PastedRow) -> None:
    read = read_table(text, START)
    assert read.rows == (row,)
    assert read.left == ()


def test_times_past_midnight_get_their_day() -> None:
    read = read_table("10 A 09:00\n60 B 23:30\n70 C 02:15\n90 D 11:00\n100 E So 16:00", START)
    assert [r.clock for r in read.rows] == ["Sat 09:00", "Sat 23:30", "Sun 02:15", "Sun 11:00", "Sun 16:00"]
    assert [r.clock for r in read_table("60 B 23:30\n70 C 02:15").rows] == ["23:30", "02:15"]


def test_what_says_nothing_is_shown_as_left() -> None:
    read = read_table("Points of the race\n\n21.5 Mill\n----\nsee you there\n21.5", START)
    assert [r.name for r in read.rows] == ["Mill"]
    assert [number for number, _ in read.left] == [1, 5, 6]


@pytest.mark.parametrize(
    ("typed", "read"),
    [
        ("23:30", {"clock": "Sat 23:30"}),
        ("23.30", {"clock": "Sat 23:30"}),
        ("so 1:05", {"clock": "Sun 01:05"}),
        ("+18:30", {"elapsed": "18:30"}),
        ("26:00", {"elapsed": "26:00"}),
        ("when it is dark", {"clock": "when it is dark"}),
    ],
)
def test_a_cut_off_typed_by_hand(typed: str, read: dict[str, str]) -> None:
    assert read_cut_off(typed, START) == read


@pytest.mark.parametrize(
    ("text", "row"),
    [
        ("Mill 21.5km (cut-off 11:30 Saturday) Crew access: Yes", MILL),
        ("CP1 | Mill | 21.5 km | 640 m | 11.30am Sat | Crew: yes", MILL),
        ("1;Mill;21,5;640;11:30;ja", MILL),
        ("1. Mill – 21.5 km – 11:30 Uhr – Crew erlaubt", MILL),
        ("Mill (km 21,5) barrière 11h30 assistance autorisée", MILL),
        ("Mile 13.36 Mill 11:30 crew", MILL),
        ("Mill 21.5 km Sat 19 June 11:30 crew", MILL),
        ("Mill 21,5; Crew nicht erlaubt; 11:30", PastedRow(1, "Mill", 21.5, "Sat 11:30", crew=False)),
        ("No.,Name,Leg km,Total km,Cut off\n1,Mill,9.5,21.5,11:30", PastedRow(2, "Mill", 21.5, "Sat 11:30")),
        ("21.5km Mill cut off 5h30 after start", PastedRow(1, "Mill", 21.5, elapsed="5:30")),
        ("0 Village green 05:00", PastedRow(1, "Village green", 0.0)),
    ],
)
def test_a_line_of_a_handbook_is_read(text: str, row: PastedRow) -> None:
    assert read_table(text, START).rows == (row,)


def test_a_comma_in_a_name_does_not_part_columns_that_are_set_with_spaces() -> None:
    """A handbook's page as it is copied from a PDF."""
    text = """
    1    Stony Bank          12.4 km    620 m   -             No
         Finish, Thornby     100 km     4700 m  Sun 09:00     Yes
    """
    rows = read_table(text).rows
    assert [(r.name, r.km, r.clock, r.crew) for r in rows] == [
        ("Stony Bank", 12.4, "", False),
        ("Finish, Thornby", 100.0, "Sun 09:00", True),
    ]
    assert [(r.name, r.km) for r in read_table("12.4,  Stony Bank,  Sat 09:00").rows] == [
        ("Stony Bank", 12.4)
    ]


AS_PUBLISHED = """
#\tPost\tAlt m\tTotal km\tLeg km\tD+\tLeaders expected\tDoors close\tRefreshments\tSupporters
\tHighfold (start)\t1480\t0\t–\t0\tFri 04:30\t–\t–\tyes
1\tRaven Col\t2350\t8.3\t8.3\t890\t5.25am\t–\twater\tno – path closed to cars
2\tLow Combe\t1700\t16.7\t8.4\t890\t6.05am\t9.15am\tsoup, bread\tyes, car park 3 only
3\tHorn Hut\t2680\t50\t33.3\t1890\t1.15pm\tSat 01:30\ttea\tno
\tHighfold (finish)\t1480\t100.0\t50\t5705\t7.00pm\tSat 12.30pm\tsoup\tyes
"""
FRIDAY = datetime.fromisoformat("2027-08-27T04:30")


@pytest.mark.parametrize("heading", [True, False], ids=["with its heading", "without"])
def test_a_table_as_an_organiser_publishes_it(heading: bool) -> None:
    """Columns nobody asked for, among them other times and other lengths, and more in a cell than an answer."""
    rows = read_table(AS_PUBLISHED if heading else AS_PUBLISHED.partition("Supporters")[2], FRIDAY).rows
    assert [(r.name, r.km, r.clock, r.crew) for r in rows] == [
        ("Highfold (start)", 0.0, "", True),
        ("Raven Col", 8.3, "", False),
        ("Low Combe", 16.7, "Fri 09:15", True),
        ("Horn Hut", 50.0, "Sat 01:30", False),
        ("Highfold (finish)", 100.0, "Sat 12:30", True),
    ]


def test_whoever_leads_sets_no_cut_off() -> None:
    """A column of times whose heading says nothing of a limit is not taken for one."""
    rows = read_table(AS_PUBLISHED.replace("Doors close", "Sweeper"), FRIDAY).rows
    assert {r.clock for r in rows} == {""}


def test_a_column_a_lap_is_a_point_a_lap() -> None:
    """In the order of the course, in miles as the title says; the cut-off is that of the lap it names, else of the last."""
    text = """AID STATIONS (miles)
Aid station\tLap 1\tLap 2\tCrew?\tCutoff
Boat Ramp\t5.0\t14.5\tYes\tlap 1 9:45 AM
Trailhead\t10.6\t20.1\tNo\t1:30 p.m.
"""
    read = read_table(text, START)
    assert [(r.name, r.km, r.clock, r.crew) for r in read.rows] == [
        ("Boat Ramp, Lap 1", 8.05, "Sat 09:45", True),
        ("Trailhead, Lap 1", 17.06, "", False),
        ("Boat Ramp, Lap 2", 23.34, "", True),
        ("Trailhead, Lap 2", 32.35, "Sat 13:30", False),
    ]
    assert [number for number, _ in read.left] == [1]


LAPS = """
Posten\tRunde 1\tRunde 2\tZeitlimit
Steg\t5,0\t14,5\tRunde 2 11:30
"""


@pytest.mark.parametrize(
    ("text", "km"),
    [
        ("Verpflegung Mi 25.8.\nPosten\tGesamt\tZeitlimit\nSteg\t5,0\t11:30\nAlm\t9,5\t12:30\nGrat\t15\t14:30", 5.0),
        ("Strecke Mi 25.8.\nPosten\tDistanz\nSteg\t5,0", 5.0),
        ("Posten;Distanz;Mi\nSteg;5,0;ja", 5.0),
        ("Posten\tDistanz\tMi\nSteg\t5,0\tja", 5.0),
        (f"Start Mi 06:00{LAPS}", 5.0),
        (f"Strecke in Meilen{LAPS}", 8.05),
        ("Ravitaillements (milles)\nPoste\tDistance\nPont\t5,0", 8.05),
        ("Km 50 (mi-course)\nPoste\tDistance\nPont\t5,0", 5.0),
        ("AID STATIONS (miles)\nAid station\tDistance\nBridge\t5.0", 8.05),
        ("Aid stations, distances in mi\nAid station\tDistance\nBridge\t5.0", 8.05),
        ("Fell 100mi\nAid station\tDistance\nBridge\t5.0", 8.05),
        ("Fell 100mi\nAid station\tTotal km\nBridge\t5.0", 5.0),
        ("Fell 100 km (62 miles)\nAid station\tDistance\nBridge\t5.0", 5.0),
        ("Fell 100 miles\nAid stations, km\nAid station\tDistance\nBridge\t5.0", 5.0),
        ("Aid station\tkm\tmi\nBridge\t5.0\t3.1", 5.0),
        ("Aid station\tMi\nBridge\t5.0", 8.05),
        ("Posten\tDistanz\nSteg\t5 Meilen", 8.05),
    ],
)  # fmt: skip
def test_miles_are_what_the_heading_or_else_the_title_calls_so(text: str, km: float) -> None:
    """Nearest first; 'Mi' is a Wednesday unless it stands where a unit does."""
    rows = read_table(text, START).rows
    assert next(r.km for r in rows if r.name.startswith(("Steg", "Pont", "Bridge"))) == km
