"""Fits every constant of the forecast on folders of split times: `python -m tests.research.fit FOLDER`.

A command, not part of the pure room: it reads tables, writes `server/forecast/constants.json` and prints scores.
"""
