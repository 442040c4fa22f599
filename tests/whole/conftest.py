"""Servers to be killed, started from one process that has imported everything."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from tests.whole.forks import Servers


@pytest.fixture(scope="session")
def servers() -> Iterator[Servers]:
    """Starts and kills `stilepost serve`."""
    with Servers() as started:
        yield started
