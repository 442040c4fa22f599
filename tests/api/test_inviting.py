"""`stilepost invite`: code, start link, QR read by another library's decoder; the list of who was asked."""

from __future__ import annotations

import asyncio
import json
import re
import subprocess
import sys
import threading
import time
from collections.abc import Iterator
from pathlib import Path

import matplotlib.image
import numpy as np
import pytest
import zxingcpp
from click.testing import CliRunner, Result

from server.cli.main import stilepost
from tests.api.conftest import DEMO
from tests.channels.standin import TOKEN, USERNAME, StandIn

PUBLIC = "https://crew.example.org"
CODE = r"[0-9A-HJKMNP-TV-Z]{12}"


class Shell:
    """Runs commands on a database that holds the demo's event; `env` holds settings."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.env: dict[str, str] = {}
        self.run("load", str(DEMO / "event.toml"), "--yes")

    def run(self, *arguments: str) -> Result:
        """One command."""
        url = f"sqlite+aiosqlite:///{self.folder / 'one.db'}"
        return CliRunner().invoke(stilepost, ["--database", url, *arguments], env=self.env)


@pytest.fixture
def shell(tmp_path: Path) -> Shell:
    return Shell(tmp_path)


@pytest.fixture
def telegram() -> Iterator[StandIn]:
    """The stand-in, in a thread of its own: commands run a loop of their own."""
    loop = asyncio.new_event_loop()
    thread = threading.Thread(target=loop.run_forever)
    thread.start()
    standin = StandIn()
    asyncio.run_coroutine_threadsafe(standin.__aenter__(), loop).result(60)
    yield standin
    asyncio.run_coroutine_threadsafe(standin.stop(), loop).result(60)
    loop.call_soon_threadsafe(loop.stop)
    thread.join()
    loop.close()


def read_qr(pixels: np.ndarray) -> str:
    """What a decoder that is not ours reads in a picture (dark is 0)."""
    found = zxingcpp.read_barcodes(np.ascontiguousarray(pixels.astype(np.uint8)))
    (one,) = found
    return str(one.text)


def as_pixels(blocks: str) -> np.ndarray:
    """Half blocks as a terminal with light letters on dark shows them, each eight pixels wide."""
    lines = [line for line in blocks.split("\n") if line and set(line) <= set("█▀▄ ")]
    width = max(len(line) for line in lines)
    rows = []
    for line in lines:
        padded = line.ljust(width)
        rows.append([255 if c in "█▀" else 0 for c in padded])
        rows.append([255 if c in "█▄" else 0 for c in padded])
    return np.kron(np.array(rows), np.ones((8, 8)))


def at_standin(shell: Shell, telegram: StandIn) -> None:
    """Settings of an installation with a bot and a public address."""
    shell.env = {
        "STILEPOST_TELEGRAM_TOKEN": TOKEN,
        "STILEPOST_TELEGRAM_BASE_URL": telegram.base_url,
        "STILEPOST_PUBLIC_URL": PUBLIC,
    }


def test_an_invitation_has_code_start_link_page_link_and_pictures(shell: Shell, telegram: StandIn) -> None:
    """All carry the one code; the bot's name comes from Telegram; a decoder reads terminal and file alike."""
    at_standin(shell, telegram)
    file = shell.folder / "ana.png"
    shown = shell.run("invite", "ana", "--qr", str(file), "--blocks")
    assert shown.exit_code == 0, shown.output
    code = re.search(rf"^code: ({CODE})$", shown.output, re.M)
    assert code is not None, shown.output
    link = f"https://t.me/{USERNAME}?start={code[1]}"
    assert f"telegram: {link}" in shown.output
    assert f"link: {PUBLIC}/join#{code[1]}" in shown.output
    assert "Ana (crew" in shown.output
    assert read_qr(as_pixels(shown.output)) == link
    pixels = matplotlib.image.imread(file)
    assert read_qr(pixels[..., 0] * 255 if pixels.ndim == 3 else pixels * 255) == link
    assert telegram.sent == []
    assert [c.method for c in telegram.calls] == ["getMe"]
    assert TOKEN not in shown.output


def test_the_pages_link_as_a_picture(shell: Shell, telegram: StandIn) -> None:
    """For somebody who has no Telegram."""
    at_standin(shell, telegram)
    shown = shell.run("invite", "ana", "--web", "--blocks")
    assert re.fullmatch(rf"{PUBLIC}/join#{CODE}", read_qr(as_pixels(shown.output)))


@pytest.mark.parametrize("name", ["stile_crew_bot", "@stile_crew_bot"])
def test_a_bots_name_may_be_a_setting(shell: Shell, name: str) -> None:
    """Where the bot runs elsewhere, its token is not here."""
    shell.env = {"STILEPOST_TELEGRAM_USERNAME": name, "STILEPOST_CHANNELS_APART": "telegram"}
    assert re.search(rf"t\.me/stile_crew_bot\?start={CODE}$", shell.run("invite", "ana").output, re.M)


def test_a_bots_name_that_is_none_is_refused_before_a_code_is_made(shell: Shell) -> None:
    """The setting is named, and an earlier code still holds."""
    shell.run("invite", "ana")
    shell.env = {"STILEPOST_TELEGRAM_USERNAME": "no name"}
    found = shell.run("invite", "ana")
    assert (found.exit_code, "telegram_username" in found.output) == (1, True)
    shell.env = {}
    assert "withdrawn" not in shell.run("invitations").output


