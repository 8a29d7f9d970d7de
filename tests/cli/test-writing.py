# SPDX-License-Identifier: GPL-3.0-or-later
"""What cannot be written is said, and nothing that was there is lost."""
import os
import pathlib
import pty
import resource
import signal
import subprocess
import tempfile

import harness
from harness import DEMOS, FINE, IO, Skip, Tap, check, run

tap = Tap()
FOLDER = tempfile.TemporaryDirectory()
HERE = pathlib.Path(FOLDER.name)
DEMO = DEMOS / "plumb-line.colourway"
COMMANDS = (
    ("--help",),
    ("--version",),
    ("calc", "--help"),
    ("scan", "--help"),
    ("check", DEMO),
    ("check", DEMO, "--json"),
    ("forecast", DEMO),
    ("forecast", DEMO, "--json"),
    ("scan", DEMO),
    ("scan", DEMO, "--csv"),
    ("scan", DEMO, "--json"),
    ("calc", "spectrum", "--srgb", "1,2,3"),
    ("calc", "spectrum", "--srgb", "1,2,3", "--json"),
    ("draw", "strip", DEMO, "-o", "-", "--format", "png"),
)


def one_sentence(done, *words):
    check(done.returncode == IO, done.returncode, done.stderr)
    lines = done.stderr.decode("utf-8").splitlines()
    check(len(lines) == 1 and lines[0].startswith("strandwise-cli"), lines)
    for word in words:
        check(word in lines[0], word, "is not in", lines[0])


@tap.test
def a_full_device_is_noticed_by_every_command():
    if not os.path.exists("/dev/full"):
        raise Skip("this system has no /dev/full")
    for command in COMMANDS:
        with open("/dev/full", "wb") as full:
            done = run(*command, stdout=full, stderr=subprocess.PIPE, capture_output=False)
        one_sentence(done, "standard output", "no room left")


@tap.test
def a_full_device_as_the_picture():
    if not os.path.exists("/dev/full"):
        raise Skip("this system has no /dev/full")
    one_sentence(run("draw", "strip", DEMO, "-o", "/dev/full", "--format", "png"), "/dev/full", "no room left")
    check(not os.path.isfile("/dev/full"), "the device was replaced by a file")


@tap.test
def a_pipe_that_nobody_reads():
    for command in COMMANDS:
        reader, writer = os.pipe()
        os.close(reader)
        try:
            done = run(*command, stdout=writer, stderr=subprocess.PIPE, capture_output=False)
        finally:
            os.close(writer)
        one_sentence(done, "went away")


@tap.test
def standard_output_that_is_closed():
    done = subprocess.run(["sh", "-c", 'exec "$0" "$@" >&-', harness.PROGRAM, "scan", DEMO, "--csv"], stderr=subprocess.PIPE, timeout=60)
    one_sentence(done, "standard output")


@tap.test
def standard_input_that_is_closed():
    done = subprocess.run(["sh", "-c", 'exec "$0" "$@" <&-', harness.PROGRAM, "forecast", "-"], stderr=subprocess.PIPE, timeout=60)
    one_sentence(done, "standard input")


@tap.test
def a_folder_that_may_not_be_written_to():
    locked = HERE / "locked"
    locked.mkdir()
    locked.chmod(0o555)
    target = locked if os.geteuid() != 0 else pathlib.Path("/proc/self")  # root may write where it likes, but not there
    one_sentence(run("draw", "strip", DEMO, "-o", target / "x.png"), "x.png")
    check(not list(locked.iterdir()), "something was left in it")


@tap.test
def a_file_that_may_not_be_read():
    locked = HERE / "locked.colourway"
    locked.write_bytes(DEMO.read_bytes())
    locked.chmod(0)
    if os.access(locked, os.R_OK):
        raise Skip("root may read everything")
    one_sentence(run("forecast", locked), "You are not allowed to read it")


@tap.test
def the_old_picture_stays_when_the_new_one_does_not_fit():
    old = HERE / "old.png"
    old.write_bytes(b"what was there")

    def small_files():
        signal.signal(signal.SIGXFSZ, signal.SIG_DFL)
        resource.setrlimit(resource.RLIMIT_FSIZE, (1000, 1000))

    one_sentence(run("draw", "cloth", DEMO, "-o", old, preexec_fn=small_files), "old.png")
    check(old.read_bytes() == b"what was there", "the old picture is gone")
    check(not list(HERE.glob("old.png?*")), "half a picture was left beside it")


@tap.test
def a_link_stays_a_link_and_modes_stay():
    real, link = HERE / "real.png", HERE / "link.png"
    real.write_bytes(b"old")
    real.chmod(0o666)
    link.symlink_to(real)
    done = run("draw", "strip", DEMO, "-o", link, "--size", "30x20")
    check(done.returncode == FINE, done.stderr)
    check(link.is_symlink() and real.read_bytes()[:4] == b"\x89PNG", "the link was replaced")
    check(real.stat().st_mode & 0o777 == 0o666, oct(real.stat().st_mode))


@tap.test
def a_new_picture_heeds_the_umask():
    new = HERE / "new.png"
    done = run("draw", "strip", DEMO, "-o", new, "--size", "30x20", umask=0o027)
    check(done.returncode == FINE, done.stderr)
    check(new.stat().st_mode & 0o777 == 0o640, oct(new.stat().st_mode))


@tap.test
def a_pipe_as_the_picture():
    pipe = HERE / "pipe.png"
    os.mkfifo(pipe)
    with subprocess.Popen([harness.PROGRAM, "draw", "strip", DEMO, "-o", pipe, "--size", "30x20"]) as drawing:
        data = pipe.read_bytes()
    check(drawing.returncode == FINE and data[:4] == b"\x89PNG", data[:8])
    check(pipe.is_fifo(), "the pipe was replaced")


@tap.test
def progress_is_for_terminals():
    main, other = pty.openpty()
    done = run("draw", "strip", DEMO, "-o", HERE / "x.png", "--size", "30x20", stdout=subprocess.PIPE, stderr=other, capture_output=False)
    os.close(other)
    shown = os.read(main, 10000).decode("utf-8")
    os.close(main)
    check(done.returncode == FINE and not done.stdout, done)
    check("Forecasting" in shown and "plumb-line.colourway" in shown and "Drawing" in shown, repr(shown))
    check(shown.endswith("\r\033[K"), "the last line of progress was not rubbed out", repr(shown))
    check("\n" not in shown, repr(shown))


tap.main()
