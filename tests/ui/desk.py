# SPDX-License-Identifier: GPL-3.0-or-later
"""A desk of one's own: a display, a message bus and a window manager that all end with the test."""
import ctypes
import os
import pathlib
import shutil
import signal
import subprocess
import sys
import tempfile
import time

from screen import Screen
from tap import Failure

PR_SET_PDEATHSIG = 1
WINDOW = (1280, 800)

# What GTK would ask a desktop for; no animation, so that a picture is done when it is there.
SETTINGS = """[Settings]
gtk-font-name=Cantarell 11
gtk-enable-animations={animations}
gtk-cursor-blink=0
gtk-icon-theme-name=Adwaita
"""

# A window manager without decorations or places of its own: windows stand where they are put.
OPENBOX = """<?xml version="1.0"?>
<openbox_config xmlns="http://openbox.org/3.4/rc">
  <focus><focusNew>yes</focusNew></focus>
  <placement><policy>Smart</policy><center>yes</center></placement>
  <mouse><context name="Client"><mousebind button="Left" action="Press"><action name="Focus"/><action name="Raise"/></mousebind></context></mouse>
  <applications><application class="*"><decor>no</decor></application></applications>
</openbox_config>
"""


def die_with_parent():
    """Even a test that is killed outright leaves nothing behind."""
    ctypes.CDLL(None).prctl(PR_SET_PDEATHSIG, signal.SIGKILL)


def wait_for(what, condition, seconds=60, pause=0.03):
    """Returns what `condition` returns once that is neither false nor None."""
    end = time.monotonic() + seconds
    while True:
        result = condition()
        if result:
            return result
        if time.monotonic() > end:
            raise Failure(f"waited {seconds} s in vain for {what}")
        time.sleep(pause)


class Desk:
    """Use it as a context: everything it started is ended when that is left."""

    def __init__(self, scale=1, animations=False):
        self.scale = scale
        self.folder = pathlib.Path(tempfile.mkdtemp(prefix="strandwise-desk-"))
        self.processes = []
        self.screen = None
        self.environment = {}
        self.animations = animations

    def __enter__(self):
        signal.signal(signal.SIGTERM, lambda *_: sys.exit(1))
        try:
            self.start()
        except BaseException:
            self.__exit__()
            raise
        return self

    def __exit__(self, *_):
        for process in reversed(self.processes):
            process.kill()
            process.wait()
        shutil.rmtree(self.folder, ignore_errors=True)

    def start_process(self, *command, **options):
        process = subprocess.Popen(command, env=self.environment, preexec_fn=die_with_parent, start_new_session=True, **options)
        self.processes.append(process)
        return process

    def start(self):
        for name in ["home", "config/gtk-4.0", "data", "cache", "run", "screen", "state"]:
            (self.folder / name).mkdir(parents=True)
        (self.folder / "run").chmod(0o700)
        (self.folder / "config/gtk-4.0/settings.ini").write_text(SETTINGS.format(animations=int(self.animations)))
        (self.folder / "openbox.xml").write_text(OPENBOX)
        self.environment = {
            "PATH": os.environ["PATH"],
            "LC_ALL": "C.UTF-8",
            "HOME": str(self.folder / "home"),
            "XDG_CONFIG_HOME": str(self.folder / "config"),
            "XDG_DATA_HOME": str(self.folder / "data"),
            "XDG_CACHE_HOME": str(self.folder / "cache"),
            "XDG_STATE_HOME": str(self.folder / "state"),
            "XDG_RUNTIME_DIR": str(self.folder / "run"),
            "GSETTINGS_BACKEND": "keyfile",
            "GIO_USE_VFS": "local",
            "GDK_BACKEND": "x11",
            "GDK_SCALE": str(self.scale),
            "GSK_RENDERER": "cairo",
            "GDK_DEBUG": "gl-disable",  # drivers that this renderer does not use would take a fifth of a cold start
            "GTK_USE_PORTAL": "0",
            "GTK_CSD": "0",
        }
        self.start_display()
        self.start_bus()
        quiet = {"stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL}
        self.start_process("openbox", "--sm-disable", "--config-file", str(self.folder / "openbox.xml"), **quiet)
        self.start_process("xcompmgr", **quiet)
        wait_for("the window manager", lambda: self.xdotool("get_num_desktops", check=False), 30)

    def settings(self, **values):
        """What the program finds when it starts, as it would have kept it itself."""
        folder = self.folder / "config/glib-2.0/settings"
        folder.mkdir(parents=True, exist_ok=True)
        lines = [f"{key.replace('_', '-')}={value}" for key, value in values.items()]
        (folder / "keyfile").write_text("\n".join(["[io/strandwise/Strandwise]", *lines, ""]))

    def start_display(self):
        width, height = ((side + 80) * self.scale for side in WINDOW)
        reading, writing = os.pipe()
        self.start_process("Xvfb", "-displayfd", str(writing), "-screen", "0", f"{width}x{height}x24", "-nolisten", "tcp",
                           "-fbdir", str(self.folder / "screen"), pass_fds=[writing], stdout=subprocess.DEVNULL,
                           stderr=(self.folder / "xvfb.log").open("w"))
        os.close(writing)
        with os.fdopen(reading) as pipe:
            number = pipe.readline().strip()
        if not number:
            raise Failure("Xvfb did not start: " + (self.folder / "xvfb.log").read_text())
        self.environment["DISPLAY"] = ":" + number
        self.screen = Screen(self.folder / "screen/Xvfb_screen0")

    def start_bus(self):
        bus = self.start_process("dbus-daemon", "--session", "--nofork", "--print-address=1", stdout=subprocess.PIPE,
                                 stderr=subprocess.DEVNULL, text=True)
        self.environment["DBUS_SESSION_BUS_ADDRESS"] = bus.stdout.readline().strip()
        # What reads the accessibility tree within this process asks the same bus.
        os.environ.update({key: self.environment[key] for key in ["DISPLAY", "DBUS_SESSION_BUS_ADDRESS", "XDG_RUNTIME_DIR"]})

    def xdotool(self, *words, check=True):
        """Real events, through the server. Returns what is printed."""
        run = subprocess.run(["xdotool", *map(str, words)], env=self.environment, check=check, text=True,
                             stdout=subprocess.PIPE, stderr=None if check else subprocess.DEVNULL)
        return run.stdout.strip()
