"""The same night with people's own phones: Telegram's stand-in, the real library, the real worker, a stepped clock.

A message counts as told at the minute at which Telegram took it. Whoever has blocked the bot is reached by mail, which
is handed over here as a mail channel would.
"""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Any, cast

import aiohttp

from bot.channels.telegram import make
from bot.conversing import Conversing
from bot.service_client import ServiceClient
from bot.worker import Pace, Worker
from server.api import auth
from server.api.building import build
from server.api.parts import PARTS
from server.app import Options, make_app
from server.clock import SteppedClock
from server.facts.entry import Fix
from server.journal import DeliveryState, Journal
from server.settings import Settings
from tests.channels.standin import TOKEN, StandIn
from tests.whole.hill import EVENT
from tests.whole.night import Night, Told, serving

LOOK_EVERY_S = 300.0
SIGN_OF_LIFE = timedelta(seconds=110)
"""How often Telegram says that nothing waits: under the two minutes after which it would be called down."""
MAIL = "email"
LEASE = timedelta(seconds=60)


@dataclass(slots=True, repr=False)
class LongNight(Night):
    """A night told over Telegram. `chats` holds each person's."""

    chats: dict[str, int] = field(default_factory=dict)
    phones: StandIn = field(default_factory=StandIn)
    worker: Worker = field(default_factory=lambda: cast(Worker, None))
    mail_secret: str = ""
    mailed: list[Told] = field(default_factory=list)
    _seen: int = 0
    _counted: set[str] = field(default_factory=set)

    async def pass_to(self, then: datetime) -> None:
        """The clock goes on; Telegram goes on saying that nothing waits."""
        while self.clock.now() < then:
            self.clock.set(min(then, self.clock.now() + SIGN_OF_LIFE))
            await self.worker.store(())

    async def look(self) -> datetime:
        """One tick; what is due goes out; when to look next."""
        due = await self.parts.ticker.tick(self.clock.now())
        await self._told_by_now()
        held = await self.journal.next_due(["telegram", MAIL])
        return due if held is None else min(due, max(held, self.clock.now() + timedelta(seconds=1)))

    async def _told_by_now(self) -> None:
        """Wait until everything that is due has reached its phone or mailbox, and note it."""
        worked = await self._settled() or len(self.phones.sent) > self._seen
        mail = await self.journal.next_due([MAIL])
        if mail is not None and mail <= self.clock.now():
            await self._post()
            worked = True
        if worked:
            self._note_buttons()
            await self._note_told()

    async def _settled(self) -> bool:
        """Wait until the worker has worked off what was said and sent what is due; whether there was anything."""
        worked = False
        async with asyncio.timeout(20):
            while await self._at_work():
                worked = True
                await asyncio.sleep(0.01)
        return worked

    async def _at_work(self) -> bool:
        if self.phones.unconfirmed or await self.journal.waiting():
            return True
        due = await self.journal.next_due(["telegram"])
        if due is None or due > self.clock.now() + LEASE:
            return False
        # What is being sent counts as due when its lease ends.
        return due <= self.clock.now() or await self._sending()

    async def _sending(self) -> bool:
        return any(d.state is DeliveryState.ATTEMPTING for d in await self.journal.deliveries(EVENT))

    async def _post(self) -> None:
        """The mail goes out."""
        headers = {"Authorization": f"Bearer {self.mail_secret}"}
        body = {"channel": MAIL, "limit": 20}
        async with self.session.post(f"{self.url}/v1/outbox/claim", json=body, headers=headers) as reply:
            claimed = (await reply.json())["data"]["deliveries"]
        for d in claimed:
            report = {"outcome": "accepted", "tries": d["tries"]}
            url = f"{self.url}/v1/outbox/{d['id']}/report"
            async with self.session.post(url, json=report, headers=headers) as reply:
                assert (await reply.json())["ok"]

    def _note_buttons(self) -> None:
        """Keep the buttons of what came since the last look."""
        for call in self.phones.sent[self._seen :]:
            who = next(p for p, chat in self.chats.items() if str(chat) == call.chat)
            rows = call.params.get("reply_markup", {}).get("inline_keyboard", [])
            self._offer(who, [[{"label": b["text"], "data": b["callback_data"]} for b in r] for r in rows])
        self._seen = len(self.phones.sent)

    async def _note_told(self) -> None:
        for d in await self.journal.deliveries(EVENT):
            if d.state is DeliveryState.SENT and d.id not in self._counted:
                self._counted.add(d.id)
                key = d.notice.key
                urgent = d.notice.urgency.value == "alarm"
                told = Told(self.clock.now(), key.person, key.kind.value, d.text, urgent)
                self.told.append(told)
                if d.channel == MAIL:
                    self.mailed.append(told)

    async def _hear(
        self, who: str, text: str = "", button: str = "", fix: Fix | None = None, label: str = ""
    ) -> str:
        assert fix is None, "places are shared over Telegram in tests/channels"
        before, chat = len(self.phones.sent), self.chats[who]
        if button:
            await self.phones.press(button, user=chat)
        else:
            await self.phones.say(text, user=chat, date=int(self.clock.now().timestamp()))
        await self._settled()
        self._note_buttons()
        await self._note_told()
        answer = "\n".join(c.text for c in self.phones.sent[before:] if c.chat == str(chat))
        self.told.append(Told(self.clock.now(), who, "", answer))
        await self.look()
        return answer

    async def blocks(self, who: str) -> None:
        """Somebody blocks the bot, and Telegram says so."""
        chat = self.chats[who]
        self.phones.blocked.add(str(chat))
        user = {"id": chat, "is_bot": False, "first_name": who}
        bot = {"id": int(TOKEN.partition(":")[0]), "is_bot": True, "first_name": "Stile"}
        change: dict[str, Any] = {
            "chat": {"id": chat, "type": "private", "first_name": who},
            "from": user,
            "date": int(self.clock.now().timestamp()),
            "old_chat_member": {"user": bot, "status": "member"},
            "new_chat_member": {"user": bot, "status": "kicked", "until_date": 0},
        }
        await self.phones.put(my_chat_member=change)
        await self.look()


