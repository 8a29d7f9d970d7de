#!/usr/bin/env python3
"""The translations, held against the words of the program as they are today.

The template is gathered afresh from po/POTFILES.in, as the build does it. Every
language of po/LINGUAS has to be well formed, to leave nothing of the template
untranslated or in doubt, and to keep its own quotation marks. With --allow N
up to N messages may be missing; they are named all the same. Prints TAP.
"""
import argparse
import pathlib
import re
import subprocess
import sys
import tempfile

# What the build's own preset 'glib' hands to xgettext.
GATHER = [
    "xgettext", "--from-code=UTF-8", "--add-comments",
    "--keyword=_", "--keyword=N_", "--keyword=C_:1c,2", "--keyword=NC_:1c,2",
    "--keyword=g_dcgettext:2", "--keyword=g_dngettext:2,3", "--keyword=g_dpgettext2:2c,3",
    "--flag=N_:1:pass-c-format", "--flag=C_:2:pass-c-format", "--flag=NC_:2:pass-c-format",
    "--flag=g_dngettext:2:pass-c-format", "--flag=g_strdup_printf:1:c-format", "--flag=g_string_printf:2:c-format",
    "--flag=g_string_append_printf:2:c-format", "--flag=g_error_new:3:c-format", "--flag=g_set_error:4:c-format",
    "--flag=g_markup_printf_escaped:1:c-format", "--flag=g_log:3:c-format", "--flag=g_print:1:c-format",
    "--flag=g_printerr:1:c-format", "--flag=g_printf:1:c-format", "--flag=g_fprintf:2:c-format",
    "--flag=g_sprintf:2:c-format", "--flag=g_snprintf:3:c-format",
]
# Marks that a language does not quote with.
FOREIGN_QUOTES = {"de": "”«»", "es": "“”„", "fr": "“”„", "sv": "“„«»"}


def run(*command, **options):
    return subprocess.run([str(word) for word in command], capture_output=True, text=True, **options)


def gather(top, template):
    """Gathers the template; yields what gettext complains of.

    That a message is used both alone and with a plural is no fault: it is looked up the same way.
    """
    done = run(*GATHER, f"--directory={top}", f"--files-from={top / 'po' / 'POTFILES.in'}", f"--output={template}")
    for complaint in re.split(r"\n(?=\S)", done.stderr.strip()):
        if complaint and "is used without plural and with plural" not in complaint:
            yield " ".join(complaint.split())
    if not template.exists():
        yield "no template came of it"


def ill_formed(catalogue):
    done = run("msgfmt", "--check", "--check-accelerators=_", "--output-file=/dev/null", catalogue)
    yield from done.stderr.splitlines()
    if done.returncode != 0 and not done.stderr:
        yield "msgfmt refuses it"


def messages(text):
    """The msgid of each message of a catalogue but the header."""
    for block in text.split("\n\n"):
        found = re.search(r'^msgid ((?:".*"\n)+)', block, re.MULTILINE)
        words = "".join(re.findall(r'^"(.*)"$', found.group(1), re.MULTILINE)) if found else ""
        if words:
            yield words


def missing(catalogue, template, folder):
    merged = folder / catalogue.name
    done = run("msgmerge", "--quiet", "--no-fuzzy-matching", f"--output-file={merged}", catalogue, template)
    if done.returncode != 0:
        yield f"cannot be merged with the template: {done.stderr.strip()}"
        return
    for state, option in (("untranslated", "--untranslated"), ("in doubt", "--only-fuzzy")):
        for words in messages(run("msgattrib", "--no-obsolete", option, merged).stdout):
            yield f"{state}: {words}"


def foreign_quotes(catalogue):
    marks = FOREIGN_QUOTES.get(catalogue.stem, "")
    translated = False
    for number, line in enumerate(catalogue.read_text().splitlines(), 1):
        words = line if not line.startswith(("#", "msgid", "msgctxt")) else ""
        translated = line.startswith("msgstr") or (words and translated)
        if translated and any(mark in words for mark in marks):
            yield f"line {number} quotes with another language's marks: {words}"


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("top", type=pathlib.Path, help="the project's folder")
    parser.add_argument("--allow", type=int, default=0, metavar="N", help="messages that each language may lack")
    typed = parser.parse_args()
    catalogues = [typed.top / "po" / f"{language}.po"
                  for line in (typed.top / "po" / "LINGUAS").read_text().splitlines() if not line.startswith("#")
                  for language in line.split()]

    results = []
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        template = folder / "strandwise.pot"
        results.append(("gettext reads every message", list(gather(typed.top, template)), 0))
        for catalogue in catalogues:
            results.append((f"{catalogue.name} is well formed", list(ill_formed(catalogue)), 0))
            results.append((f"{catalogue.name} is complete", list(missing(catalogue, template, folder)), typed.allow))
            results.append((f"{catalogue.name} keeps its quotation marks", list(foreign_quotes(catalogue)), 0))

    print(f"1..{len(results)}")
    for number, (title, found, allowed) in enumerate(results, 1):
        print(f"{'not ok' if len(found) > allowed else 'ok'} {number} {title}")
        for line in found:
            print(f"# {line}")
    sys.exit(any(len(found) > allowed for _, found, allowed in results))


if __name__ == "__main__":
    main()
