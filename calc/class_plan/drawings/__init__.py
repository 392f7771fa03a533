"""How the exercises of a class are held and done, as drawings."""
