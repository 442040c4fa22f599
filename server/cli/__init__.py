"""The command line: one command, `stilepost`, whose subcommands explain themselves.

In: files, settings, what is typed. Out: what a person reads, and exit code 0, 1 (a mistake, told with what,
where and what to do) or 2 (wrong use). It opens the journal and calls the same rooms as the server.
"""

from server.cli.main import main

__all__ = ["main"]
