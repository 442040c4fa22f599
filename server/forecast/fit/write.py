"""Writes the fitted constants as a module of plain numbers."""

from collections.abc import Sequence
from dataclasses import fields
from datetime import date
from pathlib import Path

import numpy as np

from server.forecast.fitted import Bend, Case, Flagging, Ground, Net, StopShape
from server.forecast.values import FloatArray

HEAD = '''"""Constants of the forecast, written by `python -m server.forecast.fit`; do not edit.

Source: {source}
Fitted on {day}. Spread of each constant over fits that leave years out, as a share of its size, or plain for
those near zero: see SPREAD.
Plans of the cost model and flags: {plans}
"""

import numpy as np

from server.forecast.fitted import Bend, Case, Flagging, Ground, Net, StopShape
from server.forecast.prior import Prior
from server.forecast.values import Quality

'''


def _number(v: float) -> str:
    return repr(float(f"{float(v):.5g}"))


def _wrapped(items: Sequence[str], indent: int) -> str:
    lines, line = [], " " * indent
    for item in items:
        if len(line) + len(item) + 2 > 108:
            lines.append(line.rstrip())
            line = " " * indent
        line += item + ", "
    return "\n".join([*lines, line.rstrip()])


def _array(v: FloatArray, indent: int) -> str:
    flat = _wrapped([_number(x) for x in np.ravel(v)], indent + 4)
    shape = "" if v.ndim == 1 else f".reshape({v.shape[0]}, {v.shape[1]})"
    return f"np.array(\n{' ' * indent}[\n{flat}\n{' ' * indent}]){shape}"


def _net(net: Net) -> str:
    body = "".join(f"{' ' * 12}{f.name}={_array(getattr(net, f.name), 12)},\n" for f in fields(Net))
    return f"        Net(\n{body}        ),\n"


def _ground(ground: Ground) -> str:
    nets = "".join(_net(n) for n in ground.nets)
    tail = ", ".join(_number(v) for v in ground.tail)
    push = ", ".join(_number(v) for v in ground.push)
    hazard = ", ".join(_number(v) for v in ground.hazard)
    head = f"climb_m_per_km={_number(ground.climb_m_per_km)}, years={ground.years}, push=({push}), tail=({tail}), "
    return f"    Ground({head}hazard=({hazard}), nets=(\n{nets}    )),\n"


def _case(case: Case) -> str:
    lines = []
    for f in fields(case.prior):
        value = getattr(case.prior, f.name)
        shown = f"({', '.join(_number(v) for v in value)})" if f.name == "mean" else _number(value)
        lines.append(f"            {f.name}={shown},\n")
    climb = _number(case.climb_m_per_km)
    head = f"    Case(quality=Quality.{case.quality.name}, climb_m_per_km={climb}, prior=Prior(\n"
    return head + "".join(lines) + "        ),\n    ),\n"


def write(
    path: Path,
    source: str,
    day: date,
    plans: str,
    cases: Sequence[Case],
    grounds: Sequence[Ground],
    planned: Bend,
    stops: StopShape,
    flagging: Flagging,
    wild_level_sd: float,
    spread: Sequence[tuple[str, str, float]],
) -> None:
    """Write the module; spread holds (case, constant, spread over folds)."""
    text = HEAD.format(source=source, day=day.isoformat(), plans=plans)
    text += f"WILD_LEVEL_SD = {_number(wild_level_sd)}\n\n"
    shape = ", ".join(f"{f.name}={_number(getattr(stops, f.name))}" for f in fields(stops))
    text += f"STOPS = StopShape({shape})\n\n"
    text += "SPREAD = (\n" + "".join(f'    ("{c}", "{n}", {_number(v)}),\n' for c, n, v in spread) + ")\n\n"
    text += "# fmt: off\nCASES = (\n" + "".join(_case(c) for c in cases) + ")\n\n"
    text += "GROUNDS = (\n" + "".join(_ground(g) for g in grounds) + ")\n\n"
    tail = ", ".join(_number(v) for v in planned.tail)
    nets = "".join(_net(n) for n in planned.nets)
    text += f"PLANNED = Bend(years={planned.years}, tail=({tail}), nets=(\n{nets}))\n\n"
    numbers = (
        f"{f.name}=({', '.join(_number(v) for v in getattr(flagging, f.name))})" for f in fields(flagging)
    )
    text += f"FLAGGING = Flagging({', '.join(numbers)})\n# fmt: on\n"
    path.write_text(text)
