"""The set-up: seven steps in which a race is set up by touch, over a draft that is an event file all along.

In: the cookie of whoever opened the organiser's link, forms. Out: pages; the draft in its folder, changed by
`server.drafting`; at the end a version in the journal and an invitation a person. Every mistake is the check's own.
"""
