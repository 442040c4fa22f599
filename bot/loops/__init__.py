"""What a channel's worker does all the time: listening, answering, delivering, checking. One loop a file.

In: a channel, the server's API, the desk. Out: nothing but calls to these. It may never import the journal.
"""
