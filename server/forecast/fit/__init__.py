"""Fits every constant of the forecast on folders of split times: `python -m server.forecast.fit FOLDER`.

A command, not part of the pure room: it reads tables, writes `constants.py` and prints scores.
"""
