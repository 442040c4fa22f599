"""The desk: a person's sentence in, the server asked, a reply out, over any channel."""
