"""Making the model of `understanding` from example sentences: a command, not part of the room, and never imported by it.

    python -m server.conversation.training                 train, write model.npz, print how it does by hands left out
    python -m server.conversation.training --quick         train and write model.npz only
    python -m server.conversation.training take FOLDER     take in sentences of new hands (FOLDER/<hand>/<language>/…)

Needs scikit-learn, which nothing else here does.
"""
