"""Fitting: features to a matrix, a linear support vector machine for the intents, one for danger, weights to a few bits."""

from __future__ import annotations

import io
import zipfile
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.sparse import csr_matrix
from sklearn.svm import LinearSVC

from server.conversation.training.examples import GRAVE, HARMLESS, Example, sentence
from server.conversation.understanding.features import features
from server.conversation.understanding.model import Model

SEED = 20270619
PENALTY, DANGER_PENALTY = 0.5, 0.5
AT_LEAST = 2
"""A feature is kept if so many sentences have it."""
LEVELS = 31
"""A weight is a whole number up to this: of hands left out as many are right as with 127, of half the file."""
FAINT = 1
"""A feature that is no word, of which no weight is more than so many of `LEVELS`, is left out: the file stays small."""
PLAIN_WEIGHT = 0.5
"""What an ordinary sentence counts beside a grave or a misleading one, for danger."""

KNOWN, KNOWN_WEIGHT = frozenset({"known", "tables"}), 8.0
"""The hands whose sentences the tests know, and what one of them counts: they stand whoever else writes."""

Groups = tuple[tuple[int, ...], ...]


@dataclass(frozen=True)
class Featured:
    """An example with its features, what it counts where it was made of another, and what where it must stand."""

    example: Example
    groups: Groups
    weight: float = 1.0
    stands: float = 1.0


def rows_of(examples: Iterable[Example], weight: float = 1.0) -> list[Featured]:
    """Each example as the model sees it."""
    return [
        Featured(e, features(sentence(e), (e.part.value,)), weight, KNOWN_WEIGHT if e.hand in KNOWN else 1.0)
        for e in examples
    ]


def _matrix(rows: Sequence[Featured], keys: NDArray[np.uint32]) -> csr_matrix:
    at = {int(k): i for i, k in enumerate(keys)}
    data, columns, ends = [], [], [0]
    for row in rows:
        for group in row.groups:
            weight = 1 / np.sqrt(len(group)) if group else 0.0
            found = [at[k] for k in group if k in at]
            columns += found
            data += [weight] * len(found)
        ends.append(len(columns))
    return csr_matrix((data, columns, ends), shape=(len(rows), len(keys)))


def fit(rows: Sequence[Featured]) -> Model:
    """The model of these examples; the same for the same."""
    counts = Counter(k for row in rows if row.weight == 1.0 for group in row.groups for k in group)
    keys = np.array(sorted(k for k, n in counts.items() if n >= AT_LEAST), dtype=np.uint32)
    told = [r for r in rows if len(r.example.intents) == 1 and r.example.intents[0] not in (GRAVE, HARMLESS)]
    labels = [r.example.intents[0] for r in told]
    intents = tuple(sorted(set(labels)))
    svm = LinearSVC(C=PENALTY, class_weight="balanced", random_state=SEED, max_iter=4000, tol=1e-2)
    svm.fit(_matrix(told, keys), labels, sample_weight=[r.weight * r.stands for r in told])
    assert tuple(svm.classes_) == intents
    danger = LinearSVC(C=DANGER_PENALTY, class_weight="balanced", random_state=SEED, max_iter=4000, tol=1e-2)
    judged = [r for r in rows if len(r.example.intents) == 1 and r.weight == 1.0]
    weights = [
        r.stands * (1.0 if r.example.intents[0] in (GRAVE, HARMLESS) else PLAIN_WEIGHT) for r in judged
    ]
    danger.fit(_matrix(judged, keys), [int(r.example.grave) for r in judged], sample_weight=weights)
    coef = np.vstack([svm.coef_, danger.coef_]).T
    bias = np.concatenate([svm.intercept_, danger.intercept_])
    scale = np.abs(coef).max(axis=0) / LEVELS
    eight = np.rint(coef / scale).astype(np.int8)
    said = np.array(sorted({k for r in rows for k in r.groups[0]}), dtype=np.uint32)
    used = np.abs(eight).max(axis=1) > np.where(np.isin(keys, said), 0, FAINT)
    return Model(keys[used], eight[used], scale, bias, intents)


def write(model: Model, made_of: str = "") -> bytes:
    """The bytes of its file: the same for the same model, whenever it is written. `made_of` the mark of its examples."""
    out = io.BytesIO()
    arrays = {
        "keys": model.keys, "weights": model.weights, "scale": model.scale, "bias": model.bias,
        "intents": np.array(model.intents), "made_of": np.array([made_of]),
    }  # fmt: skip
    with zipfile.ZipFile(out, "w", zipfile.ZIP_LZMA) as f:
        for name, array in arrays.items():
            one = io.BytesIO()
            np.lib.format.write_array(one, np.ascontiguousarray(array), allow_pickle=False)
            f.writestr(
                zipfile.ZipInfo(f"{name}.npy", (1980, 1, 1, 0, 0, 0)), one.getvalue(), zipfile.ZIP_LZMA
            )
    return out.getvalue()
