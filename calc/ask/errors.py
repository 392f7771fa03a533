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
        label: Its label, with which the sentence begins; empty where the reason is a whole sentence.
        reason: What is wrong and what will do; its full stop is added where it has none.
        others: More inputs that were wrong in the same request.

    Examples:
        >>> InputError("flow", "Flow", "this hose cannot pass so much; give less flow").message
        'Flow: this hose cannot pass so much; give less flow.'
    """

    def __init__(
        self, field: str, label: str, reason: str, *, others: tuple["InputError", ...] = ()
    ) -> None:
        self.field = field
        self.label = label
        self.reason = reason if reason.endswith(".") else f"{reason}."
        self.message = shown(f"{label}: {self.reason}" if label else self.reason)
        self.others = others
        super().__init__(self.message)

    def listed(self) -> list[dict[str, str]]:
        """Every wrong input of the request, first to last, as plain text."""
        return [{"field": e.field, "message": e.message} for e in (self, *self.others)]
