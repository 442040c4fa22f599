"""What stored updates of Telegram's say: a table of real shapes, and that nothing strange breaks the reader."""

from __future__ import annotations

import json
from contextlib import suppress
from datetime import UTC, datetime
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.channels.addresses import AddressNews, Became, NotReadyError
from bot.channels.base import Incoming
from bot.channels.telegram.reading import Me, address_news, read
from server.facts.entry import Fix

US = Me(777, "stile_helper_bot")
SENT = 1_815_000_000
EDITED = SENT + 600
AT = datetime.fromtimestamp(SENT, UTC)
LATER = datetime.fromtimestamp(EDITED, UTC)
ANA = {"id": 41, "is_bot": False, "first_name": "Ana", "language_code": "de"}
PRIVATE = {"id": 41, "type": "private", "first_name": "Ana"}
GROUP = {"id": -500, "type": "group", "title": "crew"}
SUPERGROUP = {"id": -100500, "type": "supergroup", "title": "crew"}


def message(chat: dict[str, Any] = PRIVATE, **content: Any) -> dict[str, Any]:
    """A message as Telegram gives it."""
    return {"message_id": 9, "date": SENT, "chat": chat, "from": ANA, **content}


def update(**content: Any) -> str:
    """An update's body."""
    return json.dumps({"update_id": 1, **content})


def new(chat: dict[str, Any] = PRIVATE, **content: Any) -> str:
    """The body of a new message."""
    return update(message=message(chat, **content))


def edit(chat: dict[str, Any] = PRIVATE, edited: int = EDITED, **content: Any) -> str:
    """The body of an edited message."""
    return update(edited_message=message(chat, edit_date=edited, **content))


def one(body: str, me: Me = US) -> Incoming:
    """The one thing an update says."""
    (incoming,) = read(body, me)
    return incoming


def test_a_text_in_a_private_chat() -> None:
    """Who wrote, when, in what language; the key is the message's."""
    assert one(new(text="in at mill 5 to 3")) == Incoming(
        "telegram", "41", AT, "41.9", text="in at mill 5 to 3", reply_to="41", language="de"
    )


PLACE = {"latitude": 54.1, "longitude": -2.2, "horizontal_accuracy": 12.0}


def test_a_place_shared_once() -> None:
    """A fix with its accuracy; not live."""
    shared = one(new(location=PLACE))
    assert shared.fix == Fix(54.1, -2.2, 12.0)
    assert (shared.live, shared.live_ended, shared.sent_at) == (False, False, AT)


def test_a_live_share_begins_moves_and_ends() -> None:
    """Each later position has its own time and key; without a period it has ended: contact lost, not resting."""
    begun = one(new(location={**PLACE, "live_period": 3600}))
    moved = one(edit(location={**PLACE, "latitude": 54.2, "live_period": 3600, "heading": 90}))
    ended = one(edit(edited=EDITED + 60, location={**PLACE, "latitude": 54.2}))
    assert (begun.live, begun.live_ended, begun.sent_at) == (True, False, AT)
    assert (moved.live, moved.live_ended, moved.sent_at) == (True, False, LATER)
    assert moved.fix == Fix(54.2, -2.2, 12.0, None, 90.0)
    assert (ended.live, ended.live_ended) == (True, True)
    assert len({begun.message_key, moved.message_key, ended.message_key}) == 3
    assert moved.edits == ""


def test_two_moves_in_one_second_have_two_keys() -> None:
    """Edit dates have whole seconds, and the same key with another place would be a conflict."""
    keys = {
        one(edit(location={**PLACE, "latitude": lat, "live_period": 60})).message_key for lat in (54.1, 54.2)
    }
    assert len(keys) == 2


def test_a_venue_is_a_place_with_its_name() -> None:
    """The name is handed on as words."""
    shared = one(new(location=PLACE, venue={"location": PLACE, "title": "Skelter Mill", "address": "-"}))
    assert (shared.text, shared.fix) == ("Skelter Mill", Fix(54.1, -2.2, 12.0))


def test_a_photo_with_its_caption() -> None:
    """The largest size's name, never its bytes."""
    sizes = [{"file_id": f, "file_unique_id": f, "width": w, "height": w} for f, w in (("a", 90), ("b", 900))]
    seen = one(new(photo=sizes, caption="her feet at mill"))
    assert seen.photo is not None
    assert (seen.photo.ref, seen.text) == ("b", "her feet at mill")


