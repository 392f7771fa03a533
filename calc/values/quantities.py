"""What a float is: one name for each quantity, with the SI unit it is carried in.

Formulas take and return plain floats. Their signatures say the quantity with
these names, and a test runs every closed-form formula on real quantities to see
that the declared unit comes out.

Two words keep pressures apart: `gauge` is what an instrument shows, `pressure`
is absolute. The atmosphere is added in one line, in `formulas/gas/pressures.py`.
"""

from dataclasses import dataclass
from typing import Annotated


@dataclass(frozen=True, slots=True)
class Unit:
    """The SI unit that a float is carried in, as pint spells it."""

    name: str


Ratio = Annotated[float, Unit("dimensionless")]
Length = Annotated[float, Unit("m")]
Area = Annotated[float, Unit("m**2")]
Volume = Annotated[float, Unit("m**3")]
FreeGas = Annotated[float, Unit("m**3")]
"""Gas counted at 15 °C and 1 atm, where it counts as ideal."""
FreeGasFlow = Annotated[float, Unit("m**3/s")]
"""Flow of gas counted at 15 °C and 1 atm."""
VolumeFlow = Annotated[float, Unit("m**3/s")]
Mass = Annotated[float, Unit("kg")]
MassFlow = Annotated[float, Unit("kg/s")]
Amount = Annotated[float, Unit("mol")]
MolarMass = Annotated[float, Unit("kg/mol")]
Density = Annotated[float, Unit("kg/m**3")]
SpecificVolume = Annotated[float, Unit("m**3/kg")]
Pressure = Annotated[float, Unit("Pa")]
"""Absolute pressure."""
Gauge = Annotated[float, Unit("Pa")]
"""Pressure above the atmosphere, as an instrument shows it."""
Temperature = Annotated[float, Unit("K")]
TemperatureRise = Annotated[float, Unit("K")]
Time = Annotated[float, Unit("s")]
Speed = Annotated[float, Unit("m/s")]
Energy = Annotated[float, Unit("J")]
Power = Annotated[float, Unit("W")]
PowerDensity = Annotated[float, Unit("W/m**2")]
SpecificEnergy = Annotated[float, Unit("J/kg")]
MolarEnergy = Annotated[float, Unit("J/mol")]
HeatCapacity = Annotated[float, Unit("J/(kg*K)")]
MolarHeatCapacity = Annotated[float, Unit("J/(mol*K)")]
Conductivity = Annotated[float, Unit("W/(m*K)")]
HeatTransfer = Annotated[float, Unit("W/(m**2*K)")]
Diffusivity = Annotated[float, Unit("m**2/s")]
Viscosity = Annotated[float, Unit("Pa*s")]
Stress = Annotated[float, Unit("Pa")]
Angle = Annotated[float, Unit("rad")]
Expansion = Annotated[float, Unit("1/K")]
"""Growth for each degree, as a share."""

ATMOSPHERE: Pressure = 101325.0
FIFTEEN_CELSIUS: Temperature = 288.15
SEVENTY_FAHRENHEIT: Temperature = 294.2611111111111
GAS_CONSTANT: Annotated[float, Unit("J/(mol*K)")] = 8.31446261815324
