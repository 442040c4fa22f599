"""What the planner makes of a table's course: its points, its target, its hills."""

import json
from pathlib import Path

import numpy as np
import pytest

from server.forecast.tempered import contrast
from tests.plan.plan_tables import plans
from tests.research.fit.planned import read_plans, read_profile

HOURS_24 = 86400.0


def test_a_table_gets_the_planners_times_at_its_points(tmp_path: Path) -> None:
    """Slow up, fast down, the target at the finish, points found by km or by name; what is written is read again."""
    tables = tmp_path / "tables"
    tables.mkdir()
    (tmp_path / "course.csv").write_text(
        "km,height_m,point\n0,200,Start\n20,1400,Top\n40,200,Valley\n80,200,Finish\n"
    )
    for name, meta in (
        ("hill100_2012", {"points": ["Top", "Valley", "Finish"]}),
        ("flat100_2013", {"km": [20.0, 40.0, 80.0]}),
        ("hill100_2013", {"points": ["Elsewhere", "Finish"]}),
    ):
        (tables / f"{name}.json").write_text(json.dumps(meta))
        (tables / f"{name}.csv").write_text("runner,p1,p2,p3\n1,1,2,3\n")
    profile = read_profile(tmp_path / "course.csv")
    found = plans(tables, profile, HOURS_24)
    assert set(found) == {"hill100_2012", "flat100_2013"}
    up, down, along = np.diff(found["hill100_2012"], prepend=0.0)
    assert up > 1.3 * down
    assert up + down + along == pytest.approx(HOURS_24)
    km = np.array([20.0, 40.0, 80.0])
    assert (
        np.abs(contrast(km, found["flat100_2013"])).max() < 0.05 < contrast(km, found["hill100_2012"]).max()
    )
    file = tmp_path / "plans.json"
    file.write_text(json.dumps({k: [round(float(s)) for s in v] for k, v in found.items()}))
    again = read_plans(tables, profile, file)["hill100_2012"]
    assert again.km.tolist() == [20.0, 40.0, 80.0]
    assert again.elapsed_s == pytest.approx(found["hill100_2012"], abs=0.5)
    file.write_text(json.dumps({"flat100_2013": [1, 2]}))
    with pytest.raises(ValueError, match="flat100_2013 has other points"):
        read_plans(tables, profile, file)
