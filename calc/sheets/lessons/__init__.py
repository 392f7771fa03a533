"""What a class does: the exercises of the ladder, and what an evening of them takes."""
