"""The kinds of work that the job sheet puts together, one file each."""
