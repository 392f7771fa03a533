"""An evening with a class: who does what when, what it takes, and the papers for it."""
