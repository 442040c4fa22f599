"""How sure it must be before something is done: the table beside this module, read once."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib import resources


@dataclass(frozen=True)
class Policy:
    """`tiers` what each intent needs to be done; `tier_of` its tier by name; `two` what the two likeliest need together;
    `near` the share of the second from which it is asked which, of a first below `near_below`; `clause` what a clause
    beside others needs; `alarm`, `ask`, `doubt`, `wonder`, `joke`, `none`, `light`, `sure` scores of danger."""

    tiers: Mapping[str, float]
    tier_of: Mapping[str, str]
    two: float
    near: float
    near_below: float
    clause: float
    alarm: float
    ask: float
    doubt: float
    wonder: float
    joke: float
    none: float
    light: float
    sure: float


@cache
def policy() -> Policy:
    """The table."""
    t = tomllib.loads(resources.files(__package__).joinpath("policy.toml").read_text(encoding="utf-8"))
    tier_of = {i: tier for tier, intents in t["intents"].items() for i in intents}
    tiers = {i: float(t["tiers"][tier]) for i, tier in tier_of.items()}
    unsure, danger = t["unsure"], t["danger"]
    return Policy(
        tiers, tier_of, unsure["two"], unsure["near"], unsure["near_below"], unsure["clause"], **danger
    )
