#!/usr/bin/python3
"""Writes the frames of this folder and rows.csv with what is in them. See README.md."""
import csv
import gzip
import os
import subprocess
import tempfile

import numpy as np
import tifffile
from astropy.io import fits
from PIL import Image

WIDTH, HEIGHT = 23, 17
rows = []


def ramp(plane=0, width=WIDTH, height=HEIGHT):
    """The one pattern of all files, as displayed, row 0 on top: 0..65535."""
    y, x = np.mgrid[:height, :width]
    return (x * 2749 + y * 911 + plane * 10007) % 65536


def missing(width=WIDTH, height=HEIGHT):
    y, x = np.mgrid[:height, :width]
    return (x + y) % 11 == 0


def rgb(kind):
    return np.stack([kind(p) for p in range(3)])


def u16(p=0, **size):
    return ramp(p, **size).astype(np.uint16)


def u8(p=0, **size):
    return (ramp(p, **size) % 256).astype(np.uint8)


def i16(p=0):
    return (ramp(p) - 32768).astype(np.int16)


def f32(p=0, **size):
    return (ramp(p, **size) / 64 - 100).astype(np.float32)


def row(name, fmt, depth, planes, scale, pattern, holes=0, width=WIDTH, height=HEIGHT):
    rows.append([name, fmt, depth, width, height, planes, scale, pattern, holes])


def write_fits(name, data, cards=(), top_down=False, extension=False, holes=None, blank=None):
    stored = data if top_down else data[..., ::-1, :]
    if extension:
        primary = fits.PrimaryHDU()
        primary.header["OBJECT"] = "Mars"
        table = fits.BinTableHDU.from_columns([fits.Column("n", "J", array=np.arange(7))])
        hdus = fits.HDUList([primary, table, fits.ImageHDU(stored)])
    else:
        hdus = fits.HDUList([fits.PrimaryHDU(stored)])
    if top_down:
        hdus[-1].header["ROWORDER"] = "TOP-DOWN"
    if blank is not None:
        hdus[-1].header["BLANK"] = blank
    for card in cards:
        hdus[-1].header[card[0]] = card[1]
    hdus.writeto(name, overwrite=True)


def all_fits():
    write_fits("uint16.fits", u16())
    row("uint16.fits", "FITS", "16-bit integer", 1, 65535, "u16")
    holes = i16()
    holes[missing()] = -32768
    write_fits("int16-blank.fits", holes, blank=-32768)
    row("int16-blank.fits", "FITS", "16-bit integer", 1, 32767, "i16", 1)
    with_nan = f32()
    with_nan[missing()] = np.nan
    with_nan[0, 11] = np.inf
    write_fits("float32-nan.fits", with_nan)
    row("float32-nan.fits", "FITS", "32-bit float", 1, "NaN", "f32", 1)
    write_fits("uint8.fits", u8())
    row("uint8.fits", "FITS", "8-bit integer", 1, 255, "u8")
    write_fits("int32.fits", u16().astype(np.int32))
    row("int32.fits", "FITS", "32-bit integer", 1, 2**31 - 1, "u16")
    write_fits("int64.fits", u16().astype(np.int64))
    row("int64.fits", "FITS", "64-bit integer", 1, float(2**63 - 1), "u16")
    write_fits("float64.fits", f32().astype(np.float64))
    row("float64.fits", "FITS", "64-bit float", 1, "NaN", "f32")
    # Scaled by hand: 0.5 stored + 3 with stored = 2 (u8 - 3).
    hdu = fits.PrimaryHDU((2 * (u8().astype(np.int16) - 3))[::-1])
    hdu.writeto("scaled.fits", overwrite=True)
    with fits.open("scaled.fits", mode="update", do_not_scale_image_data=True) as f:
        f[0].header["BSCALE"] = 0.5
        f[0].header["BZERO"] = 3.0
    row("scaled.fits", "FITS", "16-bit integer", 1, 0.5 * 32767 + 3, "u8")
    write_fits("cube.fits", rgb(u16))
    row("cube.fits", "FITS", "16-bit integer", 3, 65535, "u16")
    write_fits("cube-of-one.fits", u8()[None])
    row("cube-of-one.fits", "FITS", "8-bit integer", 1, 255, "u8")
    fits.PrimaryHDU(np.moveaxis(rgb(u16)[:, ::-1], 0, -1)).writeto("interleaved.fits", overwrite=True)
    row("interleaved.fits", "FITS", "16-bit integer", 3, 65535, "u16")
    write_fits("top-down.fits", u16(), top_down=True)
    row("top-down.fits", "FITS", "16-bit integer", 1, 65535, "u16")
    write_fits("extension.fits", f32(), extension=True)
    row("extension.fits", "FITS", "32-bit float", 1, "NaN", "f32")
    with open("uint16.fits", "rb") as f, open("packed.fits.gz", "wb") as g:
        g.write(gzip.compress(f.read(), mtime=0))
    row("packed.fits.gz", "FITS", "16-bit integer", 1, 65535, "u16")
    for method in ["RICE_1", "GZIP_1", "GZIP_2"]:
        name = f"tiles-{method.replace('_', '').lower()}.fits"
        hdu = fits.CompImageHDU(u16()[::-1], compression_type=method)
        fits.HDUList([fits.PrimaryHDU(), hdu]).writeto(name, overwrite=True)
        row(name, "FITS", "16-bit integer", 1, 65535, "u16")


