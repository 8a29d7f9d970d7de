# SPDX-License-Identifier: GPL-3.0-or-later
"""The dye sheet's sums, reckoned again from the colourway alone; and that it says the same in every locale."""
import json
import os
import pathlib
import tempfile

from harness import DEMOS, FINE, REFERENCE, Tap, check, near, run, strict_json

tap = Tap()
COLOURWAYS = [*sorted(DEMOS.glob("*.colourway")), REFERENCE / "everything.colourway"]


def sheet_of(file, *options, **how):
    done = run("sheet", file, "--format", "json", *options, **how)
    check(done.returncode == FINE and not done.stderr, file, done.stderr)
    return strict_json(done.stdout)


def closes(total, parts, tolerance, *what):
    check(near(total, sum(parts), tolerance), *what, total, sum(parts))


def shared_out(skeins, pans):
    """Skeins dealt one by one to the pans in turn."""
    counts = [0] * min(pans, skeins)
    for skein in range(skeins):
        counts[skein % len(counts)] += 1
    return counts


def grams_of(step, colourway):
    """What the drawing's pan gets in one pour: grams, and mL of stock."""
    fibre = colourway["yarn"]["mass_g"] * colourway["lay"]["skeins"]
    stock = next(dye for dye in colourway["dyes"] if dye["id"] == step["dye"])["stock_percent"] / 100
    if step.get("dry"):
        return step["grams"], 0.0
    if step.get("depth_percent", 0) > 0:
        grams = fibre * step["depth_percent"] / 100
        return grams, grams / stock
    return step["amount_ml"] * stock, step["amount_ml"]


def reckon(file, skeins, pans):
    colourway = json.loads(file.read_text(encoding="utf-8"))
    sheet = sheet_of(file, "--skeins", skeins, "--pans", pans)
    counts = shared_out(skeins, pans)
    kinds = sheet["pan_kinds"]
    check(sheet["skeins"] == skeins and sheet["pans"] == len(counts), sheet["pans"])
    check(sorted(count for kind in kinds for count in [kind["skeins"]] * kind["pans"]) == sorted(counts), kinds)
    closes(sheet["fibre_g"], [colourway["yarn"]["mass_g"] * count for count in counts], 1e-6, "fibre")

    pours = [step for step in colourway["steps"] if step["kind"] in ("band", "splotch", "speckle")]
    for kind in kinds:
        part = kind["skeins"] / colourway["lay"]["skeins"]
        check(near(kind["water_ml"], colourway["bath"]["water_ml"] * part, 1e-5), "water", kind)
        check(near(kind["acid_ml"], colourway["bath"]["acid_ml"] * part, 1e-5), "acid", kind)
        check([pour["step"] for pour in kind["pours"]] == [step["id"] for step in pours], "pours", kind)
        for pour, step in zip(kind["pours"], pours):
            grams, millilitres = grams_of(step, colourway)
            check(near(pour["dye_g"], grams * part, 1e-6) and near(pour["stock_ml"], millilitres * part, 1e-5), pour, step)
            measure = colourway["sheet"]["measure_step_ml"]
            if measure > 0:
                check(near(pour["rounded_stock_ml"] / measure, round(pour["rounded_stock_ml"] / measure), 1e-6), pour)
                check(abs(pour["rounded_stock_ml"] - pour["stock_ml"]) <= measure / 2 + 1e-6, pour)

    for dye in sheet["dyes"]:
        for member, of_pour, tolerance in (("poured_ml", "stock_ml", 0.01), ("poured_g", "dye_g", 0.001)):
            for prefix in ("", "rounded_"):
                parts = [pour[prefix + of_pour] for kind in kinds for _ in range(kind["pans"]) for pour in kind["pours"] if pour["dye"] == dye["dye"]]
                closes(dye[prefix + member], parts, tolerance, dye["name"], prefix + member)
        check(dye["rounded_stock_ml"] >= dye["rounded_poured_ml"], dye)
        check(near(dye["depth_percent"], 100 * dye["poured_g"] / sheet["fibre_g"], 1e-5), dye)
        if dye["rounded_stock_ml"] > 0:
            check(near(dye["strength_percent"], 100 * dye["rounded_weigh_g"] / dye["rounded_stock_ml"], 1e-5), dye)
    closes(1, [dye["mass_share"] for dye in sheet["dyes"]], 1e-5, "shares of mass")
    closes(1, [dye["strength_share"] for dye in sheet["dyes"]], 1e-5, "shares of strength")

    cost = sheet["cost"]
    closes(cost["total"], [cost[part] for part in ("yarn", "dye", "acid", "label", "batch", "work")], 1e-5, "cost")
    closes(cost["per_skein"] * skeins, [cost["total"]], 1e-4, "cost of a skein")
    check(near(cost["price"] * (1 - colourway["sheet"]["margin_percent"] / 100), cost["per_skein"], 1e-5), cost)


