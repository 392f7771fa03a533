"""Every figure that leans to one side without being a limit: the side is reasoned here, not read from the code.

Needed, used, spent, lost or dangerous: up, so that what is bought is enough and no danger is told too small.
Had, left, or a time until something goes wrong: down, so that no one counts on more than there is.
"""


from calc.declare.catalogue import calculators
from tests.properties.test_rounding_of_limits import DOWN, UP

ENOUGH = """
    bleed-down: bleed_fuel_time bleed_oxygen_time
    braze-joint: overlap filler_volume filler_length filler_mass
    class-plan: sessions_needed hot_benches rounds monitoring pieces sheets plates rods rod_length rod_mass fuel_plan
        oxygen_plan fuel_peak oxygen_peak fuel_in_use oxygen_in_use fuel_reserve oxygen_reserve fuel_cylinders
        oxygen_cylinders
    cool-down: wrapped_time
    cut-plate: oxygen_gauge cut_time oxygen_used fuel_used
    draw-limit: cylinders full_cylinders
    fire-watch: monitoring until
    fuel-compare: fuel_gas fuel_weight oxygen_from_cylinder
    gas-log: fuel_factor oxygen_factor next_factor
    hours-left: fuel_flow oxygen_flow oxygen_for_fuel
    job-sheet: oxygen_gauge purge_fuel_time purge_oxygen_time overlap rod_length rods filler_mass time_each torch_time
        oxygen_used fuel_used contents_asked
    joint-prep: torch_time
    may-i-heat: vent_hole
    oxygen-rich: air_needed
    preheat: arc_preheat
    purge-time: purge_fuel_time purge_oxygen_time
    regulator-mark: mark
    rod-need: rods rod_length rod_mass
    solder-tube: filler_length_joint filler_length filler_mass flux_mass
    storage-check: separation wall_height wall_rating from_combustibles
    supply-plan: fuel_week oxygen_week fuel_peak oxygen_peak fuel_in_use oxygen_in_use fuel_cylinders_week
        oxygen_cylinders_week fuel_reserve oxygen_reserve separation
    tip-choice: oxygen_gauge contents_asked
    ventilation: air_flow hood_flow hood_duct leak_air_tenth
    warm-up: time fuel_used
"""
"""Up: what is needed; less would be too little."""

SPENT = """
    bleed-down: fuel_trapped oxygen_trapped
    class-plan: sheet_waste plate_waste coupon_cost learner_cost session_cost term_cost
    fuel-compare: cost
    hose-drop: drop
    purge-time: fuel_vented oxygen_vented
    regulator-mark: drop
    rod-need: waste
    supply-plan: vented_week cost_week liquid_cost_week
"""
"""Up: what is let out, lost or paid; less would be a promise."""

DANGEROUS = """
    bleed-down: room_share
    class-plan: draw_share one_torch_share
    cylinder-weather: gauge_then
    draw-limit: draw_share chill
    far-side: far_temperature
    hot-work-zone: spark_reach opposite_reach upward_reach downward_reach
    hours-left: draw_share
    job-sheet: draw_share
    leak-test: leak_rate
    oxygen-rich: oxygen_then oxygen_at_last
    storage-check: share_of_limit
    supply-plan: draw_share
"""
"""Up: what does harm; less would make it look small."""

HAD = """
    acetylene-left: share_of_full share_by_gauge
    class-plan: left_over
    hose-drop: outlet_gauge
    hours-left: work_hours
    liquid-fuel-left: gas_left share_of_full draw_kept
    oxygen-left: share_of_full
    supply-plan: fuel_left_lesson oxygen_left_lesson
"""
"""Down: what there is; more would be missing when it is needed."""

SOONER = """
    far-side: char_time
    oxygen-rich: time_to_22 time_to_23_5
    ventilation: spent_air_time leak_time_tenth
"""
"""Down: time until something goes wrong."""

GENTLE = """
    cut-plate: fuel_gauge
    job-sheet: fuel_gauge
    tip-choice: fuel_gauge
    leak-test: cooling_drop
"""
"""Down: fuel gas has an upper limit of pressure; what cooling explains of a fall hides a leak."""


def _reasoned() -> dict[tuple[str, str], str]:
    ways = {}
    for text, way in ((ENOUGH, "up"), (SPENT, "up"), (DANGEROUS, "up"), (HAD, "down"), (SOONER, "down"), (GENTLE, "down")):
        calculator = ""
        for word in text.split():
            if word.endswith(":"):
                calculator = word[:-1]
            else:
                assert (calculator, word) not in ways, f"{calculator}: {word} stands twice"
                ways[calculator, word] = way
    return ways


def test_every_amount_leans_to_the_side_that_is_reasoned_here() -> None:
    limits = {(calculator, name) for table in (DOWN, UP) for calculator, names in table.items() for name in names}
    declared = {
        (each.id, name): shown.toward
        for each in calculators().values()
        for name, shown in each.results.items()
        if shown.toward != "nearest" and (each.id, name) not in limits
    }
    reasoned = _reasoned()
    turned = {key: way for key, way in declared.items() if reasoned.get(key) != way}
    assert not turned, "another side than the one reasoned here, or none is reasoned"
    assert not reasoned.keys() - declared.keys(), "these no longer lean to a side"
