"""Known examples with what people say around them: `languages/<language>/grammar.toml`. Made when the model is trained, of
less weight than what somebody wrote."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Sequence
from dataclasses import replace
from random import Random

from server.conversation.training.examples import GRAVE, HARMLESS, LANGUAGES, Example

SEED = 20270620
WEIGHT = 0.3
"""What a sentence made in this way counts beside a written one."""
SHARE = 0.5
"""Of so many examples one is made."""


def around(examples: Sequence[Example]) -> Iterator[Example]:
    """Sentences made of these; the same of the same. None of danger: made ones lower what is found of it."""
    said = {
        folder.name: tomllib.loads((folder / "grammar.toml").read_text(encoding="utf-8"))
        for folder in LANGUAGES.iterdir()
        if (folder / "grammar.toml").is_file()
    }
    rng = Random(SEED)
    for example in examples:
        words = said.get(example.language)
        made = rng.random() < SHARE
        how, opening, closing, chatter = rng.random(), rng.random(), rng.random(), rng.random()
        if not made or words is None or len(example.intents) != 1 or example.intents[0] in (GRAVE, HARMLESS):
            continue
        pick = {
            k: words[k][int(x * len(words[k]))]
            for k, x in (("opening", opening), ("closing", closing), ("chatter", chatter))
        }
        core = example.text
        if how < 0.3:
            text = f"{pick['opening']} {core}" if how < 0.15 else f"{pick['opening']}, {core}"
        elif how < 0.5:
            text = f"{core} {pick['closing']}"
        elif how < 0.8:
            text = f"{pick['chatter']}. {core}" if how < 0.65 else f"{pick['chatter']}, {core}"
        elif how < 0.9:
            text = f"{core}. {pick['chatter']} {pick['closing']}"
        else:
            text = f"{pick['opening']}. {pick['chatter']}. {core} {pick['closing']}"
        yield replace(example, text=text)
