"""A linear model over the features of a clause: weights as whole numbers of eight bits, summed, then scaled.

Sums of whole numbers are the same on every machine, so that a sentence is understood alike everywhere. The file
(`model.npz`) is made by `python -m server.conversation.training`, never by hand.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from importlib import resources
from io import BytesIO

import numpy as np
from numpy.typing import NDArray

TEMPERATURE = 0.25
"""How sharply scores become shares. The thresholds of the policy are measured with it."""


@dataclass(frozen=True)
class Model:
    """`keys` (n,) uint32 sorted; `weights` (n, k + 1) int8, the last column that of danger; `scale`, `bias`
    (k + 1,) float64; `intents` the k names."""

    keys: NDArray[np.uint32]
    weights: NDArray[np.int8]
    scale: NDArray[np.float64]
    bias: NDArray[np.float64]
    intents: tuple[str, ...]

    def scores(self, groups: Sequence[Sequence[int]]) -> NDArray[np.float64]:
        """A score for each intent and, last, for danger, (k + 1,): positive for it."""
        total = np.zeros(len(self.bias))
        wanted = np.array([k for group in groups for k in group], dtype=np.uint32)
        at = np.searchsorted(self.keys, wanted)
        at[at == len(self.keys)] = 0
        known = self.keys[at] == wanted
        begin = 0
        for group in groups:
            end = begin + len(group)
            rows = at[begin:end][known[begin:end]]
            if len(rows):
                total += np.add.reduce(self.weights[rows], axis=0, dtype=np.int32) / np.sqrt(len(group))
            begin = end
        return total * self.scale + self.bias

    def knows(self, feature: int) -> bool:
        """Whether any example held a feature."""
        at = int(np.searchsorted(self.keys, feature))
        return at < len(self.keys) and int(self.keys[at]) == feature

    def shares(self, scores: NDArray[np.float64]) -> NDArray[np.float64]:
        """How likely each intent is, (k,), together 1."""
        x = scores[:-1] / TEMPERATURE
        e = np.exp(x - x.max())
        share: NDArray[np.float64] = e / e.sum()
        return share


def load(data: bytes) -> Model:
    """A model from the bytes of its file."""
    with np.load(BytesIO(data), allow_pickle=False) as f:
        weights = f["weights"]
        assert weights.shape[0] == len(f["keys"])
        return Model(f["keys"], weights, f["scale"], f["bias"], tuple(str(n) for n in f["intents"]))


@cache
def model() -> Model:
    """The model beside this module."""
    return load(resources.files(__package__).joinpath("model.npz").read_bytes())
