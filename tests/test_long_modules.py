"""What `-m 'not slow and not browser'` leaves out is there, and leaves something of every room."""

from __future__ import annotations

from pathlib import Path

from tests.long_modules import LONG

TESTS = Path(__file__).parent


def test_each_long_module_is_there_once() -> None:
    """A module that was renamed is renamed there too."""
    assert len(set(LONG)) == len(LONG)
    assert [name for name in LONG if not (TESTS / name).is_file()] == []


def test_every_room_keeps_tests_in_the_fast_lane() -> None:
    """No folder of tests is slow as a whole."""
    slow = {TESTS / name for name in LONG}
    folders = {path.parent for path in TESTS.rglob("test_*.py")}
    assert len(folders) > 15
    for folder in folders:
        quick = [
            p
            for p in folder.glob("test_*.py")
            if p not in slow and "mark.browser" not in p.read_text("utf-8")
        ]
        assert quick, folder
