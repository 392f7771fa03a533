"""Rows that were held against public texts say what those texts say, and claim no higher grade.

The figures and words are typed here from the publications, not from our tables. `quality`
is how the text was met: `read` in itself, `read-m` in a copy or a page that repeats it.
"""

import csv
from importlib.resources import files
from pathlib import Path
from typing import NamedTuple

import pytest

from calc.data.tables import graded, sources
from calc.data.tables import table as calc_table

GRADES = ("read", "read-m", "computed", "practice", "memory")


class Held(NamedTuple):
    """One text: the table and the cells that find our row, what it says, where, and how it was met."""

    table: str
    where: dict[str, str]
    says: dict[str, str]
    source: str
    quality: str


def held(table: str, where: str, says: str, source: str, quality: str = "read-m") -> Held:
    """`where` and `says` are `column=text; column=text`; a text that begins with ~ is part of the cell."""

    def cells(text: str) -> dict[str, str]:
        return {
            name.strip(): value.strip()
            for name, _, value in (part.partition("=") for part in text.split(";"))
        }

    return Held(table, cells(where), cells(says), source, quality)


HELD = [
    # Air, gas and fume.
    held("explosion-limits", "gas=acetylene", "number=0.4; words=~against explosions", "30 CFR 75.321(b)(4)"),
    held("explosion-limits", "gas=mps", "number=0.3; words=~against explosions", "30 CFR 75.321(b)(6)"),
    held("explosion-limits", "gas=hydrogen", "number=0.8; words=~against explosions", "30 CFR 75.321(b)(2)"),
    held("explosion-limits", "gas=methane", "number=1", "30 CFR 77.1112(b)"),
    held("exposure-limits", "substance=nitrogen-dioxide; kind=15 min", "number=1; unit=ppm", "NIOSH IDLH, May 1994"),
    held("exposure-limits", "substance=nitrogen-dioxide; kind=8 h", "number=0.2; unit=ppm", "Poisoning & Drug Overdose"),
    held("exposure-limits", "substance=carbon-monoxide; kind=ceiling", "number=200", "NIOSH 1972", "read"),
    held("exposure-limits", "substance=acetylene", "number=2500; unit=ppm", "Haz-Map, agent 19"),
    held("flammable-limits", "gas=propylene", "low=2.0; high=11.1", "IEC 60079-20-1, and three tables"),
    held("flammable-limits", "gas=acetylene", "low=2.3; high=100; lights=305", "IEC 60079-20-1"),
    held("flammable-limits", "gas=propane", "low=1.7; high=10.9; lights=450", "IEC 60079-20-1"),
    held("flammable-limits", "gas=methane", "low=4.4; high=17; lights=600", "IEC 60079-20-1"),
    held("flammable-limits", "gas=hydrogen", "low=4; high=77; lights=560", "IEC 60079-20-1"),
    held("flammable-limits", "gas=butane", "low=1.4; high=9.3; lights=372", "IEC 60079-20-1"),
    held("flammable-limits", "gas=ethylene", "low=2.3; high=36; lights=440", "IEC 60079-20-1"),
    held("fuel-limits", "fuel=propane", "air_low=1.7; air_high=10.9; lights=450", "IEC 60079-20-1"),
    held("fuel-limits", "fuel=acetylene", "air_low=2.3; air_high=100; lights=305", "IEC 60079-20-1; DGUV 209-005: 305 °C"),
    held("heat-marks", "metal=stainless-steel; temperature=427", "words=~rust", "an abstract: 800 to 1500 °F"),
    held("heat-marks", "metal=brass; temperature=907", "words=~zinc boils", "CRC: Zn 1180.15 K"),
    held("fume-hazards", "id=stainless-steel", "substances=~chromium; what=~cancer", "IARC 118", "read"),
    held("fume-hazards", "id=copper; part=metal", "what=~fever", "a hygiene handbook, 4.3"),
    held("fume-hazards", "id=unknown; part=flux", "what=~fluoride", "29 CFR 1910.252(c)(1)(v)(D)"),
    held("fume-hazards", "id=cadmium", "what=~12 to 72 h", "29 CFR 1910.146(b) note; short breath within 1 to 10 h, 1910.1027"),
    held("fume-measures", "substance=lead; place=indoors", "words=~people beside you", "29 CFR 1910.252(c)(7)(iii)"),
    held("fume-measures", "substance=lead; place=outdoors", "words=~people beside you", "29 CFR 1910.252(c)(7)(iii)"),
    held("figures-benchbook-2026", "id=char-limit", "us=171 °F; metric=77 °C", "Babrauskas 2001: from 77 °C upward"),
    # Eyes.
    *(
        held("shades-en169-2002", f"process={process}; up_to={flow}", f"shade={shade}", "DGUV 209-011 6.3, fig. 10")
        for process in ("welding", "brazing")
        for flow, shade in ((70, 4), (200, 5), (800, 6), ("", 7))
    ),
    # Acetylene.
    held("withdrawal-limits", "topic=intermittent", "emptied_in=10", "a note of the trade after CGA G-1"),
    held("disagreements-benchbook-2026", "text=130 kPa (Japan)", "point=acetylene-gauge", "Japan, article 301(1)"),
    held("hose-rules", "about=joining two hoses", "words=~never; rules=any", "DGUV 209-005 9.1.1 no. 5: bits of copper tube", "read"),
    # Hoses and equipment.
    *(
        held("hose-colours", f"rules={rules}; gas={gas}", f"colour={colour}", "DGUV 209-011 4.3 table 2", quality)
        for rules, quality in (("iso", "read"), ("uk", "read-m"))
        for gas, colour in (
            ("oxygen", "blue"), ("acetylene and other fuel", "red"), ("inert gas or air", "black"),
            ("liquefied gas, methylacetylene-propadiene, natural gas, methane", "orange"),
            ("all of these fuels", "red and orange"), ("fuel with flux in it", "red, marked FLUX"),
        )
    ),
    held("fuel-equipment", "fuel=acetylene; rules=iso", "hose=red", "DGUV 209-011 4.3 table 2", "read"),
    held("fuel-equipment", "fuel=hydrogen; rules=iso", "hose=~red", "DGUV 209-011 4.3 table 2", "read"),
    held("fuel-equipment", "fuel=propylene; rules=iso", "hose=~orange", "DGUV Vorschrift 79, section 2"),
    held("fuel-equipment", "fuel=other; rules=iso", "hose=~orange", "DGUV 209-011 4.3 table 2", "read"),
    held("hose-rules", "about=adapters; rules=us", "words=~swapped", "29 CFR 1910.253(e)(6)(i)"),
    held("inspection-checks", "when=unknown; part=Regulators", "words=~its own gas", "29 CFR 1910.253(e)(6)(i)"),
    held("inspection-checks", "when=each-use; part=Arrestors", "words=~check valve", "EM 385-1-1 10.E.07"),
    held("inspection-checks", "part=Coupled acetylene cylinders", "words=~between each cylinder", "29 CFR 1910.253(c)(5)(iii)"),
    held("inspection-checks", "when=unknown; part=All of it together", "words=~solution", "30 CFR 75.1106-5(d)"),
    held("inspection-intervals", "part=arrestors; act=test; rules=any", "months=6; words=~twelve", "a page on AS 4603"),
    held("words-benchbook-2026", "id=check-valve", "means=~flame", "AWS Fact Sheet 28: a check valve alone will not stop one"),
    held("words-benchbook-2026", "id=arrestor", "means=~flame", "AWS Fact Sheet 28"),
    # Fire and storage.
    held("hot-work-measures", "topic=wall-hidden", "words=~sandwich panels", "29 CFR 1910.252(a)(2)(xi): no until"),
    held("hot-work-measures", "source=cfr1910-252 (a)(2)(iv)", "words=~permit", "29 CFR 1910.252(a)(2)(iv): preferably written"),
    held("hot-work-measures", "source=cfr1910-252 (a)(2)(vi)(B)", "words=~sprinklers", "29 CFR 1910.252(a)(2)(vi)(B)"),
    held("fire-watches", "source=uk-insurer-hot-work no. 7-8", "watch=60", "a UK insurer, no. 7-8", "read"),
    held("fire-watches", "source=cfr30-57 57.4660(c)", "watch=60", "30 CFR 57.4660(c): during the first hour"),
    held("storage", "topic=separation; rules=uk", "number=3; unit=m; standing=also", "TWI Job Knowledge 27"),
    held("storage-rules", "source=cfr1917-152 (d)(2)(v)", "words=~before repair", "29 CFR 1917.152(d)(2)(v)"),
    held("lead-limits", "topic=filler; rules=uk", "words=~no lead", "DETR guidance 1999, G2.1"),
    held("cylinder-temperatures", "topic=hottest; rules=us", "number=125; unit=degF", "University of New England"),
    # Brazing and cutting.
    held("brazing-nevers", "family=copper-phosphorus; on=stainless steel", "why=~brittle", "J. Fail. Anal. Prev. 19 (2019) 314"),
    held("brazing-nevers", "family=copper-zinc; on=stainless steel", "why=~melted copper can crack", "IOP 181, 012032"),
    held("brazing-nevers", "family=aluminium-silicon; on=copper", "why=~brittle", "Mat. Sci. Forum 539-543, 4075"),
    held("brazing-nevers", "family=aluminium-silicon; on=low-carbon steel", "why=~brittle", "IBSC 2012: iron aluminides"),
    held("brazing-refusals", "metal=magnesium", "why=~water", "International Magnesium Association", "read"),
    held("cutting-metals", "metal=low-carbon-steel", "cuts=yes; oxide_melts=1377", "pages; CRC: FeO 1650.15 K"),
    held("cutting-metals", "metal=stainless-steel", "cuts=no; oxide_melts=2432", "pages; CRC: Cr2O3 2705.15 K"),
    held("cutting-metals", "metal=aluminium", "cuts=no; oxide_melts=2054", "pages; CRC: Al2O3 2327.15 K"),
    held("cutting-metals", "metal=magnesium", "cuts=no; oxide_melts=2825; why=~water", "CRC: MgO 3098.15 K", "read"),
    held("cutting-metals", "metal=copper", "melts=1085; oxide_melts=1244", "CRC: Cu 1357.77 K, Cu2O 1517.15 K"),
    held("cutting-metals", "metal=lead", "melts=327; oxide_melts=887", "CRC: Pb 600.612 K, PbO 1160.15 K"),
    held("cutting-metals", "metal=zinc", "melts=420; oxide_melts=1974", "CRC: Zn 692.677 K, ZnO 2247.15 K"),
    held("cutting-metals", "metal=titanium", "melts=1670; oxide_melts=1912", "CRC: Ti 1943.15 K, TiO2 2185.15 K"),
    held("tube-services", "id=refrigerant", "taken=no; reason=~poison", "US Army TM 9-4120-380-14, 5.11"),
    # Cautions, and the parts that no flame may touch.
    held("hazards", "id=grass-fire", "avoidance=~dry grass", "Texas A&M Forest Service: care in hot, dry, windy weather, water and an extinguisher at hand"),
    held("hazards", "id=gas-at-home", "hazard=~runs to the lowest room", "Nova Scotia, 1999: settles in a basement; kept from switches and appliances", "read"),
    held("hazards", "id=regulator-creeps", "hazard=~goes on climbing", "University of Delaware: a rise within 5 to 10 minutes, recondition or replace", "read"),
    held("hazards", "id=gauge-lies", "hazard=~off zero", "University of Delaware: not at zero when drained, replace", "read"),
    held("hazards", "id=cut-piece-falls", "consequence=~crush", "OSHA accident 200758159: a strip of 3,400 lb killed who cut it"),
    held("hazards", "id=lit-torch", "avoidance=~Never lay a lit torch down", "TM 1-1500-204-23-8: not left burning when not in use, the flame in sight"),
    held("hazards", "id=tip-hole-cut", "avoidance=~no nail", "NAVEDTRA 14250: no twist drills, nails or rods; straight in and out, not turned"),
    held("hazards", "id=eye-drops", "hazard=~Numbing drops", "a health page: never but for the examination, slows healing, ulcers; a leaflet: no driving"),
    held("hazards", "id=splinters", "avoidance=~Keep goggles on", "WAC 296-155-215: chipping, flying particles, goggles", "read"),
    held("hazards", "id=chisel-chips", "hazard=~mushroomed", "29 CFR 1926.301(c)"),
    held("hazards", "id=slag-blows-back", "hazard=~while it pierces", "NAVFAC P-433: slag blows out and hits the tip unless the torch is raised"),
    held("hazards", "id=magnesium-burns", "hazard=~water makes that fire fiercer", "International Magnesium Association", "read"),
    held("hazards", "id=refrigerant-in-pipe", "hazard=~poison gas", "US Army TM 9-4120-380-14, 5.11: phosgene"),
    held("hazards", "id=tube-carries-gas", "hazard=~may carry fuel gas", "Copper Development Association: gas in copper tube in homes"),
    held("hazards", "id=hose-burns", "avoidance=~never over a shoulder", "US Army OD0017: not over shoulder, round legs or at the waist; kept from slag", "read"),
    held("hazards", "id=hydraulic-fluid", "hazard=~fine mist", "NIOSH FACE 03OR022: oil in a mist lit from a pinhole, burns over 80 %", "read"),
    held("hazards", "id=drain-gas", "hazard=~burns and gas that poisons", "Wisconsin on sewer gas: hydrogen sulfide, methane"),
    held("hazards", "id=weakened-part", "avoidance=~a frame, an axle, a wheel rim", "49 CFR 393.201(d); 29 CFR 1910.177(f)(9), (f)(11)"),
    held("hazards", "id=part-under-load", "consequence=~falls", "MSHA fatality 7 of 2012: the last cut through a support beam", "read"),
    held("hazards", "id=hardened-part", "source=~1000 °F", "29 CFR 1910.184(e)(6)"),
    held("hazards", "id=pressure-part", "hazard=~boiler", "46 CFR 59.01-5(a): no repair without leave"),
    held("hazards", "id=alone", "avoidance=~within call", "30 CFR 56.18020: heard, seen or able to call"),
    held("hazards", "id=unknown-metal", "avoidance=~until it is named", "a textbook of 2013, p. 430: be certain what is cut", "read"),
    held("hazards", "id=oil-smoke", "avoidance=~without chlorinated solvent", "29 CFR 1910.252(c)(11)(ii)"),
    held("gate-reasons", "asked=held; id=drain", "outcome=refused", "Wisconsin on sewer gas"),
    held("gate-reasons", "asked=held; id=hydraulic", "outcome=refused", "NIOSH FACE 03OR022", "read"),
    held("gate-reasons", "asked=metal; id=unknown", "outcome=refused", "a textbook of 2013, p. 430", "read"),
    held("gate-reasons", "asked=duty; id=under-load", "outcome=refused", "MSHA fatality 7 of 2012", "read"),
    held("gate-reasons", "asked=duty; id=pressure", "outcome=refused", "46 CFR 59.01-5(a)"),
    held("gate-reasons", "asked=duty; id=carries", "outcome=refused; who=~its maker", "49 CFR 393.201(d): as the vehicle's maker recommends"),
    held("gate-reasons", "asked=duty; id=hardened", "outcome=refused", "29 CFR 1910.184(e)(6)"),
    held("gate-reasons", "asked=people; id=alone; outcome=first", "hazard=alone", "30 CFR 56.18020"),
    held("gate-reasons", "asked=coating; id=oil; outcome=first", "order=~without chlorinated solvent", "29 CFR 1910.252(c)(11)(ii)"),
    held("inspection-checks", "when=each-use; part=Gauges", "words=~all at zero", "University of Delaware", "read"),
    held("inspection-checks", "when=each-year; source=udel-regulators", "words=~no creep", "University of Delaware", "read"),
    held("inspection-checks", "when=flashback; part=Arrestors", "words=~somebody qualified", "WorkSafe ACT: a competent person inspects, discards or repairs", "read"),
    held("inspection-checks", "when=flashback; part=The cause", "words=~found and put right", "WorkSafe ACT: before it is lit again", "read"),
    held("inspection-checks", "when=unknown; part=Cylinders", "words=~back to a supplier", "University of Wisconsin, River Falls: contents unknown, call the vendor", "read"),
    held("storage-rules", "source=army-tc9-237-1993 ch. 2, sec. II h", "words=~first in", "TC 9-237: full and empty apart, empty ones marked, used in the order received"),
    held("storage-rules", "topic=home; source=nova-scotia-1999", "words=~heavier than air", "Nova Scotia, 1999: outdoors, never in a basement", "read"),
    held("hazards", "id=rosin-smoke", "hazard=~asthma", "IET 16", "read"),
    held("hazards", "id=heavy-gas", "hazard=~heavier than air", "Nova Scotia, 1999: one and a half times heavier than air", "read"),
    # What heat does; what a cut does; what fume holds; what to do.
    held("heat-marks", "metal=low-carbon-steel; temperature=727", "words=~harden", "eutectoid at 723 to 727 °C, three pages"),
    held("heat-marks", "metal=cast-iron; temperature=727", "words=~hard and brittle", "eutectoid at 723 to 738 °C, a foundry lexicon"),
    held("heat-marks", "metal=low-carbon-steel; temperature=600", "words=glows a very dark red", "Chapman: very dark red from 594 to 704 °C"),
    held("heat-marks", "metal=cast-iron; temperature=600", "words=glows a very dark red", "Chapman: very dark red from 594 to 704 °C"),
    held("heat-marks", "metal=copper; temperature=700", "words=glows dark red", "dark red at 1290 °F, 699 °C; cherry only at 1650 °F", "read"),
    *(
        held("heat-marks", f"metal={metal}; temperature={mark}", "words=~without any glow", "Draper: no glow below 525 °C; burns in 1 s from 68 °C")
        for metal, mark in (("cast-iron", 250), ("copper", 200), ("brass", 200), ("aluminium", 100))
    ),
    held("heat-marks", "metal=brass; temperature=450", "words=~soft", "a laboratory: new grains from 275 to 375 °C, grown at 400 °C", "read"),
    held("cutting-metals", "metal=medium-carbon-steel", "cuts=warm; why=~crack", "AWS, table 3.6: above 0.25 % carbon preheated against hardening and cracking"),
    held("cutting-metals", "metal=low-alloy-steel", "cuts=warm; why=~crack", "AWS, table 3.6: air hardening and fissures"),
    held("fume-hazards", "part=filler; id=brass", "substances=zinc, copper", "RBCuZn-A: Cu 59 Zn 41"),
    held("fume-hazards", "part=filler; id=silver", "substances=zinc, copper", "BAg-7: Ag 56 Cu 22 Zn 17 Sn 5"),
    held("fume-hazards", "part=filler; id=copper-phosphorus", "substances=copper", "BCuP-2: Cu 93 P 7"),
    held("fume-hazards", "part=filler; id=nickel-silver", "substances=zinc, nickel, copper", "RBCuZn-D: Cu 48 Zn 42 Ni 10"),
    held("fume-hazards", "part=filler; id=steel", "substances=iron, manganese", "IARC 118, mild steel"),
    held("emergency-acts", "event=leak; act=wait", "does=~until the fire service says", "William and Mary: not back inside until fire and safety officials say so", "read"),
    held("emergency-acts", "event=leak; act=out", "does=~doors and windows open", "Southeastern Oklahoma: evacuate, vent the area", "read"),
    held("first-acts-benchbook-2026", "page=leak; step=out; kind=act", "text=~Take everyone out", "Southeastern Oklahoma", "read"),
    held("emergency-acts", "event=valve-fire; act=phone", "does=~fire service", "Stanford: the alarm clears the building and calls the fire department", "read"),
    held("heat-marks", "metal=aluminium; temperature=200", "words=~lose strength", "6061-T6 below its least strength after 16 h at 390 °F (199 °C)", "read"),
    held("hazards", "id=chloride-smoke", "consequence=~days later", "OSHA, 54 FR 2332: ten deaths; a death of scarred lungs after 11 to 18 days", "read"),
    held("fume-hazards", "part=flux; id=chloride", "what=~lungs", "NIOSH IDLH, May 1994: zinc chloride fume", "read"),
    held("fume-hazards", "part=flux; id=borax", "what=~wounds", "an encyclopaedia: deaths from open wounds dressed with boric acid"),
    held("tube-services", "id=steam", "taken=no; reason=~softens; source=~15 psi", "CDA table 14.4a: 15 psi of saturated steam, 250 °F", "read"),
    # What was looked for later.
    held("emergency-acts", "event=hot-cylinder; act=phone", "does=call the fire service", "VBG, rule 1: the fire service is told"),
    held("emergency-acts", "event=burning-hose; act=rest", "does=~with the extinguisher", "29 CFR 1910.252(a)(2)(iii)(B): within its capacity"),
    held("emergency-acts", "event=burning-hose; act=out", "does=~alarm", "29 CFR 1910.252(a)(2)(iii)(B): or otherwise sound the alarm"),
    held("emergency-acts", "event=eyes; act=grit", "does=~leave what sticks", "four pages: rinse with clean water, do not take out what is embedded"),
    held("emergency-acts", "event=fume; act=side", "does=~on the side who does not answer but breathes", "NHS, in a copy: unconscious but breathing, recovery position"),
    held("licence-questions-benchbook-2026", "id=clothes", "right=~Wool, thick cotton or leather; wrong_1=Nylon", "AWS Fact Sheet 33, told: heavy cotton or wool; synthetics melt"),
    held("figures-benchbook-2026", "id=permit-longest", "us=24 h", "a permit form: good for 24 hours only"),
    held("storage-rules", "source=cfr30-57 57.4101", "words=~no smoking, no flame", "30 CFR 57.4101: visible signs against smoking and open flames"),
    held("hazards", "id=tip-overheats", "avoidance=~off the puddle", "NAVEDTRA 14018: tip that touches or overheats; molten metal may splatter"),
    held("hazards", "id=concrete-bursts", "hazard=~Concrete", "a page on the cutting torch: it can crack violently and throw bits"),
    held("hazards", "id=lime-dust", "hazard=~eyes, skin and lungs", "NIOSH Pocket Guide, in a copy; ABC of Safety: corrosive to all three"),
    held("hazards", "id=light-gas", "hazard=~under the ceiling", "Arizona State University: hydrogen is trapped near the ceiling"),
    held("hazards", "id=heating-tip-draw", "hazard=~liquid comes along", "US Army OD0017 (3): past 50 cubic feet an hour acetone is drawn off"),
    held("inspection-checks", "when=flashback; part=Torch and regulators", "words=~opened and tested", "a shop class: shut down, bled off, taken apart and inspected"),
    held("inspection-checks", "when=unknown; part=Torch and tips", "words=~made for the fuel gas", "29 CFR 1910.253(e)(1): the service for which it is approved"),
    held("inspection-checks", "source=cfr1910-253 (e)(6)(iv)", "words=~union nut and seat", "29 CFR 1910.253(e)(6)(iv): inspected before use"),
    held("hazards", "id=other-fuel-parts", "avoidance=~made for this gas", "29 CFR 1910.253(e)(1)"),
    held("emergency-acts", "event=stem-leak; act=supplier", "source=~(b)(5)(ii)(R)(1)", "29 CFR 1910.253(b)(5)(ii)(R)(1): a report to the supplier"),
    held("emergency-acts", "event=plug-leak; act=tag", "source=~(b)(5)(iii)(G)", "29 CFR 1910.253(b)(5)(iii)(G): plainly tagged"),
    held("emergency-acts", "event=plug-leak; act=supplier", "source=~(b)(5)(iii)(G)", "29 CFR 1910.253(b)(5)(iii)(G): the supplier is notified"),
    held("oxygen-full-gauges", "rules=us; standing=followed", "number=2200; unit=psi; at=70", "a page on oxygen cylinders: 244 cubic feet at 2200 psi and 70 °F"),
    held("heat-marks", "metal=stainless-steel; words=takes a tint, pale yellow first", "temperature=290", "type 304 in air: pale yellow at 290 °C"),
    held("heat-marks", "metal=copper; temperature=400", "words=~soft", "a page on annealing: new grains from 200 to 600 °C"),
    held("heat-marks", "metal=aluminium; temperature=350", "words=~soft", "a page on annealing: 570 to 770 °F, 299 to 410 °C"),
]  # fmt: skip


