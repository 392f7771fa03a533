"""Written questions to test with, beside those that are kept."""

from types import SimpleNamespace

ROWS = tuple(
    SimpleNamespace(
        id=name, topic=topic, rules=rules, question=question, right=right, wrong_1=wrongs[0], wrong_2=wrongs[1],
        wrong_3=wrongs[2], because=because, page="before/why-acetylene-is-different.md", source=source, how_sure="read",
    )
    for name, topic, rules, question, right, wrongs, because, source in (
        ("limit", "Acetylene", "", "What is the most that an acetylene delivery gauge may show?", "{acetylene-limit}",
         ("30 psi (207 kPa)", "what the flame needs: {no limit} = ~none", "250 psi (1,724 kPa)"),
         "Above {acetylene-limit} acetylene can explode by itself, without air.", "cfr1910-253 (a)(2)"),
        ("oil", "Oxygen", "", "A fitting for oxygen is stiff. What do you put on it?", "Nothing: no oil, no grease",
         ("A drop of oil", "Grease", "Soap & <b>water</b>"), "Oil burns violently in oxygen.", "cfr1910-253 (b)(5)(i)"),
        ("watch", "Fire", "us", "How long does the law of general industry ask you to watch?", "At least half an hour",
         ("Until the metal is black", "Five minutes", ""), "A fire can start long after the flame.", "cfr1910-252 (a)(2)(iii)(B)"),
    )
)  # fmt: skip
"""Three real questions, one of them of one rule set only; with signs that mean something in the files."""