def all_tiff():
    kinds = {"u8": (u8, "8-bit integer", 255), "u16": (u16, "16-bit integer", 65535), "f32": (f32, "32-bit float", "NaN")}

    def tiff(name, kind, planes=1, byteorder="<", data=None, **options):
        make, depth, scale = kinds[kind]
        if data is None:
            data = make() if planes == 1 else np.moveaxis(rgb(make), 0, -1)
        options.setdefault("photometric", "minisblack" if planes == 1 else "rgb")
        tifffile.imwrite(name, data, byteorder=byteorder, metadata=None, software="", **options)
        row(name, "TIFF", depth, planes, scale, kind)

    tiff("u8-ii.tif", "u8")
    tiff("u16-ii.tif", "u16")
    tiff("u16-mm.tif", "u16", byteorder=">")
    tiff("f32-ii.tif", "f32")
    tiff("f32-mm.tif", "f32", byteorder=">")
    tiff("rgb8.tif", "u8", planes=3)
    tiff("rgb16.tif", "u16", planes=3, rowsperstrip=5)
    tiff("rgb32f.tif", "f32", planes=3)
    tiff("rgb16-separate.tif", "u16", planes=3, data=rgb(u16), planarconfig="separate")
    tiff("rgb32f-separate.tif", "f32", planes=3, data=rgb(f32), planarconfig="separate")
    tiff("u16-deflate2.tif", "u16", compression="zlib", predictor=2)
    tiff("rgb16-deflate2-mm.tif", "u16", planes=3, byteorder=">", compression="zlib", predictor=2)
    # tifffile needs more than Debian has for the float predictor; libtiff packs those.
    for name, source, pack, planes in [("f32-deflate3.tif", "f32-ii.tif", ["-L", "-c", "zip:3"], 1),
                                       ("rgb32f-lzw3.tif", "rgb32f.tif", ["-L", "-c", "lzw:3"], 3)]:
        subprocess.run(["tiffcp", *pack, source, name], check=True)
        row(name, "TIFF", "32-bit float", planes, "NaN", "f32")
    tiff("u16-tiles.tif", "u16", tile=(16, 16))
    tiff("rgb16-tiles-deflate2.tif", "u16", planes=3, tile=(16, 16), compression="zlib", predictor=2)
    tiff("u16-big.tif", "u16", bigtiff=True)
    tiff("u16-white-is-zero.tif", "u16", data=65535 - u16(), photometric="miniswhite")
    rgba = np.concatenate([np.moveaxis(rgb(u16), 0, -1), np.full((HEIGHT, WIDTH, 1), 40000, np.uint16)], -1)
    tiff("rgba16.tif", "u16", planes=3, data=rgba, extrasamples=["unassalpha"])
    tiff("u16-two-pages.tif", "u16", data=np.stack([u16(), u16(1)]))
    shown = u16()
    stored = {1: shown, 2: shown[:, ::-1], 3: shown[::-1, ::-1], 4: shown[::-1], 5: shown.T,
              6: np.rot90(shown), 7: shown[::-1, ::-1].T, 8: np.rot90(shown, -1)}
    for code, data in stored.items():
        tiff(f"orientation-{code}.tif", "u16", data=np.ascontiguousarray(data),
             extratags=[(274, "H", 1, code, True)])