for colourway in COLOURWAYS:
    def sums(file=colourway):
        for skeins, pans in ((1, 1), (7, 3)):
            reckon(file, skeins, pans)

    sums.__name__ = "sums_of_" + colourway.stem.replace("-", "_")
    tap.test(sums)


@tap.test
def the_day_has_no_gaps():
    sheet = sheet_of(DEMOS / "rock-pool.colourway")
    clock = 0
    for deed in sheet["day"]:
        if deed["deed"] == "stock":
            check(deed["start_min"] <= clock, deed)
            continue
        check(near(deed["start_min"], clock, 1e-6), deed, clock)
        clock += deed["minutes"]
    deeds = [deed["deed"] for deed in sheet["day"]]
    check(deeds[0] == "presoak" and deeds[-1] == "dry" and deeds.index("fill") < deeds.index("pour") < deeds.index("set") < deeds.index("wash"), deeds)
    check([deed["pour"] for deed in sheet["day"] if deed["deed"] == "pour"] == [pour["number"] for pour in sheet["pan_kinds"][0]["pours"]], "pours")


@tap.test
def shares_of_the_strand_close():
    repeat = sheet_of(DEMOS / "rock-pool.colourway")["repeat"]
    closes(1, [colour["share"]["mean"] for colour in repeat["colours"]], 1e-4, "shares")
    for part in [repeat["stack"], repeat["mean_ciede2000"], *(colour["share"] for colour in repeat["colours"])]:
        check(part["least"] <= part["mean"] <= part["most"], part)


@tap.test
def every_pour_and_dye_has_its_slips():
    sheet = sheet_of(DEMOS / "first-light.colourway")
    slips = {(slip["slip"], slip["step"], slip["dye"]) for slip in sheet["slips"]}
    wanted = {("rounded", 0, 0)}
    wanted |= {(slip, 0, dye["dye"]) for dye in sheet["dyes"] for slip in ("weighed-more", "weighed-less")}
    wanted |= {(slip, pour["step"], 0) for pour in sheet["pan_kinds"][0]["pours"] if not pour["dry"] for slip in ("poured-more", "poured-less")}
    check(slips == wanted, slips ^ wanted)
    check(all(slip["mean_ciede2000"] <= slip["most_ciede2000"] for slip in sheet["slips"]), sheet["slips"])


@tap.test
def locale_does_not_matter():
    file = DEMOS / "plumb-line.colourway"
    for locale in ("C.UTF-8", "de_DE.UTF-8", "fr_FR.UTF-8", "ar_EG.UTF-8"):
        check(sheet_of(file, env={**os.environ, "LC_ALL": locale})["dyes"] == sheet_of(file)["dyes"], locale)


@tap.test
def files_hold_what_is_printed():
    with tempfile.TemporaryDirectory() as name:
        for ending in ("txt", "json", "JSON"):
            out = pathlib.Path(name) / f"sheet.{ending}"
            done = run("sheet", DEMOS / "plumb-line.colourway", "-o", out)
            check(done.returncode == FINE and not done.stdout and not done.stderr, done)
            printed = run("sheet", DEMOS / "plumb-line.colourway", "--format", ending.lower()).stdout
            check(out.read_bytes() == printed, ending)


@tap.test
def a_page_can_be_read():
    for file in COLOURWAYS:
        for units in ("metric", "us"):
            lines = run("sheet", file, "--skeins", 5, "--pans", 2, "--units", units).stdout.decode("utf-8").splitlines()
            tables = [line for line in lines if "  " in line.strip()]
            check(all(len(line) <= 140 for line in tables), file, max(tables, key=len))
            check(all(line == line.rstrip() for line in lines), file)


tap.main()