def test_a_pressed_button_is_the_one_who_pressed_it() -> None:
    """Not the one it was sent to; dated when it came, as Telegram gives no time."""
    under = {**message(GROUP, text="?"), "from": {"id": 777, "is_bot": True, "first_name": "us"}}
    body = update(
        callback_query={"id": "55", "from": ANA, "chat_instance": "1", "data": "n|7|yes", "message": under}
    )
    (pressed,) = read(body, US, LATER)
    assert (pressed.address, pressed.button, pressed.reply_to, pressed.group) == (
        "41",
        "n|7|yes",
        "-500",
        True,
    )
    assert (pressed.message_key, pressed.sent_at, pressed.addressed) == ("q55", LATER, True)


def test_a_press_under_a_message_telegram_has_forgotten() -> None:
    """Such a message has no date (1970 stands for none); the press still counts."""
    under = {"chat": PRIVATE, "message_id": 9, "date": 0}
    body = update(
        callback_query={"id": "55", "from": ANA, "chat_instance": "1", "data": "x", "message": under}
    )
    (pressed,) = read(body, US, LATER)
    assert (pressed.button, pressed.sent_at) == ("x", LATER)


def test_a_corrected_text_names_what_it_corrects() -> None:
    """Its key is its own, its time that of the edit."""
    before, after = one(new(text="in 0255")), one(edit(text="in 0305"))
    assert after.edits == before.message_key
    assert after.message_key != before.message_key
    assert (after.text, after.sent_at) == ("in 0305", LATER)


@pytest.mark.parametrize(
    ("kind", "content"),
    [
        ("voice", {"file_id": "f", "file_unique_id": "f", "duration": 3}),
        ("video_note", {"file_id": "f", "file_unique_id": "f", "duration": 3, "length": 9}),
        ("contact", {"phone_number": "+44", "first_name": "x"}),
    ],
)
def test_what_we_cannot_read_is_named(kind: str, content: dict[str, Any]) -> None:
    """Whoever sent a voice message must hear that nobody listened."""
    assert one(new(**{kind: content})).other == kind


def mention(text: str, name: str, kind: str = "mention") -> list[dict[str, Any]]:
    """The entity that marks a name or a command in a text."""
    return [{"type": kind, "offset": text.index(name), "length": len(name)}]


GROUPS: dict[str, tuple[str, bool, str]] = {
    "nobody named": (new(GROUP, text="where is she"), False, "where is she"),
    "our name": (
        new(
            GROUP,
            text="@Stile_Helper_Bot where is she",
            entities=mention("@Stile_Helper_Bot", "@Stile_Helper_Bot"),
        ),
        True,
        "where is she",
    ),
    "somebody's name": (new(GROUP, text="@ana look", entities=mention("@ana", "@ana")), False, "@ana look"),
    "a command": (new(GROUP, text="/next", entities=mention("/next", "/next", "bot_command")), True, "/next"),
    "our command": (
        new(
            SUPERGROUP,
            text="/next@stile_helper_bot mill",
            entities=mention("/next@stile_helper_bot mill", "/next@stile_helper_bot", "bot_command"),
        ),
        True,
        "/next mill",
    ),
    "an answer to us": (
        new(
            GROUP,
            text="yes",
            reply_to_message={
                **message(GROUP, text="?"),
                "from": {"id": 777, "is_bot": True, "first_name": "us"},
            },
        ),
        True,
        "yes",
    ),
    "an answer to another": (new(GROUP, text="yes", reply_to_message=message(GROUP, text="?")), False, "yes"),
    "our name under a photo": (
        new(
            GROUP,
            caption="@stile_helper_bot look",
            caption_entities=mention("@stile_helper_bot look", "@stile_helper_bot"),
            photo=[{"file_id": "a", "file_unique_id": "a", "width": 9, "height": 9}],
        ),
        True,
        "look",
    ),
    "our name without @": (
        new(
            GROUP,
            text="Stile look",
            entities=[
                {
                    "type": "text_mention",
                    "offset": 0,
                    "length": 5,
                    "user": {"id": 777, "is_bot": True, "first_name": "Stile"},
                }
            ],
        ),
        True,
        "Stile look",
    ),
}


