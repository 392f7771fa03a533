"""The course of a lesson: gas by kind of work, banks and gauges from hour to hour."""

from calc.declare import Picture, Table
from calc.show.drawings.chart import Line, line_chart
from calc.show.scales import scale
from calc.trade.gas.banks import Bank
from calc.trade.gas.work import Lesson

POINTS = 12


def by_kind(lesson: Lesson, rules: str) -> Table:
    """Gas of a week by kind of work, what is let out, and all that leaves the cylinders."""
    gas = scale("contents", rules)
    rows = [
        (
            kind.name, f"{kind.benches:.0f}", f"{kind.time / 3600:.3g} h",
            gas.text(kind.week("fuel")), gas.text(kind.week("oxygen")),
        )
        for kind in lesson.kinds
    ]  # fmt: skip
    out = lesson.let_out * lesson.sessions
    rows.append(("Let out", f"{lesson.torches:.0f}", "", gas.text(out), gas.text(out)))
    rows.append(
        ("Leaves the cylinders", "", "", gas.text(lesson.week("fuel")), gas.text(lesson.week("oxygen")))
    )
    return Table(
        f"Gas of a week by kind of work, {gas.name}",
        ("Work", "Benches", "Time", "Fuel gas", "Oxygen"),
        tuple(rows),
    )


def course(lesson: Lesson, banks: dict[str, Bank], rules: str) -> tuple[Table, tuple[Picture, ...]]:
    """Contents and gauge of each bank through one lesson from full, as table and charts."""
    gas, gauge = scale("contents", rules), scale("gauge", rules)
    rows, left, reads = [], {"fuel": [], "oxygen": []}, {"fuel": [], "oxygen": []}  # type: ignore[var-annotated]
    for point in range(POINTS + 1):
        time = lesson.length * point / POINTS
        cells = [f"{time / 60:.0f} min"]
        for name, bank in banks.items():
            contents, changes = bank.contents(lesson.used(name, time))
            reading = bank.gauge(contents)
            left[name].append((time / 60, 100 * contents / (bank.count * bank.full)))
            reads[name].append((time / 60, gauge.number(reading)))
            mark = f", changed {changes} ×" if changes else ""
            cells += [f"{gas.text(contents)}{mark}", gauge.text(reading)]
        rows.append(tuple(cells))
    shown = Table(
        "A day with one lesson, from full banks",
        ("After", f"Fuel bank, {gas.name}", f"its gauge, {gauge.name}", f"Oxygen bank, {gas.name}", f"its gauge, {gauge.name}"),
        tuple(rows),
        "Gauges at rest; while gas is drawn acetylene reads lower.",
    )  # fmt: skip
    words = {"fuel": "Fuel gas", "oxygen": "Oxygen"}
    pictures = [
        _picture(
            "Gas left through the lesson", "The bank whose line falls faster is the one to watch.", "Left, % of full",
            [Line(words[name], tuple(left[name])) for name in banks],
        )
    ]  # fmt: skip
    for name in banks:
        title = f"{words[name]} gauge through the lesson"
        sentence = (
            "Its reading shows the contents nearly as a straight line."
            if name == "oxygen"
            else "Its reading is a poor sign of the contents: weigh the cylinders."
        )
        pictures.append(
            _picture(title, sentence, f"Gauge, {gauge.name}", [Line(words[name], tuple(reads[name]))])
        )
    return shown, tuple(pictures)


def _picture(title: str, sentence: str, upward: str, lines: list[Line]) -> Picture:
    return Picture(
        line_chart(title=title, sentence=sentence, x_label="Lesson, min", y_label=upward, lines=lines),
        title,
        sentence,
    )
