"""The right answers of the licence, against what the publication says."""

import pytest

from calc.data.texts import filled_text
from calc.practice.licence import asked

ROWS = [
    ("29 CFR 1910.253(a)(2)", "read", "limit-us", "us", "right", "15 psi"),
    ("ISO 3821:2019 scope, 0.15 MPa", "read", "limit-iso", "iso", "right", "1.5 bar"),
    ("ISO 3821:2019 scope, 0.15 MPa", "read", "limit-uk", "uk", "right", "1.5 bar"),
    ("29 CFR 1910.253(b)(5)(iii)(K), preferably", "read", "acetylene-open", "us", "right", "3/4 turn"),
    ("29 CFR 1910.253(b)(5)(iii)(K), at most", "read", "acetylene-open", "us", "right", "1 1/2 turns"),
    ("NAVEDTRA 14250 ch. 4", "read", "lay-down", "us", "right", "2 h"),
    ("CGA G-1, with pauses", "memory", "draw", "iso", "right", "1/10"),
    ("CGA G-1, without", "memory", "draw", "iso", "because", "1/15"),
    ("29 CFR 1910.252(a)(2)(vii)", "read", "clear-us", "us", "right", "35 ft"),
    ("DGUV 100-500 ch. 2.26 annex 2, cutting to 3 m high", "read", "clear-iso", "iso", "right", "10 m"),
    ("29 CFR 1910.253(b)(4)(iii), distance", "read", "store", "us", "right", "20 ft"),
    ("29 CFR 1910.253(b)(4)(iii), wall", "read", "store", "us", "because", "5 ft"),
    ("29 CFR 1910.146(b)", "read", "enriched", "us", "because", "23.5 %"),
    ("UK tactical guidance H2.2.0", "read", "far", "uk", "right", "200 m"),
    ("NFPA 51B-2019", "read-m", "watch-us", "us", "right", "60 min"),
    ("US Army OD0017", "read", "limit-why", "us", "because", "29.4 psi"),
    ("a Finnish guide p. 77", "read", "purge", "us", "because", "10 to 30 s"),
    ("NAVEDTRA 14265", "read", "bleed", "us", "because", "5 to 15 s"),
    ("WAC 296-307-48051(2)", "read", "hose-us", "us", "right", "green"),
    ("ISO 3821:2019", "memory", "hose-iso", "iso", "right", "blue"),
    ("29 CFR 1910.252(c)(6) and textbooks, 4 to 12 h", "memory", "zinc", "us", "because", "4 to 12 h"),
    ("NAVEDTRA 14250, oxygen first at a squeal", "read", "squeal", "us", "right", "oxygen valve of the torch"),
    ("US Army OD0017 14, fuel first at shut-down", "read", "off", "us", "right", "fuel valve of the torch"),
    ("29 CFR 1910.253(b)(5)(iii)(L)", "read", "key", "us", "right", "On the valve"),
    ("29 CFR 1926.350(g)(3)", "read", "lighter", "us", "right", "friction lighter"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("question", "rules", "where", "printed"),
    [
        pytest.param(*row[2:], id=f"{row[2]} {row[3]} {row[4]} -> {row[5]} [{row[0]}; {row[1]}]")
        for row in ROWS
    ],
)
def test_the_answer_is_what_is_printed(question: str, rules: str, where: str, printed: str) -> None:
    (one,) = (each for each in asked(rules) if each.id == question)
    options = [filled_text(text, rules) for text in one.options]
    said = options.pop(one.right) if where == "right" else filled_text(one.because, rules)
    assert printed in said
    if where == "right":
        assert all(printed not in other for other in options)