def rows(table: str) -> list[dict[str, str]]:
    """Rows of a table as they stand in the file, by plain column name, graded as they are shown."""
    text = files("calc").joinpath(f"data/{table}.csv").read_text(encoding="utf-8")
    heads, *lines = [line for line in csv.reader(text.splitlines()) if line]
    made = [dict(zip((h.partition(" [")[0] for h in heads), line, strict=True)) for line in lines]
    return [row | {"how_sure": graded(row["source"], row["how_sure"])} for row in made]


@pytest.mark.parametrize(
    "cell",
    [
        "cfr1910-252 (c)(6)", "cfr1910-253 (a)(2)", "cfr1910-133 (a)(5)", "cfr1910-1000 Z-1", "cfr1926-350 (d)(5)",
        "cfr1915-504 (c)(2)(iv)", "cfr30-75 75.321(b)", "cfr49-173-303 (b)", "hse-indg327", "uk-tactical-2014 H2.2.0",
    ],
)  # fmt: skip
def test_what_was_met_in_a_copy_alone_is_not_said_to_be_read_in_itself(cell: str) -> None:
    """The federal rules were read in a public copy of the 2015 edition; the two leaflets in copies as well."""
    assert graded(cell, "read") == "read-m"
    assert graded(cell, "memory") == "memory"
    for name in ("storage", "exposure-limits", "ventilation", "hoods", "shades-us-minimum", "hazards"):
        assert not [row for row in calc_table(name) if row.source == cell and row.how_sure == "read"]


