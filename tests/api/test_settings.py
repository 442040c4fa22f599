"""Settings: one table; what is unknown or of the wrong type stops the start and says so."""

from __future__ import annotations

from pathlib import Path

import pytest

from server.settings import PREFIX, Settings, SettingsError, read_settings, table


def test_every_setting_has_a_sentence_and_its_default_holds() -> None:
    """No row without a sentence; the defaults pass their own checks; variables are named after the settings."""
    rows = table()
    assert len(rows) == len({r.name for r in rows})
    assert all(r.says.endswith(".") and r.env == PREFIX + r.name.upper() for r in rows)
    assert read_settings({}) == Settings()


@pytest.mark.parametrize(
    ("name", "value", "says"),
    [
        ("PROT", "1", "Did you mean 'port'"),
        ("COLOUR", "red", "there is no setting 'colour'"),
        ("PORT", "many", "not a whole number"),
        ("PORT", "70000", "not between 0 and 65535"),
        ("BEHIND_PROXY", "perhaps", "not true or false"),
        ("TICK_SECONDS_MAX", "soon", "not a number"),
        ("TICK_SECONDS_MAX", "nan", "not between"),
        ("SHUTDOWN_SECONDS", "0", "not between"),
        ("LOG_LEVEL", "loud", "not one of debug"),
        ("LANGUAGE", "xx", "not one of de, en, fr"),
        ("SMTP_TLS", "maybe", "not one of starttls"),
        ("MAX_BODY_BYTES", "-1", "not between"),
    ],
)
def test_a_wrong_setting_stops_the_start(name: str, value: str, says: str) -> None:
    """Each names the setting, what is wrong, and what to do."""
    with pytest.raises(SettingsError, match=says):
        read_settings({PREFIX + name: value})


def test_the_environment_goes_before_the_file(tmp_path: Path) -> None:
    """A file gives values, the environment overrides them; other variables are not ours."""
    file = tmp_path / "stilepost.toml"
    file.write_text('port = 9000\nhost = "0.0.0.0"\ntick_seconds_max = 5\n', encoding="utf-8")
    read = read_settings({PREFIX + "PORT": "9001", "PATH": "/bin"}, file)
    assert (read.port, read.host, read.tick_seconds_max) == (9001, "0.0.0.0", 5.0)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("port = '9000'", "not a whole number"),
        ("port = true", "not a whole number"),
        ("prot = 1", "Did you mean"),
        ("port = ", "not TOML"),
        ("log_json = 1", "not true or false"),
    ],
)
def test_a_wrong_file_stops_the_start(tmp_path: Path, text: str, says: str) -> None:
    """The file is named, and what is wrong in it."""
    file = tmp_path / "stilepost.toml"
    file.write_text(text, encoding="utf-8")
    with pytest.raises(SettingsError, match=says) as found:
        read_settings({}, file)
    assert "stilepost.toml" in str(found.value)


def test_a_missing_file_is_said(tmp_path: Path) -> None:
    """The path, and which option gave it."""
    with pytest.raises(SettingsError, match="--settings"):
        read_settings({}, tmp_path / "nothing.toml")


def test_a_secret_does_not_show() -> None:
    """Neither by itself nor in the settings' own repr."""
    read = read_settings({PREFIX + "TELEGRAM_TOKEN": "123:abc"})
    assert read.telegram_token.get_secret_value() == "123:abc"
    assert "123:abc" not in f"{read!r} {read.telegram_token} {read.telegram_token!r}"
