"""The tests: a folder for each room, the whole job in `whole`, timings in `bench`.

A package, since a library among the tests' own installs a `tests` of its own, which `python -m` would find first.
"""