@asynccontextmanager
async def long_night(
    database: str, text: str, files: dict[str, bytes], begins: datetime
) -> AsyncIterator[LongNight]:
    """The server and its bot up at `begins`, everybody joined by Telegram and known by a mail address as well."""
    built = build(text, files)
    clock = SteppedClock(begins)
    journal = await Journal.open(database, channels=("telegram", MAIL))
    chats = {person.id: 201 + i for i, person in enumerate(built.event.people)}
    try:
        await journal.store_event(text, files, built.event, "test", begins)
        for person, chat in chats.items():
            await journal.bind(person, "telegram", str(chat), begins)
        secrets = [
            await journal.issue_token(None, c, [auth.channel_scope(c)], begins) for c in ("telegram", MAIL)
        ]
        options = Options(live=False, channels=frozenset({"telegram"}))
        app = make_app(Settings(tick_seconds_max=LOOK_EVERY_S), journal, clock, options=options)
        async with StandIn() as phones, serving(app) as url, aiohttp.ClientSession() as session:
            channel = make({"token": TOKEN, "base_url": phones.base_url})
            service = ServiceClient(session, url, secrets[0])
            worker = Worker(channel, service, Conversing(service), Pace(idle_s=0.05), clock)
            working = asyncio.create_task(worker.run())
            await worker.store(())
            try:
                yield LongNight(
                    built,
                    clock,
                    journal,
                    app[PARTS],
                    session,
                    url,
                    secrets[0],
                    Conversing(ServiceClient(session, url, secrets[0])),
                    chats=chats,
                    phones=phones,
                    worker=worker,
                    mail_secret=secrets[1],
                )
            finally:
                worker.stop()
                await asyncio.wait_for(working, 20)
    finally:
        await journal.close()