@pytest.mark.parametrize("path", sorted(Path("calc/data").glob("*.csv")), ids=lambda path: path.stem)
def test_the_typed_grade_is_the_one_that_is_shown(path: Path) -> None:
    _, *lines = [line for line in csv.reader(path.read_text(encoding="utf-8").splitlines()) if line]
    assert not [line for line in lines if line[-1] in GRADES and graded(line[-2], line[-1]) != line[-1]]


def test_the_federal_rules_are_all_marked() -> None:
    for key, publication in sources().items():
        if key.startswith("cfr") and key != "cfr49-180-209":
            assert publication["met"] == "copy", key


@pytest.mark.parametrize(
    "one", HELD, ids=[f"{h.source}, {h.quality}: {h.table} {list(h.where.values())}" for h in HELD]
)
def test_a_row_says_what_its_text_says(one: Held) -> None:
    (row,) = (
        row for row in rows(one.table) if all(row[name] == value for name, value in one.where.items())
    )
    for name, value in one.says.items():
        if value.startswith("~"):
            assert value[1:] in row[name]
        else:
            assert row[name] == value
    assert GRADES.index(row["how_sure"]) >= GRADES.index(one.quality)
    assert row["source"]


def test_one_seventh_is_no_allowance() -> None:
    """A note of the trade: one-tenth by CGA G-1 has taken the place of one-seventh."""
    (row,) = (row for row in rows("withdrawal-limits") if row["topic"] == "one-seventh")
    assert row["standing"] == "also"
    assert "no allowance" in row["words"]


def test_no_row_says_that_copper_phosphorus_is_known_from_memory() -> None:
    assert not [row for row in rows("brazing-nevers") if "from memory" in row["why"]]


@pytest.mark.parametrize(
    "table",
    [
        "figures-benchbook-2026", "hazards", "words-benchbook-2026", "licence-questions-benchbook-2026", "tube-services",
        "staged-faults-benchbook-2026", "exercises-benchbook-2026",
    ],
)  # fmt: skip
def test_no_row_stands_twice(table: str) -> None:
    ids = [row["id"] for row in rows(table)]
    assert len(ids) == len(set(ids))
