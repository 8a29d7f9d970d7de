# SPDX-License-Identifier: GPL-3.0-or-later
"""The figures of a forecast, against the sketch itself and against one another."""
import csv
import io
import json
import math
import shutil
import subprocess
import tempfile

from harness import DEMOS, FINE, Skip, Tap, check, environment, near, run, run_json, strict_json

tap = Tap()
SKETCHES = sorted(DEMOS.glob("*.colourway"))
FORECASTS = {}

# What scripts may rely on: member and kind.
MEMBERS = {
    "dyes": list,
    "strand_length_cm": float,
    "wraps": float,
    "repeat_cm": float,
    "repeat_stitches": float,
    "stitch_length_cm": float,
    "stitches": int,
    "pooling": dict,
    "stripes": list,
    "bath": dict,
}
DYE = {"name": str, "poured_g": float, "struck_g": float, "left_g": float}
POOLING = {"width": int, "worked": str, "stack": float, "row_step": int, "stitch_step": int, "angle_deg": float, "verdict": str, "sentence": str}
STRIPE = {"colour": str, "mean_cm": float, "mean_stitches": float, "mean_rows": float, "share": float}
BATH = {"ph_start": float, "clear_percent": float, "steps": list}
COLUMNS = ["width", "worked", "stack", "row_step", "stitch_step", "verdict"]


def forecast(path):
    if path not in FORECASTS:
        FORECASTS[path] = run_json("forecast", path)
    return FORECASTS[path]


def every_sketch():
    check(len(SKETCHES) >= 5, "only", len(SKETCHES), "demos")
    for path in SKETCHES:
        yield path.stem, json.loads(path.read_text(encoding="utf-8")), forecast(path)


def has(thing, members):
    for member, kind in members.items():
        value = thing[member]
        check(isinstance(value, (int, float) if kind is float else kind) and not isinstance(value, bool), member, "is", repr(value))


@tap.test
def members_are_there_and_of_their_kind():
    for _, _, got in every_sketch():
        has(got, MEMBERS)
        has(got["pooling"], POOLING)
        has(got["bath"], BATH)
        for dye in got["dyes"]:
            has(dye, DYE)
        for stripe in got["stripes"]:
            has(stripe, STRIPE)


@tap.test
def dye_poured_is_dye_struck_and_dye_left():
    for name, sketch, got in every_sketch():
        stocks = {dye["id"]: dye for dye in sketch["dyes"]}
        check([dye["name"] for dye in got["dyes"]] == [dye["name"] for dye in sketch["dyes"]], name)
        for dye, result in zip(sketch["dyes"], got["dyes"]):
            # a stock of 1 % holds 1 g in 100 mL; dry grains are weighed
            poured = sum(
                step["grams"] if step.get("dry") else step["amount_ml"] * stocks[dye["id"]]["stock_percent"] / 100
                for step in sketch["steps"]
                if step.get("dye") == dye["id"]
            )
            check(near(result["poured_g"], poured, 1e-9 * poured), name, result, poured)
            check(near(result["struck_g"] + result["left_g"], result["poured_g"], 1e-10 * poured), name, result)
            check(0 <= result["struck_g"] <= poured * (1 + 1e-12), name, result)
        poured, struck = (sum(dye[member] for dye in got["dyes"]) for member in ("poured_g", "struck_g"))
        check(near(got["bath"]["clear_percent"], 100 * struck / poured, 1e-6), name)


@tap.test
def the_strand_is_as_long_as_its_mass_says():
    for name, sketch, got in every_sketch():
        yarn, reel, cloth = sketch["yarn"], sketch["reel"], sketch["cloth"]
        length = yarn["mass_g"] * yarn["metres_per_100_g"]  # m per 100 g is cm per g
        check(near(got["strand_length_cm"], length, 1e-6), name)
        check(near(got["repeat_cm"], reel["circumference_cm"], 1e-6), name)
        if not reel.get("growth"):
            check(near(got["wraps"], length / reel["circumference_cm"], 1e-6), name)
        stitch = cloth.get("stitch_length_cm") or run_json(
            "calc", "stitch-length",
            "--wales-per-cm", cloth["stitches_per_10cm"] / 10,
            "--courses-per-cm", (cloth.get("rows_per_10cm") or cloth["stitches_per_10cm"] * 5.0 / 3.8) / 10,
            "--state", cloth.get("state", "dry"))["stitch_length_cm"]  # fmt: skip
        check(near(got["stitch_length_cm"], stitch, 1e-7), name, got["stitch_length_cm"], stitch)
        check(near(got["repeat_stitches"], reel["circumference_cm"] / stitch, 1e-4), name)
        check(abs(got["stitches"] - (length - cloth.get("start_cm", 0)) / stitch) <= 1, name, got["stitches"])


