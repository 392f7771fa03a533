"""Fit the real-gas table to CoolProp's reference equations, and write it.

Run it as `python -m tests.reference.fit_real_gas` after a change of range, form
or library; the tests then hold the written table against CoolProp on other points.
"""

import csv
from pathlib import Path
from typing import Any

import numpy as np
from CoolProp.CoolProp import PropsSI
from scipy.linalg import lstsq

from calc.formulas.gas.real_gas import COLDEST, DENSITY_SCALE, HIGHEST, HOTTEST, WARM
from calc.values.quantities import GAS_CONSTANT

TARGET = Path(__file__).parents[2] / "calc" / "data" / "real-gas-benchbook-2026.csv"
HEADINGS = ["gas", "density_power [1]", "warmth_power [1]", "coefficient [1]", "source", "how_sure"]
LENGTHS = (4, 3, 3, 2, 2)
"""Powers of temperature kept with the first, second, ... power of density."""


def fit(gas: str, rounds: int = 200) -> tuple[list[tuple[int, int]], Any, float]:
    """Coefficients whose worst error at given pressure and temperature is smallest.

    Least squares on points drawn close at both ends of the range, weighted again
    each round by where the error is largest (Lawson's method).
    """
    ends, half = (HOTTEST + COLDEST) / 2, (HOTTEST - COLDEST) / 2
    warmth = ends + half * np.cos(np.linspace(0, np.pi, 25))
    squeeze = np.concatenate([np.geomspace(2e4, 2e6, 10), np.linspace(2.5e6, 1.01 * HIGHEST, 60)])
    temperature, pressure = (grid.ravel() for grid in np.meshgrid(warmth, squeeze))
    state = ("T", temperature, "P", pressure, gas)
    density = PropsSI("Dmolar", *state)
    # an error of Z at given density is seen smaller where the gas is hard to squeeze
    stiffness = PropsSI("d(P)/d(Dmolar)|T", *state) * density / pressure
    z = pressure / (density * GAS_CONSTANT * temperature)
    terms = [(i + 1, j) for i, count in enumerate(LENGTHS) for j in range(count)]
    x, tau = density / DENSITY_SCALE, WARM / temperature - 1
    columns = np.array([x**i * tau**j for i, j in terms]).T / (z * stiffness)[:, None]
    wanted = (z - 1) / (z * stiffness)
    weight, best, worst = np.ones(len(wanted)), None, np.inf
    for _ in range(rounds):
        root = np.sqrt(weight)
        found = lstsq(columns * root[:, None], wanted * root)[0]
        error = np.abs(columns @ found - wanted)
        if error.max() < worst:
            best, worst = found, error.max()
        weight *= error / error.max() + 1e-3
        weight /= weight.sum()
    return terms, best, worst


def main() -> None:
    rows: list[list[object]] = []
    for gas in ("oxygen", "hydrogen", "methane"):
        terms, found, worst = fit(gas)
        print(f"{gas}: worst error {100 * worst:.4f} %")
        rows += [
            [gas, i, j, f"{c:.8g}", "coolprop-8 fitted to its density of the gas", "computed"]
            for (i, j), c in zip(terms, found, strict=True)
        ]
    with TARGET.open("w", newline="", encoding="utf-8") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(HEADINGS)
        writer.writerows(rows)


if __name__ == "__main__":
    main()
