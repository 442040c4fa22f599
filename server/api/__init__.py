"""The server's HTTP door: who may do what, request and reply models, handlers of a few lines each.

In: requests (JSON, GeoJSON, or query parameters from a tracker) with a token. Out: one reply envelope and
one error envelope. Handlers ask 'may you' before 'is it there', hand values to the pure rooms and entries
to the journal; they decide nothing about a race themselves. Never imports telegram, never writes SQL,
never reads the clock except through `server.clock`.
"""
