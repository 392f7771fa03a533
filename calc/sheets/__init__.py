"""Parts of a sheet: figures that several calculators put together in the same way.

A sheet may ask calculators, and calculators use sheets: all calculators are loaded
first, so that any of these modules can be imported by itself.
"""

import calc.calculators  # noqa: F401
