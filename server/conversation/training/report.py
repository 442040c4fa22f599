"""How the model does on sentences of a hand that it has not seen."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from server.conversation.training.examples import GRAVE, HARMLESS
from server.conversation.training.fit import Featured, fit
from server.conversation.understanding.model import Model
from server.conversation.understanding.policy import policy
from server.conversation.understanding.read import NONE

FOLDS = 5


def folds(rows: Sequence[Featured]) -> list[frozenset[str]]:
    """Hands left out together: of each language about one, so that none is missed much by the others."""
    written = Counter((r.example.hand, r.example.language) for r in rows)
    most = {h: max((n, lang) for (x, lang), n in written.items() if x == h)[1] for h, _ in written}
    order = sorted(most, key=lambda h: (most[h], h))
    return [frozenset(order[i::FOLDS]) for i in range(FOLDS)]


def _outcome(model: Model, scores: NDArray[np.float64], wanted: str) -> tuple[str, str, str]:
    """Right, right among two, passed on, useless buttons or wrong by tier; the likeliest intent and the next."""
    share = model.shares(scores)
    first, second, *_ = (model.intents[i] for i in np.argsort(-share, kind="stable"))
    likely = [(float(share[i]), model.intents[i]) for i in np.argsort(-share, kind="stable")[:3]]
    (one, a), (two, b), *_ = [x for x in likely if x[1] != NONE]
    p = policy()
    near = one < p.near_below and two >= p.near
    if one >= p.tiers[a] and not near:
        return ("right" if a == wanted else f"wrong {p.tier_of[a]}"), first, second
    if one + two >= p.two:
        return ("one of two" if wanted in (a, b) else "useless"), first, second
    return "passed on", first, second


def by_hands(
    rows: Sequence[Featured], made: Sequence[Featured]
) -> tuple[list[str], dict[str, dict[str, float]]]:
    """Lines of a report, for each hand trained on others, and its figures in percent. `made` sentences of the grammar."""
    out: list[str] = []
    total: dict[str, Counter[str]] = defaultdict(Counter)
    confused: Counter[tuple[str, str]] = Counter()
    recall: dict[str, Counter[bool]] = defaultdict(Counter)
    grave: list[float] = []
    misleading: list[float] = []
    plain: list[float] = []
    for hands in folds(rows):
        model = fit([r for r in (*rows, *made) if r.example.hand not in hands])
        for r in (r for r in rows if r.example.hand in hands and len(r.example.intents) == 1):
            wanted = r.example.intents[0]
            scores = model.scores(r.groups)
            danger = float(scores[-1])
            (grave if wanted == GRAVE else misleading if wanted == HARMLESS else plain).append(danger)
            if wanted in (GRAVE, HARMLESS) or wanted not in model.intents:
                continue
            outcome, first, second = _outcome(model, scores, wanted)
            for name in (f"hand {r.example.hand}", f"language {r.example.language}", "all"):
                total[name]["n"] += 1
                total[name][outcome] += 1
                total[name]["top 1"] += first == wanted
                total[name]["top 2"] += wanted in (first, second)
            recall[wanted][first == wanted] += 1
            if first != wanted:
                confused[wanted, first] += 1
    columns = ("top 1", "top 2", "right", "one of two", "passed on", "useless",
               "wrong answer", "wrong record", "wrong act")  # fmt: skip
    figures = {
        name: {"n": float(c["n"])} | {k: round(100 * c[k] / c["n"], 1) for k in columns}
        for name, c in sorted(total.items())
    }
    out.append(f"{'left out':16}{'n':>6}" + "".join(f"{c:>13}" for c in columns))
    for name, c in figures.items():
        out.append(f"{name:16}{c['n']:6.0f}" + "".join(f"{c[k]:12.1f}%" for k in columns))
    out += ["", "recall of each intent, likeliest first:"]
    for intent, hits in sorted(recall.items(), key=lambda x: x[1][True] / sum(x[1].values())):
        others = [f"{b} {n}" for (a, b), n in confused.most_common() if a == intent][:3]
        out.append(f"  {intent:18}{hits[True]:4} of {sum(hits.values()):4}   {', '.join(others)}")
    out += ["", f"danger: {len(grave)} grave, {len(misleading)} misleading, {len(plain)} ordinary sentences"]
    for share in (0.005, 0.01, 0.02, 0.05, 0.10):
        cut = float(np.quantile(plain, 1 - share)) if plain else 0.0
        found, false = (float(np.mean(np.array(x) >= cut)) for x in (grave, misleading))
        out.append(f"  score {cut:6.2f}: {100 * found:5.1f}% of the grave, {100 * false:5.1f}% of the misleading, "
                   f"{100 * share:4.1f}% of the ordinary")  # fmt: skip
    for tier, cut in (("alarm", policy().alarm), ("ask", policy().ask), ("doubt", policy().doubt)):
        found, false, often = (float(np.mean(np.array(x) >= cut)) for x in (grave, misleading, plain))
        figures[f"danger {tier}"] = {
            "grave": round(100 * found, 1), "misleading": round(100 * false, 1), "ordinary": round(100 * often, 1),
        }  # fmt: skip
        out.append(f"  policy {cut:5.2f}: {100 * found:5.1f}%, {100 * false:5.1f}%, {100 * often:4.1f}%")
    return out, figures
