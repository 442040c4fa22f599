"""Photos: kept small and bare, shown to those they went to, deleted with the rest."""

from __future__ import annotations

import base64
import io
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import pytest
from PIL import Image

from bot.channels.base import Photo
from bot.conversing import Conversing
from server.api.photos import SIDE_MAX, clean
from server.facts.entry import Kind
from tests.bot.photos import CAMERA, taken

if TYPE_CHECKING:
    from conftest import Race


@dataclass
class Album:
    """What a channel has of photos, by name."""

    have: dict[str, bytes]

    async def photo(self, ref: str) -> bytes | None:
        """See `HasPhotos`."""
        return self.have.get(ref)


@pytest.fixture
def album(race: Race) -> Album:
    """The race's channel has photos."""
    found = Album({"p1": taken()})
    race.desk = Conversing(race.api, found)
    return found


async def status(race: Race, who: str, path: str) -> tuple[int, bytes]:
    """What that person gets of a photo's path."""
    headers = {"Authorization": f"Bearer {race.secret}", "Acting-Address": who}
    async with race.session.get(race.url + path, headers=headers) as reply:
        return reply.status, await reply.read()


async def passed_on(race: Race, who: str) -> list[dict[str, Any]]:
    """That person's notices of words and pictures passed on."""
    return [n for n in await race.notices(who) if n["kind"] == "passed on"]


def test_a_photo_keeps_nothing_but_what_is_seen() -> None:
    """No place, no camera, no comment; turned upright, and small."""
    sent = taken(sideways=True)
    assert CAMERA.encode() in sent
    kept = clean(sent)
    assert kept is not None
    assert CAMERA.encode() not in kept
    with Image.open(io.BytesIO(kept)) as image:
        assert image.format == "JPEG"
        assert image.size == (SIDE_MAX // 2, SIDE_MAX)
        assert not dict(image.getexif())
        assert set(image.info) <= {"jfif", "jfif_version", "jfif_unit", "jfif_density"}


@pytest.mark.parametrize("sent", [b"", b"hello", taken()[:300], b"GIF89a" + bytes(50)])
def test_what_is_no_photo_is_none(sent: bytes) -> None:
    """Nor a broken one, nor a kind that may move."""
    assert clean(sent) is None


@pytest.mark.usefixtures("album")
async def test_a_photo_with_words_reports_and_is_shown(race: Race) -> None:
    """The words first, as ever; then to whom it was shown."""
    race.at("08:40")
    reply = await race.say("ana", "in at moor cross 0838", photo=Photo("p1"))
    assert reply.text.startswith("Noted: Maren in at Moor Cross, 08:38.")
    assert "The picture is kept, and shown to Maren, Birgit and Ines." in reply.text
    (told,) = await passed_on(race, "ines")
    assert "Ana sends a picture: ‘in at moor cross 0838’" in told["text"]
    found, content = await status(race, "ines", told["picture"])
    assert found == 200
    with Image.open(io.BytesIO(content)) as image:
        assert max(image.size) == SIDE_MAX
    claimed = await race.api.claim("test", 20, 60, pictures=True)
    assert {base64.b64decode(d.picture) for d in claimed.deliveries if d.picture} <= {content}


@pytest.mark.usefixtures("album")
async def test_who_it_did_not_go_to_sees_nothing(race: Race) -> None:
    """The other runner's people, supporters, and once it is taken back nobody; the writer always."""
    reply = await race.say("ana", photo=Photo("p1"))
    assert "I can’t see what is on it." in reply.text
    (told,) = await passed_on(race, "both")
    path = told["picture"]
    seen = {w: (await status(race, w, path))[0] for w in ("ana", "both", "maren", "fan", "tove", "vera")}
    assert seen == {"ana": 200, "both": 200, "maren": 200, "fan": 403, "tove": 403, "vera": 403}
    await race.press("ana", reply, "Undo")
    assert (await status(race, "both", path))[0] == 403
    assert "zurück" in (await passed_on(race, "both"))[-1]["text"]


@pytest.mark.usefixtures("album")
async def test_for_one_it_goes_to_them_alone_with_the_words_once(race: Race) -> None:
    """Words that are passed on go with the picture, not before it too."""
    reply = await race.say("ana", "tell birgit these are the shoes", photo=Photo("p1"))
    assert reply.text.startswith("The picture is kept, and shown to Birgit."), reply.text
    assert len(await passed_on(race, "both")) == 1
    assert await passed_on(race, "ines") == []


@pytest.mark.usefixtures("album")
async def test_a_call_for_help_under_a_photo_is_out_before_it(race: Race) -> None:
    """And the picture wakes those on it."""
    reply = await race.say("ana", "HELP maren is unconscious at moor cross", photo=Photo("p1"))
    assert "112" in reply.text.split("\n")[0]
    entries = [e.kind for e in await race.journal.entries(race.event.id)]
    assert entries.index(Kind.ASKED_FOR_HELP) < entries.index(Kind.PASSED_ON)
    (told,) = await passed_on(race, "ines")
    assert told["urgency"] == "action"


async def test_what_does_not_come_or_is_no_photo_is_said(race: Race, album: Album) -> None:
    """The words are read all the same."""
    race.at("08:40")
    lost = await race.say("ana", "in at moor cross 0838", photo=Photo("gone"))
    assert lost.text.startswith("Noted: Maren in at Moor Cross")
    assert lost.text.endswith("The picture did not come through. Please send it again.")
    album.have |= {"big": bytes(900_000), "odd": b"no picture"}
    assert (await race.say("ana", photo=Photo("big"))).text == (
        "The picture is too large (at most 700 kB). Send it smaller."
    )
    assert (await race.say("ana", photo=Photo("odd"))).text.startswith("That is no picture I can keep.")


@pytest.mark.usefixtures("album")
async def test_deletion_of_the_runner_takes_photos_of_her_too(race: Race) -> None:
    """Also those that somebody else took."""
    await race.say("ana", photo=Photo("p1"))
    (told,) = await passed_on(race, "both")
    picture = told["picture"].rpartition("/")[2]
    assert await race.journal.picture(picture) is not None
    done = await race.journal.blank_person("maren", race.clock.now())
    assert done.pictures == 1
    assert await race.journal.picture(picture) is None


@pytest.mark.usefixtures("album")
async def test_where_none_can_be_shown_it_is_said_where_it_is(race: Race) -> None:
    """A channel that shows no pictures gets a line instead."""
    await race.say("ana", photo=Photo("p1"))
    claimed = await race.api.claim("test", 20, 60)
    texts = [d.text for d in claimed.deliveries if "picture" in d.text or "Bild" in d.text]
    assert texts
    assert all("on the race’s page" in t or "auf der Seite des Rennens" in t for t in texts), texts