@tap.test
def the_start_of_the_bath_is_the_single_sum():
    # g per mol by IUPAC atomic weights
    molar_mass = {"acetic": 60.052, "citric": 192.124}
    for name, sketch, got in every_sketch():
        bath = sketch["bath"]
        if bath.get("keep_carbonate"):
            continue
        litres = (bath["water_ml"] + bath["acid_ml"]) / 1000
        molar = bath["acid_ml"] * bath["acid_percent"] / 100 / molar_mass[bath["acid"]] / litres
        alkalinity = bath["alkalinity_meq_per_l"] / 1000 * bath["water_ml"] / 1000 / litres
        ph = run_json("calc", "ph", "--acid", bath["acid"], "--molar", repr(molar), "--alkalinity", repr(alkalinity))["ph"]
        check(near(got["bath"]["ph_start"], ph, 1e-5), name, got["bath"]["ph_start"], ph)
        check(len(got["bath"]["steps"]) == len(sketch["steps"]), name)
        check([step["kind"] for step in got["bath"]["steps"]] == [step["kind"] for step in sketch["steps"]], name)


@tap.test
def stripes_share_out_the_strand():
    for name, sketch, got in every_sketch():
        width = sketch["cloth"]["width_stitches"]
        check(near(sum(stripe["share"] for stripe in got["stripes"]), 1, 1e-6), name)
        for stripe in got["stripes"]:
            check(len(stripe["colour"]) == 7 and int(stripe["colour"][1:], 16) >= 0, stripe)
            check(near(stripe["mean_cm"], stripe["mean_stitches"] * got["stitch_length_cm"], 1e-5 * stripe["mean_cm"]), name, stripe)
            check(near(stripe["mean_rows"], stripe["mean_stitches"] / width, 1e-7 * stripe["mean_rows"] + 1e-9), name, stripe)
            check(near(stripe["share"], stripe["runs"] * stripe["mean_stitches"] / got["stitches"], 0.02), name, stripe)


@tap.test
def the_drift_has_its_angle():
    for name, sketch, got in every_sketch():
        pooling, cloth = got["pooling"], sketch["cloth"]
        width = 10 / cloth["stitches_per_10cm"]
        height = 10 / (cloth.get("rows_per_10cm") or cloth["stitches_per_10cm"] * 5.0 / 3.8)
        angle = math.degrees(math.atan2(pooling["stitch_step"] * width, pooling["row_step"] * height))
        check(near(pooling["angle_deg"], angle, 1e-6), name, pooling, angle)
        check(str(pooling["width"]) in pooling["sentence"], name, pooling)


def scan(path, *widths):
    arguments = ("--from", widths[0], "--to", widths[1]) if widths else ()
    done = run("scan", path, *arguments, "--csv")
    check(done.returncode == FINE and not done.stderr, done)
    lines = list(csv.reader(io.StringIO(done.stdout.decode("ascii"))))
    check(lines[0] == COLUMNS, lines[0])
    return [dict(zip(COLUMNS, line)) for line in lines[1:]]


@tap.test
def a_scan_has_every_width_flat_and_round():
    lines = scan(SKETCHES[0])
    check(len(lines) == 2 * 591, len(lines))
    check({(int(line["width"]), line["worked"]) for line in lines} == {(width, worked) for width in range(10, 601) for worked in ("flat", "round")}, "widths are missing")
    check(len(scan(SKETCHES[0], 64, 64)) == 2, "one width")
    for line in lines:
        check(float(line["stack"]) <= 1 and 1 <= int(line["row_step"]) <= 8 and -6 <= int(line["stitch_step"]) <= 6, line)


