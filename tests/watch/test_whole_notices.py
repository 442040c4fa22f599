"""What is owed, whole: of each kind of notice every field, to whom, when, and when the watch asks to be looked at again.

The scenes and their rules are in scenes.py, what comes of each in whole_notices.txt.
"""

from __future__ import annotations

import pytest

from server.watch.notice import NoticeKind
from tests.watch.scenes import SCENES, recorded, written

K = NoticeKind
RECORDED = recorded()


@pytest.mark.parametrize("name", SCENES)
def test_all_that_is_owed_in_a_scene_is_what_its_rule_says(name: str) -> None:
    """Not a person, a time, a button or a fact more or less."""
    assert written(SCENES[name]).splitlines() == RECORDED[name].splitlines()


ELSEWHERE = {K.MOVE_ON, K.BEFORE_DARK, K.STANDS, K.HELP_NOT_NAMED, K.NEW_VERSION}
"""Kinds that need a course, a track, a second runner or a second version of the file: tried in tests of their own."""


def test_each_kind_of_notice_is_in_a_scene() -> None:
    """A new kind gets one; the file has no scene that is gone."""
    assert set(RECORDED) == set(SCENES)
    text = "\n".join(RECORDED.values())
    assert {k for k in NoticeKind if f": {k.value} | " not in text} == ELSEWHERE
