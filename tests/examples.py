"""How many examples a property test tries: where it takes more than a few seconds a machine tries a third, always the same
ones; `--hypothesis-profile=people` tries all."""

from hypothesis import settings


def examples(all_of_them: int) -> int:
    """`max_examples` for such a test."""
    return all_of_them if settings.get_current_profile_name() == "people" else all_of_them // 3
