"""What is said when an input cannot be used."""

import unicodedata


def shown(text: str) -> str:
    """A text for the eye: signs that cannot be seen, or turn the writing around, are marked.

    Examples:
        >>> shown("12\u202e psi")
        '12� psi'
    """
    return "".join("\ufffd" if unicodedata.category(sign)[0] == "C" else sign for sign in text)


class InputError(ValueError):
    """One input cannot be used; the message is a sentence for the reader.

    Args:
        field: Name of the input, as the calculator declares it.
        message: One sentence that starts with the field's label, says what is
            wrong and what will do.
        others: More inputs that were wrong in the same request.
    """

    def __init__(self, field: str, message: str, others: tuple["InputError", ...] = ()) -> None:
        super().__init__(message)
        self.field = field
        self.message = shown(message)
        self.others = others

    def listed(self) -> list[dict[str, str]]:
        """Every wrong input of the request, first to last, as plain text."""
        return [{"field": e.field, "message": e.message} for e in (self, *self.others)]