def test_telegram_away_costs_the_link_not_the_code(
    shell: Shell, telegram: StandIn, unused_tcp_port: int
) -> None:
    """Said on the side; the code works when it is written to the bot. The token is in no line."""
    at_standin(shell, telegram)
    shell.env["STILEPOST_TELEGRAM_BASE_URL"] = f"http://127.0.0.1:{unused_tcp_port}"
    shown = shell.run("invite", "ana")
    assert shown.exit_code == 0, shown.output
    assert re.search(rf"^code: {CODE}$", shown.output, re.M)
    assert "t.me" not in shown.output
    assert "no start link" in shown.output
    assert TOKEN not in shown.output


def test_a_wrong_token_is_said(shell: Shell, telegram: StandIn) -> None:
    """Telegram does not know it: the setting is named."""
    at_standin(shell, telegram)
    shell.env["STILEPOST_TELEGRAM_TOKEN"] = "1:nobody"
    shown = shell.run("invite", "ana")
    assert (shown.exit_code, "telegram_token" in shown.output) == (0, True)


def test_without_a_public_address_the_link_is_said_to_be_of_use_here_only(shell: Shell) -> None:
    """Somebody would send it on, and nobody could open it."""
    shown = shell.run("invite", "ana").output
    assert "this machine only" in shown


def test_a_link_to_a_port_where_nothing_answers_is_said(shell: Shell, unused_tcp_port: int) -> None:
    """The server was started with --port: the link would lead nowhere. It is said, and --url makes the right one."""
    shell.env["STILEPOST_PORT"] = str(unused_tcp_port)
    shown = shell.run("invite", "ana").output
    assert f"no Stilepost answers at http://127.0.0.1:{unused_tcp_port} now." in shown
    shown = shell.run("invite", "ana", "--url", "http://127.0.0.1:8080/").output
    assert re.search(rf"^link: http://127\.0\.0\.1:8080/join#{CODE}$", shown, re.M)
    assert "answers" not in shown
    assert "is no web address" in shell.run("invite", "ana", "--url", "crew.example.org").output


def test_the_server_is_found_on_whatever_port_it_runs(shell: Shell) -> None:
    """The running server says beside its database where it listens: the link leads there, and --url still has the last
    word. Once it has ended the settings' port holds again."""
    note = shell.folder / "one.db.listening"
    url = f"sqlite+aiosqlite:///{shell.folder / 'one.db'}"
    command = [
        sys.executable,
        "-c",
        "from server.cli import main; main()",
        "--database",
        url,
        "serve",
        "--port",
        "0",
    ]
    server = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    try:
        for _ in range(600):
            if note.exists() and note.read_text():
                break
            assert server.poll() is None
            time.sleep(0.1)
        found = json.loads(note.read_text())["url"]
        shown = shell.run("invite", "ana").output
        assert re.search(rf"^link: {re.escape(found)}/join#{CODE}$", shown, re.M)
        assert "answers at" not in shown
        assert shell.run("health").exit_code == 0
        assert (
            "link: http://127.0.0.1:8080/join#"
            in shell.run("invite", "ana", "--url", "http://127.0.0.1:8080").output
        )
        shell.env["STILEPOST_PUBLIC_URL"] = PUBLIC
        assert f"link: {PUBLIC}/join#" in shell.run("invite", "ana").output
        del shell.env["STILEPOST_PUBLIC_URL"]
    finally:
        server.terminate()
        server.wait(60)
    assert not note.exists()
    assert "link: http://127.0.0.1:8437/join#" in shell.run("invite", "ana").output


@pytest.mark.parametrize("text", ["", "{", "[]", '{"url": 5}', '{"url": "file:///etc/passwd"}', "\udcff"])
def test_a_note_that_says_nothing_is_no_address(shell: Shell, text: str) -> None:
    """What a killed server or anybody else left there never breaks a command."""
    (shell.folder / "one.db.listening").write_bytes(text.encode(errors="surrogateescape"))
    assert "link: http://127.0.0.1:8437/join#" in shell.run("invite", "ana").output


def test_a_picture_that_has_no_place_costs_no_code(shell: Shell) -> None:
    """The folder is looked at before the code before it is ended."""
    shell.run("invite", "ana")
    found = shell.run("invite", "ana", "--qr", str(shell.folder / "nowhere" / "a.png"))
    assert (found.exit_code, "nowhere" in found.output) == (1, True)
    assert shell.run("invitations").output.count(" ana ") == 1


def test_a_picture_that_names_a_folder_costs_no_code(shell: Shell) -> None:
    """Refused by the option's name, before anything is made."""
    (shell.folder / "full").mkdir()
    found = shell.run("invite", "ana", "--qr", str(shell.folder / "full"))
    assert found.exit_code == 2
    assert "code:" not in found.output


def test_who_was_asked_who_came_who_was_forgotten(shell: Shell) -> None:
    """The list has no code in it; a withdrawn one can't be withdrawn again."""
    codes = [re.search(CODE, shell.run("invite", "ana").output.split("code: ")[1]) for _ in range(2)]
    listed = shell.run("invitations").output
    assert [line.split()[1:3] for line in listed.splitlines()[:2]] == [["ana", "waits"], ["ana", "withdrawn"]]
    assert "never invited: " in listed
    assert "tomas" in listed
    assert all(code is not None and code[0] not in listed for code in codes)
    first = listed.split()[0]
    assert "withdrawn" in shell.run("invitations", "--revoke", first).output
    again = shell.run("invitations", "--revoke", first)
    assert (again.exit_code, "no unused invitation" in again.output) == (1, True)


@pytest.mark.parametrize("hours", ["0", "-1", "soon"])
def test_a_time_that_is_none_is_refused(shell: Shell, hours: str) -> None:
    """By the option's name."""
    found = shell.run("invite", "ana", "--hours", hours)
    assert (found.exit_code, "--hours" in found.output) == (2, True)
