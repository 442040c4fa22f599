"""The ways of reaching people, one file each; `base` says what a channel is and lists them all.

In: raw updates of a channel, deliveries owed. Out: `Incoming`s for the desk, `Outcome`s for the outbox.
A channel never imports the journal, the forecast or the watch, and words nothing itself.
"""
