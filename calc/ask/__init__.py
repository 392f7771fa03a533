"""What a reader types, turned into the inputs of a calculator or into a sentence that says what is wrong."""
