"""The watch's tables as pictures and as a page, for the docs: made from the tables, so never behind them."""

from __future__ import annotations

from server.event.model import PartKind
from server.facts.state import Going
from server.watch import escalation_state
from server.watch.escalation_state import Stage, Turn
from server.watch.notice import NoticeKind
from server.watch.table import TABLE

__all__ = ["draw", "draw_states", "page"]


def draw() -> str:
    """The ladder as a Mermaid state diagram, one arrow for each pair of stages."""
    ids = {s: s.name.lower() for s in Stage}
    lines = ["stateDiagram-v2"]
    lines += [f'    state "{s.value}" as {ids[s]}' for s in Stage]
    lines.append(f"    [*] --> {ids[Stage.RAISED]}")
    for stage, turns in escalation_state.TABLE.items():
        arrows: dict[Stage, list[Turn]] = {}
        for turn, then in turns.items():
            arrows.setdefault(then, []).append(turn)
        for then, why in arrows.items():
            if then is not stage or Turn.ASKED in why:
                lines.append(f"    {ids[stage]} --> {ids[then]}: {', '.join(t.value for t in why)}")
    lines.append(f"    {ids[Stage.OVER]} --> [*]")
    return "\n".join(lines) + "\n"


def draw_states() -> str:
    """Which notices may arise in which state of her race, as a Mermaid flowchart; kinds that arise in the
    same states share a box."""
    boxes: dict[frozenset[Going], list[NoticeKind]] = {}
    for kind, row in TABLE.items():
        boxes.setdefault(row.arises, []).append(kind)
    lines = ["flowchart LR"]
    lines += [f'    {g.name.lower()}(["{g.value}"])' for g in Going]
    for number, (states, kinds) in enumerate(boxes.items(), 1):
        lines.append(f'    box{number}["{"<br>".join(k.value for k in kinds)}"]')
        lines += [f"    {g.name.lower()} --> box{number}" for g in Going if g in states]
    return "\n".join(lines) + "\n"


def page() -> str:
    """Every kind as a Markdown table: urgency, who may be told, owed when, over when, answers."""
    parts = list(PartKind)
    head = ["notice", "urgency", *(p.value for p in parts), "owed when", "over when", "answers"]
    lines = ["| " + " | ".join(head) + " |", "|" + "---|" * len(head)]
    for kind, row in TABLE.items():
        told = ["yes" if p in row.told else "" for p in parts]
        answers = ", ".join(b.value for b in row.buttons)
        lines.append(
            "| "
            + " | ".join([kind.value, row.urgency.value, *told, row.owed_when, row.over_when, answers])
            + " |"
        )
    return "\n".join(lines) + "\n"