def all_by_imagemagick():
    """ImageMagick gets raw samples and writes them in its own way."""
    def magick(name, fmt, kind, planes, *options):
        depth = 16 if kind == "u16" else 8
        make = u16 if kind == "u16" else u8
        data = make() if planes == 1 else np.moveaxis(rgb(make), 0, -1)
        with tempfile.NamedTemporaryFile(suffix=".raw") as raw:
            raw.write(np.ascontiguousarray(data).astype(data.dtype.newbyteorder("<")).tobytes())
            raw.flush()
            source = ("gray:" if planes == 1 else "rgb:") + raw.name
            # Colour is declared linear so that nothing is converted; tIME and date chunks are left out.
            subprocess.run(["convert", "-size", f"{WIDTH}x{HEIGHT}", "-depth", str(depth), "-endian", "LSB", source,
                            "+set", "date:create", "+set", "date:modify", "-define", "png:exclude-chunks=date,time",
                            *options, name], check=True)
        row(name, fmt, f"{depth}-bit integer", planes, 2**depth - 1, kind)

    magick("magick-lzw.tif", "TIFF", "u16", 1, "-compress", "LZW")
    magick("magick-rgb-lzw.tif", "TIFF", "u16", 3, "-compress", "LZW")
    magick("magick-rgb-zip.tif", "TIFF", "u16", 3, "-compress", "Zip")
    magick("magick-u8-mm.tif", "TIFF", "u8", 1, "-endian", "MSB")
    magick("grey8.png", "PNG", "u8", 1)
    magick("grey16.png", "PNG", "u16", 1)
    magick("rgb8.png", "PNG", "u8", 3)
    magick("rgb16.png", "PNG", "u16", 3)
    magick("grey16-interlaced.png", "PNG", "u16", 1, "-interlace", "PNG")
    magick("rgb16-interlaced.png", "PNG", "u16", 3, "-interlace", "PNG")


def all_by_pillow():
    Image.fromarray(u8()).save("pillow-lzw.tif", compression="tiff_lzw")
    row("pillow-lzw.tif", "TIFF", "8-bit integer", 1, 255, "u8")
    Image.fromarray(np.dstack([*rgb(u8), np.full((HEIGHT, WIDTH), 200, np.uint8)])).save("pillow-rgba.png")
    row("pillow-rgba.png", "PNG", "8-bit integer", 3, 255, "u8")
    Image.fromarray(np.dstack([u8(), np.full((HEIGHT, WIDTH), 200, np.uint8)])).save("pillow-grey-alpha.png")
    row("pillow-grey-alpha.png", "PNG", "8-bit integer", 1, 255, "u8")


def refused():
    """Files that must be refused, each for its own reason."""
    os.makedirs("refused", exist_ok=True)
    def into(name):
        return os.path.join("refused", name)
    tifffile.imwrite(into("signed.tif"), i16(), metadata=None, software="")
    tifffile.imwrite(into("double.tif"), f32().astype(np.float64), metadata=None, software="")
    tifffile.imwrite(into("half.tif"), f32().astype(np.float16), metadata=None, software="")
    tifffile.imwrite(into("int32.tif"), u16().astype(np.uint32), metadata=None, software="")
    tifffile.imwrite(into("cmyk.tif"), np.stack([u8()] * 4, -1), photometric="separated", metadata=None, software="")
    Image.fromarray(u8()).convert("P").save(into("palette.tif"))
    Image.fromarray(u8()).convert("P").save(into("palette.png"))
    Image.fromarray(u8() > 100).save(into("one-bit.png"))
    Image.fromarray(u8()).save(into("picture.jpg"))
    Image.fromarray(u8()).save(into("picture.gif"))
    # libtiff through ImageMagick writes 12 bits as they are.
    Image.fromarray(u16()).save(into("16.png"))
    subprocess.run(["convert", into("16.png"), "-depth", "12", "-compress", "None", into("12-bit.tif")], check=True)
    os.remove(into("16.png"))
    fits.PrimaryHDU(np.stack([u8()] * 5)).writeto(into("five-planes.fits"), overwrite=True)
    fits.PrimaryHDU(np.full((HEIGHT, WIDTH), np.nan, np.float32)).writeto(into("all-nan.fits"), overwrite=True)
    fits.PrimaryHDU(np.arange(60, dtype=np.int16).reshape(6, 10)).writeto(into("tiny.fits"), overwrite=True)
    hdu = fits.CompImageHDU(f32(), compression_type="GZIP_2", quantize_level=0.0)
    fits.HDUList([fits.PrimaryHDU(), hdu]).writeto(into("tiles-float.fits"), overwrite=True)
    fits.PrimaryHDU().writeto(into("no-image.fits"), overwrite=True)


all_fits()
all_tiff()
all_by_imagemagick()
all_by_pillow()
refused()
with open("rows.csv", "w", newline="") as f:
    writer = csv.writer(f, lineterminator="\n")
    writer.writerow(["file", "format", "depth", "width", "height", "planes", "fullScale", "pattern", "holes"])
    writer.writerows(rows)
