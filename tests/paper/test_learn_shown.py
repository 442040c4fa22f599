"""`stilepost learn`: what a race taught goes into the next plan, and the next plan is shown with it."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from server.cli.main import stilepost
from tests.paper.three_races import NIGHT

STOPS = [{"from": "", "to": f"P{k}", "planned_s": 600.0, "over_s": 600.0} for k in range(8)]
HELD = {
    "event": "seerunde",
    "name": "Seerunde 80",
    "runner": "svea",
    "sections": [*STOPS, {"from": "P0", "to": "P1", "planned_s": 3600.0, "over_s": 60.0}],
    "past_race": {"km": 80.0, "ascent_m": 3600.0, "time_s": 54_000.0},
    "fade": {"value": 2.0, "low": 1.5, "high": 2.5, "count": 7},
    "intake": {
        "carbohydrate_g_per_h": {"value": 31.4, "low": 24.0, "high": 38.0, "count": 9},
        "fluid_ml_per_h": {"value": 430.0, "low": 390.0, "high": 470.0, "count": 9},
    },
}


@pytest.fixture
def into(tmp_path: Path) -> Path:
    """The next race's file, its course, and the JSON of the race that was held beside it."""
    for name, content in {**NIGHT.files, "held.json": json.dumps(HELD).encode()}.items():
        (tmp_path / name).write_bytes(content)
    file = tmp_path / "event.toml"
    file.write_text(NIGHT.event_text(), encoding="utf-8")
    return file


def test_the_next_plan_shows_what_was_learnt(into: Path) -> None:
    """Another pace, longer stops, a fade with its spread, and her stomach's own figure; nothing is written without
    --write."""
    told = CliRunner().invoke(stilepost, ["learn", str(into.with_name("held.json")), "--into", str(into)])
    assert told.exit_code == 0, told.output
    was, _, after = told.output.partition("Der nächste Plan von Svea, mit dem Gelernten:")
    assert "Der Plan von Svea, wie er war:\nZiele: A 14:50 (ein guter Tag), B 17:32" in was
    assert "B 17:32" not in after
    assert "zwischen" in was
    assert "Seerunde 80 in 15:00" in after
    assert "0:20" in after, "ten minutes at a stop are twenty now"
    assert "31" in after, "her stomach's own figure is held against the plan"
    assert into.read_text(encoding="utf-8") == NIGHT.event_text()


def test_written_it_is_learnt_once(into: Path) -> None:
    """With --write the file has it; learnt again nothing is shown as new."""
    call = ["learn", str(into.with_name("held.json")), "--into", str(into), "--write"]
    assert CliRunner().invoke(stilepost, call).exit_code == 0
    once = into.read_text(encoding="utf-8")
    assert 'name = "Seerunde 80"' in once
    again = CliRunner().invoke(stilepost, call)
    assert "Der nächste Plan" not in again.output, again.output
    assert into.read_text(encoding="utf-8") == once