@pytest.mark.parametrize("case", GROUPS)
def test_in_a_group_we_are_meant_only_when_addressed(case: str) -> None:
    """By name, command or answer; the name is taken out, and the reply goes to the group."""
    body, addressed, text = GROUPS[case]
    said = one(body)
    assert (said.group, said.addressed, said.text) == (True, addressed, text)
    assert (said.address, said.reply_to) == ("41", said.message_key.split(".")[0])


def test_another_bots_command_is_not_ours() -> None:
    """It is not even looked at."""
    text = "/next@other_bot"
    assert read(new(GROUP, text=text, entities=mention(text, text, "bot_command")), US) == ()


def test_without_our_name_a_groups_mention_waits() -> None:
    """Whether it is us is not known before Telegram has told our name; private chats never wait."""
    body = new(GROUP, text="@stile_helper_bot hi", entities=mention("@stile_helper_bot", "@stile_helper_bot"))
    with pytest.raises(NotReadyError):
        read(body, Me(777))
    assert one(new(text="@stile_helper_bot hi", entities=mention("@s", "@s")), Me(777)).addressed


NOTHING = {
    "a bot's message": update(message={**message(text="hi"), "from": {**ANA, "is_bot": True}}),
    "an anonymous admin": update(message={**message(GROUP, text="hi"), "sender_chat": GROUP}),
    "somebody joined": new(GROUP, new_chat_members=[ANA]),
    "a channel's post": update(
        channel_post={"message_id": 1, "date": SENT, "chat": {"id": 1, "type": "channel"}}
    ),
    "blocked": update(
        my_chat_member={
            "chat": PRIVATE,
            "from": ANA,
            "date": SENT,
            "old_chat_member": {"status": "member", "user": ANA},
            "new_chat_member": {"status": "kicked", "user": ANA, "until_date": 0},
        }
    ),
    "a kind we don't know": update(something_new={"x": 1}),
    "a message without content": new(),
}


@pytest.mark.parametrize("case", NOTHING)
def test_what_says_nothing_is_nothing(case: str) -> None:
    """No Incoming comes of it."""
    assert read(NOTHING[case], US) == ()


def member(status: str, chat: dict[str, Any] = PRIVATE) -> str:
    """Our membership in a chat has changed."""
    us = {"id": 777, "is_bot": True, "first_name": "us"}
    after = {"status": status, "user": us, **({"until_date": 0} if status == "kicked" else {})}
    return update(
        my_chat_member={
            "chat": chat,
            "from": ANA,
            "date": SENT,
            "old_chat_member": {"status": "member", "user": us},
            "new_chat_member": after,
        }
    )


@pytest.mark.parametrize(
    ("body", "news"),
    [
        (member("kicked"), AddressNews("41", Became.GONE)),
        (member("member"), AddressNews("41", Became.BACK)),
        (member("left", GROUP), AddressNews("-500", Became.GONE)),
        (new(GROUP, migrate_to_chat_id=-100500), AddressNews("-500", Became.MOVED, "-100500")),
    ],
)
def test_news_of_addresses(body: str, news: AddressNews) -> None:
    """Blocked, back, thrown out of a group, a group turned supergroup."""
    assert address_news(body) == (news,)
    assert read(body, US) == ()


def test_most_updates_are_no_news_of_addresses() -> None:
    """A text is none."""
    assert address_news(new(text="hi")) == ()


BODIES = [
    new(text="x"),
    edit(location={**PLACE, "live_period": 5}),
    GROUPS["our command"][0],
    member("kicked"),
]


@pytest.mark.parametrize("body", BODIES)
def test_the_same_update_reads_the_same(body: str) -> None:
    """A doubled update gives the same Incomings with the same keys."""
    assert read(body, US, LATER) == read(body, US, LATER)


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=5),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=8), inner, max_size=3),
    max_leaves=8,
)


@given(where=st.sampled_from(["message", "edited_message", "callback_query", "my_chat_member"]), junk=JSON)
def test_junk_is_refused_in_a_known_way(where: str, junk: Any) -> None:
    """Whatever stands in an update, reading it gives Incomings or the one error that sets it aside."""
    body = json.dumps({"update_id": 1, where: junk})
    with suppress(ValueError):
        assert isinstance(read(body, US), tuple)
    with suppress(ValueError):
        assert isinstance(address_news(body), tuple)


@given(st.text(max_size=40))
def test_a_body_that_is_no_json_is_refused(body: str) -> None:
    """It is an error, never an Incoming."""
    with suppress(ValueError):
        assert read(body, US) == ()
