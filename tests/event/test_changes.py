"""What a new version changes, and what it may not."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from server.event import ChangeKind, changes, parse_event, removal_refused

CHANGES = [
    ('limit = "36:00"', 'limit = "38:00"', ["event: limit was 36:00, becomes 38:00"]),
    ("starts = 2027-06-19T05:00", "starts = 2027-06-19T05:15",
     ["event: start was Sat 2027-06-19 05:00, becomes Sat 2027-06-19 05:15"]),
    ("pacer_from_km = 60\n", "", ["event: rules, pacer from km was 60, becomes not given"]),
    ("stop_minutes = 5", "stop_minutes = 9", ["point mill: planned stop was 5 min, becomes 9 min"]),
    ("walk_in_minutes = 8", "walk_in_minutes = 12", ["point mill: crew access, walk in was 8 min, becomes 12 min"]),
    ("km = 66", "km = 64.5", ["point moss: km was 66, becomes 64.5"]),
    ('finish = "29:00"', 'finish = "30:00"', ["runner maren: target, finish was 29:00, becomes 30:00"]),
    ("minutes = 35", "minutes = 45", ["drive from start to mill: minutes was 35, becomes 45"]),
    ("ladder = 2", "ladder = 3", ["part ana crew for maren: ladder was 2, becomes 3"]),
    ('surface = "bog"', 'surface = "mud"', ["stretch without a name (km 60 to 78): surface was bog, becomes mud"]),
    ('[[cars]]\nid = "estate"\nname = "grey estate"\n', "", ["car estate: removed"]),
    ("[[if_then]]", '[[if_then]]\ntrouble = "cold"\n[[if_then]]', ["if-then card cold: added"]),
    ('phone = "+44 1632 960013"', 'phone = "+44 1632 960014"',
     ["person tomas: phone was +44 1632 960013, becomes +44 1632 960014"]),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "said"), CHANGES)
def test_each_change_is_said_in_plain_words(good, old, new, said) -> None:
    """One edit of the file gives one sentence, times on the event's own clock."""
    before, after = parse_event(good).event, parse_event(good.replace(old, new, 1)).event
    assert [str(c) for c in changes(before, after)] == said
    assert changes(after, before) != ()
    assert changes(before, before) == ()


def test_another_order_of_points_is_a_change(good) -> None:
    """Points keep their ids while changing places."""
    moss = good[good.index('[[points]]\nid = "moss"') : good.index('[[points]]\nid = "chapel"')]
    text = good.replace(moss, "", 1).replace(
        '[[points]]\nid = "finish"', moss.replace("km = 66", "km = 99") + '[[points]]\nid = "finish"', 1
    )
    found = changes(parse_event(good).event, parse_event(text.replace('pace_from = "moss", ', "")).event)
    assert any(c.field == "order of points" for c in found)


def test_removing_a_point_with_check_ins_is_refused(good) -> None:
    """Named with the remedy; one without check-ins may go; an unknown id is no reason."""
    before = parse_event(good).event
    gone = good[: good.index('[[points]]\nid = "moss"')] + good[good.index('[[points]]\nid = "chapel"') :]
    after = parse_event(gone.replace('pace_from = "moss", ', "")).event
    assert [c.kind for c in changes(before, after) if c.id == "moss"] == [ChangeKind.REMOVED]
    assert removal_refused(before, after, {"mill", "start", "elsewhere"}) == ()
    (refused,) = removal_refused(before, after, {"mill", "moss"})
    assert "'moss' (Moss Edge) has check-ins and can't be removed" in str(refused.what)
    renamed = parse_event(
        good.replace('id = "moss"', 'id = "moss-edge"').replace('from = "moss"', 'from = "moss-edge"')
    )
    (refused,) = removal_refused(before, renamed.event, {"moss"})
    assert "If 'moss-edge' is the same place, keep the id 'moss'" in str(refused.remedy)


@settings(max_examples=50, deadline=None)
@given(picked=st.sets(st.sampled_from(range(len(CHANGES)))))
def test_changes_add_up(good, picked) -> None:
    """Several edits give the sentences of each, and none when there are none."""
    text, said = good, []
    for i in sorted(picked):
        old, new, words = CHANGES[i]
        text = text.replace(old, new, 1)
        said += words
    found = [str(c) for c in changes(parse_event(good).event, parse_event(text).event)]
    assert sorted(found) == sorted(said)
