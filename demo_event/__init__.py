"""An invented race to try everything on: its route, its event file, its story, and what plays them."""
