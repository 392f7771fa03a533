"""What the gate asks about a part, its place and the people near it: every option by id."""

from collections.abc import Mapping

from calc.trade.safety.fumes import options

PROCESSES = {
    "welding": "Welding",
    "braze-welding": "Braze welding",
    "brazing": "Brazing",
    "soldering": "Soldering",
    "cutting": "Cutting",
    "heating": "Heating, bending, straightening",
}
PARTS = {
    "open-sheet": "Open sheet, plate or bar",
    "vented-hollow": "Hollow, open: air blows through",
    "closed-hollow": "Hollow, closed, never a container",
    "container": "Drum, tank, can, any vessel",
    "tire": "Wheel with its tire, flat too",
    "strut": "Strut, shock, hydraulic cylinder",
    "panel": "Metal wall, ceiling or roof with a covering or core that burns",
    "unknown": "I do not know",
}
HOLLOW = ("vented-hollow", "closed-hollow")
HELD = {
    "never": "Nothing, ever: a frame, a leg, a rail",
    "water-drained": "Water only: drained, both ends open",
    "water": "Water only: still wet, or joined to the rest",
    "exhaust": "Exhaust gas, on the vehicle or off it, blown through or not",
    "frame-bare": "Frame or sill of a vehicle: cleared, you can see through it",
    "frame": "Frame, sill or door of a vehicle: wax, foam or cables in it",
    "fuel": "Fuel, oil or solvent",
    "gas": "Gas: fuel gas, oxygen or any other",
    "hydraulic": "Brake or hydraulic fluid",
    "refrigerant": "Refrigerant",
    "drain": "Waste water or sewage",
    "chemical": "Grease, dust, powder or a chemical",
    "unknown": "I do not know",
}
METALS = {
    "low-carbon-steel": "Low-carbon (mild) steel",
    "medium-carbon-steel": "Medium-carbon steel",
    "low-alloy-steel": "Low-alloy steel",
    "stainless-steel": "Stainless steel",
    "cast-iron": "Cast iron",
    "copper": "Copper",
    "brass": "Brass",
    "bronze": "Bronze",
    "beryllium-copper": "Beryllium copper",
    "aluminium": "Aluminium",
    "nickel": "Nickel",
    "lead": "Lead",
    "zinc": "Zinc",
    "magnesium": "Magnesium alloy",
    "titanium": "Titanium",
    "unknown": "I do not know",
}
GALVANISED = "galvanised-steel"
"""Asked as a metal by other pages; here it is steel with zinc on it, whatever else is."""
COATINGS = options("coating") | {"paint": "Other paint, with none of these"}
STRIPPABLE = ("zinc", "chromium", "lead-paint", "oil", "paint")
"""Coatings that may be taken off before any heat; the others are refused."""
STRIPPED = {"no": "No, or not so far", "yes": "Yes, on each side of the heat"}
DUTIES = {
    "none": "Nothing depends on it, or it is scrap",
    "carries": "It carries people or loads: frame, axle, ladder, lifting gear, hitch, steering, brake",
    "under-load": "It holds something up, or is stretched or bent, right now",
    "hardened": "It is hardened: a spring, a graded bolt, a tool, a gear",
    "pressure": "It works under pressure: boiler, pressure pipe, gas bottle",
    "unknown": "I do not know",
}
SITES = {
    "shop": "A shop or bench that is set up for hot work",
    "building": "Another part of a building",
    "wall": "At a wall, ceiling or floor of a building",
    "roof": "On a roof",
    "outdoors": "Outdoors, away from buildings and dry grass",
    "vehicle": "On, in or under a vehicle",
    "small-space": "In a tank, pit, hold or other small space",
}
INSPECTED = ("building", "wall", "roof")
"""Sites where the person responsible inspects and allows the flame."""
ALSO = {"none": "Nowhere else"} | SITES
"""A second place, such as a pit under a vehicle or a van that is worked in."""
OPEN_AIR = ("outdoors", "roof")
ROOMED = ("large", "fan")
"""Air of a room, which there is none of outdoors."""
YES_NO = {"no": "No, or I do not know", "yes": "Yes"}
AROUND = {
    "none": "Looked: none of these",
    "duct": "A duct or conveyor that can carry sparks",
    "sprinklers-off": "Sprinklers of the building are off",
    "vapor": "Vapor, gas or dust that burns is in the air",
    "stock": "Much paper, cotton, straw or foam stored open",
    "not-looked": "Not looked yet",
}
BEHIND = {
    "clear": "Looked: nothing that burns",
    "movable": "Burns: can move or shield it",
    "not-looked": "Not looked yet",
    "fixed": "Burns: cannot move or shield it",
}
PEOPLE = {
    "protected": "All of them screened, or protected as I am",
    "unprotected": "People without goggles or without protection from fume",
    "alone": "Nobody within call",
}
AIR = {
    "hood": "A hood at the work",
    "air-line": "An air-line respirator",
    "respirator": "A respirator for fume",
    "fan": "A fan that draws the room's air out",
    "large": "Nothing, in a hall that is large and high: see the hint",
    "open": "None of these",
}
STILL = {"water-drained": "water", "frame-bare": "frame"}
"""What a hollow counts as while it is still closed, whatever was answered."""
SEVERAL = ("coating", "second_coating", "third_coating")
"""Inputs for what is on the part, one coating each."""
OPTIONS: dict[str, Mapping[str, str]] = {
    "process": PROCESSES,
    "part": PARTS,
    "held": HELD,
    "duty": DUTIES,
    "place": SITES,
    "permit": YES_NO,
    "vehicle_ready": YES_NO,
    "around": AROUND,
    "behind": BEHIND,
    "people": PEOPLE,
    "air": AIR,
}
"""Options of each input but metal and coatings."""
