"""The room that makes every word of a conversation: a message, what its sender may know and what was spoken of before become
a reply and the actions to take.

In: an `Incoming` of any channel, a `Snapshot`, a `Memory`. Out: a `Reply`; on the way, `Action`s that whoever drives the
coroutine carries out. Pure: it imports no network, no database, no clock, and waits for nothing but those outcomes.
"""
