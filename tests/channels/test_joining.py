"""An invitation's link, its QR picture and its code; and the menus people see."""

from __future__ import annotations

import io
import re
from collections.abc import Iterable
from datetime import UTC, datetime

import matplotlib.image
import numpy as np
import pytest
import segno

from bot.channels.base import CHANNELS, Incoming, UnknownChannelError, make_channel
from bot.channels.joining import invitation, qr_png, start_link
from bot.channels.telegram import Telegram
from server.conversation.respond import _command
from server.conversation.telling.menu import COMMANDS, IN_GROUPS, menu_for
from server.conversation.understanding import Asked, Context, understand
from server.event.model import PartKind
from server.sentences import fallback, languages
from tests.channels.standin import TOKEN, USERNAME, StandIn

CODE = "7K3QXW9ZC2MD"


def test_a_start_link_opens_the_bot_with_the_code() -> None:
    """The form Telegram documents."""
    assert start_link(USERNAME, CODE) == f"https://t.me/{USERNAME}?start={CODE}"


@pytest.mark.parametrize("code", ["", "a b", "ä", "x" * 65, "a/b", "a&b=c"])
def test_a_code_telegram_would_not_hand_on_is_refused(code: str) -> None:
    """The library does not check it, and Telegram drops it without a word."""
    with pytest.raises(ValueError, match="start code"):
        start_link(USERNAME, code)


@pytest.mark.parametrize("name", ["", "x", "with space", "@stile_helper_bot"])
def test_a_name_that_is_none_is_refused(name: str) -> None:
    """A link to nowhere helps nobody."""
    with pytest.raises(ValueError, match="user name"):
        start_link(name, CODE)


def test_the_picture_is_the_link() -> None:
    """Read pixel by pixel it is the QR code of exactly that text, with a quiet border of four modules."""
    made = invitation(USERNAME, CODE)
    pixels = matplotlib.image.imread(io.BytesIO(made.qr))
    dark = (pixels if pixels.ndim == 2 else pixels[..., 0])[4::8, 4::8] < 0.5
    wanted = np.array([list(row) for row in segno.make(made.link, error="m", micro=False).matrix], dtype=bool)
    assert not dark[:4].any()
    assert not dark[:, :4].any()
    assert (dark[4:-4, 4:-4] == wanted).all()
    assert made.code == CODE
    assert qr_png("another text") != made.qr


@pytest.mark.parametrize("language", languages())
@pytest.mark.parametrize("kind", [k.value for k in PartKind])
def test_a_menu_is_one_telegram_takes(kind: str, language: str) -> None:
    """Words of lower-case letters up to 32, descriptions of 1 to 256 characters (Telegram's documentation)."""
    menu = menu_for([kind], language)
    assert menu
    for command in menu:
        assert re.fullmatch(r"[a-z0-9_]{1,32}", command.word)
        assert 1 <= len(command.says) <= 256


@pytest.mark.parametrize("word", [w for w in COMMANDS if w != "start"])
def test_every_command_is_a_question_the_desk_understands(word: str) -> None:
    """Chosen in the menu or typed."""
    ctx = Context(datetime(2027, 6, 19, 12, tzinfo=UTC), "UTC", ())
    asked = understand(_command(f"/{word}"), ctx)
    assert isinstance(asked, Asked), asked


def test_a_strangers_menu_tells_nothing() -> None:
    """Only how to join."""
    assert [c.word for c in menu_for((), "en")] == ["start"]


def test_several_parts_make_one_menu() -> None:
    """No command twice."""
    words = [c.word for c in menu_for(["crew", "safety contact"], "en")]
    assert len(words) == len(set(words))
    assert {"kit", "cards"} <= set(words)


async def test_menus_are_set_where_they_belong(telegram: Telegram, standin: StandIn) -> None:
    """Strangers' and groups' for all chats, a person's for their own."""
    from datetime import UTC, datetime

    await telegram.open()
    asked = Incoming("telegram", "41", datetime(2027, 6, 19, tzinfo=UTC), "41.1", reply_to="41")
    await telegram.show_menu(asked, ["crew"], "en")
    shown = {
        (
            c.params["scope"]["type"],
            c.params["scope"].get("chat_id"),
            c.params.get("language_code", ""),
        ): [(x["command"], x["description"]) for x in c.params["commands"]]
        for c in standin.calls
        if c.method == "setMyCommands"
    }

    def wanted(kinds: Iterable[str], language: str) -> list[tuple[str, str]]:
        return [(c.word, c.says) for c in menu_for(kinds, language)]

    codes = {"" if x == fallback() else x: x for x in languages()}
    assert shown == {
        **{("all_private_chats", None, code): wanted((), x) for code, x in codes.items()},
        **{("all_group_chats", None, code): wanted(IN_GROUPS, x) for code, x in codes.items()},
        ("chat", 41, ""): wanted(["crew"], "en"),
    }
    assert telegram.username == USERNAME


def test_every_channel_of_the_table_can_be_made() -> None:
    """A name in the table leads to a module that makes that channel."""
    settings = {
        "telegram": {"token": TOKEN},
        "email": {"host": "mail.example.org", "from": "desk@example.org"},
        "webhook": {"secret": "sixteen letters or more"},
        "text": {},
    }
    for name, its in settings.items():
        assert make_channel(name, its).name == name
    assert set(settings) <= set(CHANNELS)
    with pytest.raises(UnknownChannelError, match="pigeon"):
        make_channel("pigeon", {})
