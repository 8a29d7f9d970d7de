# SPDX-License-Identifier: GPL-3.0-or-later
"""The picture on an Xvfb screen, read from the file in which the server keeps it."""
import mmap
import struct
import subprocess
import zlib


class Screen:
    """Pixels as the server holds them; `path` is the X window dump that Xvfb -fbdir maps."""

    def __init__(self, path):
        with open(path, "rb") as file:
            self.map = mmap.mmap(file.fileno(), 0, prot=mmap.PROT_READ)
        header = struct.unpack(">25I", self.map[:100])
        self.width, self.height, self.stride = header[4], header[5], header[12]
        if header[11] != 32:
            raise ValueError("the screen has not 32 bits a pixel")
        self.start = header[0] + 12 * header[19]

    def row(self, x, y, width):
        """Bytes in the order blue, green, red, unused."""
        at = self.start + y * self.stride + 4 * x
        return self.map[at:at + 4 * width]

    def pixel(self, x, y):
        blue, green, red, _ = self.row(x, y, 1)
        return red, green, blue

    def mean(self, x, y, width, height):
        """Mean red, green and blue of a region, 0 to 255."""
        sums = [0, 0, 0]
        for line in range(y, y + height):
            row = self.row(x, line, width)
            for channel in range(3):
                sums[channel] += sum(row[2 - channel::4])
        return tuple(total / (width * height) for total in sums)

    def colours(self, x, y, width, height):
        """How many different colours a region has: a picture has many, an empty pane a handful."""
        seen = set()
        for line in range(y, y + height):
            row = self.row(x, line, width)
            seen.update(row[i:i + 3] for i in range(0, len(row), 4))
        return len(seen)

    def print_of(self, x, y, width, height):
        """A number that changes whenever a pixel of the region does."""
        crc = 0
        for line in range(y, y + height):
            crc = zlib.crc32(self.row(x, line, width), crc)
        return crc

    def save(self, path, x=0, y=0, width=None, height=None, colours=None):
        """Writes a region as PNG; with `colours`, that many at most, for small files."""
        width, height = width or self.width, height or self.height
        lines = []
        for line in range(y, y + height):
            row = self.row(x, line, width)
            rgb = bytearray(3 * width)
            rgb[0::3], rgb[1::3], rgb[2::3] = row[2::4], row[1::4], row[0::4]
            lines.append(b"\0" + bytes(rgb))
        with open(path, "wb") as file:
            file.write(b"\x89PNG\r\n\x1a\n")
            for kind, data in [(b"IHDR", struct.pack(">2I5B", width, height, 8, 2, 0, 0, 0)),
                               (b"IDAT", zlib.compress(b"".join(lines), 6)), (b"IEND", b"")]:
                file.write(struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data)))
        if colours:
            subprocess.run(["convert", path, "-strip", "-dither", "FloydSteinberg", "-colors", str(colours),
                            "-define", "png:compression-level=9", f"PNG8:{path}"], check=True)
