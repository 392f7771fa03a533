"""The flame: its bands, its heat, what it looks like, and other fuels beside acetylene."""
