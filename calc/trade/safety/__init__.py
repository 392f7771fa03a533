"""What keeps people from harm: the gate before heating, fumes, shades, distances, storage, inspections."""
