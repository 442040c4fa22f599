"""Values to words: every sentence, time, distance and plural that a person reads, in each language.

In: values of the other rooms and a `Reader` (language, clocks, units). Out: texts and buttons (`Message`).
Pure: never imports aiohttp, SQLAlchemy, telegram, never reads the clock or the network; its sentences
are those of `server.sentences`. Another language is another .ftl file, no code.
"""

from server.conversation.telling.message import Button, Message, Rows
from server.conversation.telling.notices import say_notice
from server.conversation.telling.reader import Reader, reader_for, reader_in
from server.sentences import languages, sentence

__all__ = [
    "Button",
    "Message",
    "Reader",
    "Rows",
    "languages",
    "reader_for",
    "reader_in",
    "say_notice",
    "sentence",
]
