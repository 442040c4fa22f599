"""What the paper's tests share: the plan's event maker and courses, and a drawer of the situation before the start."""

from __future__ import annotations

from tests.plan.conftest import bare_course, demo_course, make_event, points_at

__all__ = ["bare_course", "demo_course", "make_event", "points_at"]
