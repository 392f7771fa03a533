"""One answer: figures, cautions, working and tables, the same in Python, on the command line and in a page."""
