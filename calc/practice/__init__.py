"""Practice: problems made from the calculators, written questions, flames to name, and their files."""