@tap.test
def scan_says_the_same_in_csv_and_json_and_the_forecast():
    for name, sketch, got in every_sketch():
        width = sketch["cloth"]["width_stitches"]
        path = DEMOS / f"{name}.colourway"
        lines = scan(path, width - 2, width + 2)
        objects = run_json("scan", path, "--from", width - 2, "--to", width + 2)
        check(len(lines) == len(objects) == 10, name)
        for line, thing in zip(lines, objects):
            check({column: str(thing[column]) for column in COLUMNS if column != "stack"} == {column: line[column] for column in COLUMNS if column != "stack"}, line, thing)
            check(near(float(line["stack"]), thing["stack"], 5.1e-4), line, thing)
        mine = next(thing for thing in objects if thing["width"] == width and thing["worked"] == sketch["cloth"]["worked"])
        check(all(mine[member] == got["pooling"][member] for member in mine), name, mine, got["pooling"])


@tap.test
def known_widths_pool():
    """A loop of 100 stitches: in the round it stacks at 100 and 50 and drifts a stitch a row at 101; flat it stacks at 50."""
    lines = {(int(line["width"]), line["worked"]): line for line in scan(DEMOS / "plumb-line.colourway")}
    for key in ((100, "round"), (50, "round"), (50, "flat")):
        check(lines[key]["verdict"] == "columns" and float(lines[key]["stack"]) > 0.8, lines[key])
    one_more = lines[101, "round"]
    check(one_more["verdict"] == "drifts" and abs(int(one_more["stitch_step"])) == int(one_more["row_step"]), one_more)


@tap.test
def standard_input_is_a_file_like_any_other():
    for path in SKETCHES[:2]:
        piped = run("forecast", "-", "--json", input=path.read_bytes())
        check(strict_json(piped.stdout) == forecast(path), path)
    check(scan(SKETCHES[0], 20, 30) == list(csv.DictReader(io.StringIO(run("scan", "-", "--from", "20", "--to", "30", "--csv", input=SKETCHES[0].read_bytes()).stdout.decode()))), "scan")


@tap.test
def a_uri_is_a_file_name_too():
    check(run_json("forecast", SKETCHES[0].as_uri()) == forecast(SKETCHES[0]), "URI")


@tap.test
def the_same_bytes_twice():
    for path in SKETCHES:
        check(run("forecast", path, "--json").stdout == run("forecast", path, "--json").stdout, path)


@tap.test
def the_report_names_what_a_dyer_asks():
    for name, sketch, got in every_sketch():
        text = run("forecast", DEMOS / f"{name}.colourway").stdout.decode("utf-8")
        for word in (sketch["title"], got["pooling"]["sentence"], *(dye["name"] for dye in sketch["dyes"]), *(stripe["colour"] for stripe in got["stripes"])):
            check(word in text, name, "does not say", word)
        check(not [line for line in text.splitlines() if line != line.rstrip()], "blanks at the end of a line")
        check("nan" not in text.lower() and "-0.0" not in text, text)


@tap.test
def commas_for_points_change_nothing():
    """German writes 2,5; figures for programs and options do not."""
    maker = shutil.which("localedef")
    if maker is None:
        raise Skip("localedef is not here")
    with tempfile.TemporaryDirectory() as folder:
        subprocess.run([maker, "-i", "de_DE", "-f", "UTF-8", f"{folder}/de_DE.UTF-8"], capture_output=True, check=False)
        german = environment(LC_ALL="de_DE.UTF-8", LOCPATH=folder, LANGUAGE="")
        if subprocess.run(["locale", "decimal_point"], env=german, capture_output=True, check=False).stdout.strip() != b",":
            raise Skip("there is no German locale to be made")
        for command in (
            ("forecast", SKETCHES[0], "--json"),
            ("forecast", SKETCHES[0]),
            ("scan", SKETCHES[0], "--csv"),
            ("scan", SKETCHES[0], "--json"),
            ("calc", "ph", "--acid", "acetic", "--molar", "0.0123", "--alkalinity", "0.0015", "--json"),
            ("calc", "spectrum", "--srgb", "12.5,100,200"),
            ("draw", "strip", SKETCHES[0], "-o", "-", "--format", "svg", "--size", "300x80"),
        ):
            plain, comma = run(*command), run(*command, env=german)
            check(comma.returncode == FINE and comma.stdout == plain.stdout, command, comma.stderr)


@tap.test
def words_fit_a_terminal_without_utf_8():
    done = run("forecast", SKETCHES[0], env=environment(LC_ALL="C"))
    check(done.returncode == FINE, done)
    done.stdout.decode("ascii")
    data = run("forecast", SKETCHES[0], "--json", env=environment(LC_ALL="C"))
    check(strict_json(data.stdout) == forecast(SKETCHES[0]), "JSON is UTF-8 everywhere")


tap.main()
