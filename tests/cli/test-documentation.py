# SPDX-License-Identifier: GPL-3.0-or-later
"""Every command and option of --help is in the manual, the page and the completions; and the completions complete."""
import pathlib
import re
import shutil
import subprocess
import tempfile

from harness import DEMOS, FINE, PROGRAM, TOP, Skip, Tap, check, run

tap = Tap()
HOME = TOP / "src" / "cli"
MANUAL = HOME / "strandwise-cli.1"
BASH = HOME / "completion" / "strandwise-cli.bash"
ZSH = HOME / "completion" / "_strandwise-cli"
FISH = HOME / "completion" / "strandwise-cli.fish"
PAGE = TOP / "docs" / "command-line.md"


def help_of(*command):
    done = run(*command, "--help")
    check(done.returncode == 0, command, done.stderr)
    return done.stdout.decode("utf-8")


def commands_in(text):
    listed = text.split("Commands:\n", 1)[1].split("\n\n", 1)[0]
    return [line.split()[0] for line in listed.splitlines()]


def tree():
    """Every command that runs, with its options: {("calc", "ph"): {"--acid", ...}}"""
    found = {}
    for command in commands_in(help_of()):
        text = help_of(command)
        if "Commands:\n" in text:
            for inner in commands_in(text):
                found[command, inner] = set(re.findall(r"--[a-z][a-z-]+", help_of(command, inner)))
        else:
            found[(command,)] = set(re.findall(r"--[a-z][a-z-]+", text))
    return found


TREE = tree()


@tap.test
def help_lists_what_was_promised():
    check({command[0] for command in TREE} == {"check", "forecast", "scan", "sheet", "draw", "words", "template", "trace", "calc"}, TREE)
    check({command[1] for command in TREE if len(command) > 1} == {"stitch-length", "ph", "strike", "difference", "colour", "spectrum", "mix"}, TREE)
    check({"--output", "--face", "--size"} <= TREE[("draw",)] and {"--from", "--to", "--csv"} <= TREE[("scan",)], TREE)


@tap.test
def help_is_not_too_wide():
    for command in [(), ("calc",), *TREE]:
        for line in help_of(*command).splitlines():
            check(len(line) <= 110, len(line), command, line)


def section(text, command):
    """The part of the manual that is about one command."""
    start = re.search(r"^\.It Cm " + re.escape(" ".join(command)) + r"\b.*$", text, re.M)
    check(start, command, "has no place of its own")
    end = re.search(r"^\.(It Cm (check|forecast|scan|sheet|draw|words|template|trace|calc)|Sh|Ss)\b", text[start.end():], re.M)
    return text[start.end(): start.end() + end.start()]


@tap.test
def the_manual_has_every_option_at_its_command():
    text = MANUAL.read_text(encoding="utf-8")
    for command, options in TREE.items():
        part = section(text, command)
        listed = set("-" + word for word in re.findall(r"^\.It .*?(?:Fl|, Fl) (-[a-z-]+)", part, re.M))
        listed |= {"--output"} if "Fl -output" in part else set()
        check(listed == options - {"--help"}, command, listed ^ (options - {"--help"}))
    check("Fl -help" in text and "Fl -version" in text, "--help and --version")


@tap.test
def the_manual_reads_without_complaint():
    if shutil.which("mandoc") is None:
        raise Skip("mandoc is not here")
    done = subprocess.run(["mandoc", "-T", "lint", "-W", "warning", str(MANUAL)], capture_output=True, text=True, check=False)
    check(done.returncode == 0 and not done.stdout, done.stdout)


@tap.test
def the_manual_tells_every_exit_status():
    text = MANUAL.read_text(encoding="utf-8")
    part = text.split(".Sh EXIT STATUS", 1)[1].split(".Sh", 1)[0]
    check(re.findall(r"^\.It (\d)", part, re.M) == ["0", "1", "2", "3"], part)


@tap.test
def the_page_has_every_command_and_option():
    text = PAGE.read_text(encoding="utf-8")
    for command, options in TREE.items():
        about = [part for part in re.split(r"^##", text, flags=re.M) if f"`{' '.join(command)}" in part.split("\n", 1)[0]]
        check(about, command, "has no heading")
        check("strandwise-cli " + " ".join(command) in about[0], command, "has no example")
        for option in options - {"--help"}:
            check(option in about[0], command, "does not tell of", option)
    for status in range(4):
        check(f"| {status} |" in text, "exit status", status)


@tap.test
def the_page_shows_pictures_that_are_there():
    pictures = re.findall(r"!\[([^\]]*)\]\(([^)]+)\)", PAGE.read_text(encoding="utf-8"))
    check(len(pictures) >= 4, pictures)
    for words, name in pictures:
        picture = PAGE.parent / name
        check(words and picture.is_file(), name)
        check(picture.stat().st_size < 150_000, name, "is too large")


