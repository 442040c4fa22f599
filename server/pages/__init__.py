"""Web pages: the board, joining, the chat, and the pictures they show.

In: a person's cookie, the picture of an event, answers of `server.api`, words of `server.conversation.telling`. Out: HTML
made on the server, which a small script keeps fresh. Nothing is fetched from anywhere else. Never imports
telegram, never writes SQL; decides nothing about a race.
"""