def examples():
    """Each command of the page with the lines it shows below."""
    for block in re.findall(r"(?:^    .*\n|^\n(?=    ))+", PAGE.read_text(encoding="utf-8"), re.M):
        shown = None
        for line in block.splitlines():
            if line.startswith("    $ "):
                if shown is not None:
                    yield shown
                shown = (line[6:], [])
            elif shown is not None:
                shown[1].append(line[4:])
        if shown is not None:
            yield shown


def as_shown(wanted, got):
    """Whether lines are as shown; a line of dots stands for any number of them."""
    if not wanted:
        return not got
    if wanted[0] == "…":
        return any(as_shown(wanted[1:], got[skipped:]) for skipped in range(len(got) + 1))
    return bool(got) and wanted[0] == got[0] and as_shown(wanted[1:], got[1:])


@tap.test
def the_page_shows_what_is_printed():
    count = 0
    with tempfile.TemporaryDirectory() as folder:
        for demo in DEMOS.glob("*.colourway"):
            shutil.copy(demo, folder)
        (pathlib.Path(folder) / "strandwise-cli").symlink_to(pathlib.Path(PROGRAM).resolve())
        # spectra are made by a later example
        for line, wanted in sorted(examples(), key=lambda example: "--srgb" not in example[0]):
            done = subprocess.run(["sh", "-c", f"PATH=.:$PATH; {line}"], cwd=folder, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, timeout=60, check=False)
            check(done.returncode == FINE or "notes.txt" in line, line, done.stdout)
            check(as_shown([text.rstrip() for text in wanted if text.strip()], [text for text in done.stdout.splitlines() if text]), line, "prints\n" + done.stdout)
            count += 1
    check(count >= 20, "only", count, "examples")


@tap.test
def completions_know_every_command_and_option():
    for file in (BASH, ZSH, FISH):
        text = file.read_text(encoding="utf-8")
        for command, options in TREE.items():
            for word in command:
                check(re.search(rf"\b{word}\b", text), file.name, word)
            for option in options:
                wanted = rf"-l {option[2:]}\b" if file == FISH else rf"{option}\b"
                check(re.search(wanted, text), file.name, option)


def complete(*words, folder=None):
    """What bash offers for the last of the words."""
    script = 'source "$0"; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _strandwise_cli; printf "%s\\n" "${COMPREPLY[@]}"'
    done = subprocess.run(["bash", "--norc", "-c", script, str(BASH), "strandwise-cli", *words], capture_output=True, text=True, cwd=folder, timeout=60, check=False)
    check(done.returncode == 0 and not done.stderr, done.stderr)
    return set(done.stdout.split())


@tap.test
def bash_completes_commands_and_options_as_help_lists_them():
    check(complete("") == {command[0] for command in TREE}, complete(""))
    check(complete("sc") == {"scan"}, complete("sc"))
    check(complete("sheet", "--units", "") == {"metric", "us"}, complete("sheet", "--units", ""))
    check(complete("--v") == {"--version"}, complete("--v"))
    check(complete("calc", "") == {command[1] for command in TREE if len(command) > 1}, complete("calc", ""))
    check(complete("calc", "st") == {"stitch-length", "strike"}, complete("calc", "st"))
    check(complete("draw", "") == {"pan", "strip", "cloth", "item", "scan", "skein", "hank", "listing"}, complete("draw", ""))
    for command, options in TREE.items():
        check(complete(*command, "--") == options, command, complete(*command, "--") ^ options)


@tap.test
def bash_completes_values():
    check(complete("draw", "pan", "--face", "") == {"first", "second"}, "faces")
    check(complete("calc", "strike", "--fibre", "s") == {"superwash-wool", "superwash-nylon", "silk"}, "fibres")
    check(complete("calc", "ph", "--acid", "") == {"acetic", "citric"}, "acids")
    check(complete("scan", "--from", "") == set(), "a number")


@tap.test
def bash_completes_files():
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        for file in ("moor.colourway", "moor.png", "wool.csv"):
            (folder / file).touch()
        (folder / "more").mkdir()
        check(complete("forecast", "mo", folder=folder) == {"moor.colourway", "more"}, "colourways")
        check(complete("draw", "pan", "m", folder=folder) == {"moor.colourway", "more"}, "colourways to draw")
        check(complete("calc", "mix", "--yarn", "w", folder=folder) == {"wool.csv"}, "spectra")


@tap.test
def completions_are_sound_where_their_shells_are():
    shells = {"bash": BASH, "zsh": ZSH, "fish": FISH}
    for shell, file in shells.items():
        if shutil.which(shell):
            done = subprocess.run([shell, "-n", str(file)], capture_output=True, text=True, check=False)
            check(done.returncode == 0 and not done.stderr, shell, done.stderr)
    if shutil.which("fish"):
        ask = f"source {FISH}; complete -C 'strandwise-cli calc s'"
        done = subprocess.run(["fish", "--no-config", "-c", ask], capture_output=True, text=True, check=False)
        check([line.split("\t")[0] for line in done.stdout.splitlines()] == ["spectrum", "stitch-length", "strike"], done)


tap.main()
