#!/usr/bin/python3
"""Times Epochrome against a plain OpenCV and SciPy pipeline on the same frames.

The pipeline measures nothing: it is given centre, radius, north angle, sub-Earth latitude and rotation of each frame. The
demo sessions come without a file of their true geometry, so it is taken from Epochrome's own report, made by one run that is
not timed.

The pipeline is a process of its own, as Epochrome is: it reads the frames, maps each of them to the epoch on the pixels of
the reference frame (cv2.remap, Lanczos4; the disks' centres contain the shifts), averages the frames of each band, and
writes a FITS cube and a 16-bit PNG. It corrects no shading, removes no moons and sharpens nothing. Epochrome runs twice, once
for a FITS cube and once for a finished PNG. Each ratio is a median of Epochrome's times divided by that of the pipeline's.

The kernels are timed apart, on the first frame and its map: cv2.remap with Lanczos4 (8 x 8 pixels) and Epochrome's spline
(4 x 4 pixels), on one thread and on two. Both sides keep pixels as 32-bit floats and make a new plane each time. This needs the
classes of the benchmarks (mvn -Pbench test-compile) and is left out without them.

Needs the Debian packages python3-numpy, python3-scipy, python3-opencv, python3-astropy.
"""
import argparse
import json
import os
import resource
import shlex
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
FRAMES = (".fits", ".fit", ".tif", ".tiff", ".png")
RETROGRADE = ("Venus", "Uranus")
KERNEL_ROUNDS = 300


def arguments():
    parser = argparse.ArgumentParser(
        description=__doc__,
        formatter_class=argparse.RawDescriptionHelpFormatter,
        usage="%(prog)s [-h] [--runs RUNS] [--epochrome COMMAND] folder -- OPTIONS",
        epilog="After -- come the options for epochrome combine; if they have --sheet, the sheet names the frames.\n\n"
        "Example: src/bench/ratios.py demo-data/jupiter -- --body jupiter --site 46.2,8.5,480",
    )
    parser.add_argument("folder", type=Path, help="folder with the frames; all images in it are used")
    parser.add_argument("--runs", type=int, default=5, help="runs of each program, in turn (default 5)")
    parser.add_argument("--epochrome", metavar="COMMAND", default=f"java -jar {shlex.quote(str(ROOT / 'target/epochrome.jar'))}",
                        help="command that starts Epochrome (default: the jar in target)")
    parser.add_argument("--pipeline", type=Path, metavar="REPORT", help=argparse.SUPPRESS)
    own = sys.argv[1:]
    after = own.index("--") if "--" in own else len(own)
    given = parser.parse_args(own[:after])
    given.options = own[after + 1 :]
    return given


# The pipeline.


def read(file):
    import numpy as np
    if file.lower().endswith((".fits", ".fit")):
        from astropy.io import fits
        return np.ascontiguousarray(fits.getdata(file)[::-1], dtype=np.float32)
    import cv2
    return cv2.imread(file, cv2.IMREAD_UNCHANGED).astype(np.float32)


def axes(disk):
    """Directions of the pole and of growing longitude in the image, as (right, down)."""
    import numpy as np
    north = np.radians(disk["northAngleDeg"])
    sign = -1 if disk["mirrored"] else 1
    return (-np.sin(north), -np.cos(north)), (sign * np.cos(north), -sign * np.sin(north))


def rotated_map(width, height, reference, frame, ephemeris, turned):
    """Where each pixel of the output lies in a frame.

    turned: angle by which the surface turns from the frame to the epoch, radians
    """
    import numpy as np
    tilt = np.radians(ephemeris["subEarthLatitudeCentricDeg"])
    sin, cos = np.sin(tilt), np.cos(tilt)
    apparent = ephemeris["polarDiameterArcsec"] / ephemeris["equatorialDiameterArcsec"]
    inverse = cos**2 / (apparent**2 - sin**2)
    pole_to, side_to = axes(reference)
    pole_from, side_from = axes(frame)
    y, x = np.mgrid[:height, :width]
    right = (x - reference["x"]) / reference["equatorialRadiusPx"]
    down = (y - reference["y"]) / reference["equatorialRadiusPx"]
    pole = right * pole_to[0] + down * pole_to[1]
    side = right * side_to[0] + down * side_to[1]
    a = cos**2 + sin**2 * inverse
    b = pole * sin * cos * (inverse - 1)
    c = pole**2 * (sin**2 + cos**2 * inverse) + side**2 - 1
    root = b**2 - a * c
    depth = (-b + np.sqrt(np.maximum(root, 0))) / a
    body_x, body_z = cos * depth - sin * pole, sin * depth + cos * pole
    then_x = body_x * np.cos(turned) + side * np.sin(turned)
    then_y = side * np.cos(turned) - body_x * np.sin(turned)
    then_depth = cos * then_x + sin * body_z
    on_disk = (root > 0) & (then_depth > 0)
    then_pole = np.where(on_disk, cos * body_z - sin * then_x, pole)
    then_side = np.where(on_disk, then_y, side)
    radius = frame["equatorialRadiusPx"]
    columns = frame["x"] + radius * (then_pole * pole_from[0] + then_side * side_from[0])
    rows = frame["y"] + radius * (then_pole * pole_from[1] + then_side * side_from[1])
    return columns.astype(np.float32), rows.astype(np.float32)


def map_of(report, frame, width, height):
    import numpy as np
    sense = -1 if report["body"] in RETROGRADE else 1
    turned = sense * np.radians(frame["rotationDeg"])
    return rotated_map(width, height, report["output"]["disk"], frame["disk"], frame["ephemeris"], turned)


def pipeline(report_file, folder):
    import cv2
    import numpy as np
    from astropy.io import fits
    from scipy import ndimage
    cv2.setNumThreads(2)
    report = json.loads(report_file.read_text())
    width, height = report["output"]["width"], report["output"]["height"]
    bands = {}
    for frame in report["frames"]:
        pixels = read(frame["file"])
        sky = ndimage.median(pixels[:16])
        columns, rows = map_of(report, frame, width, height)
        turned = cv2.remap(pixels - sky, columns, rows, cv2.INTER_LANCZOS4)
        bands.setdefault(frame["band"], []).append(turned / np.percentile(turned, 99))
    assigned = [report["assign"][colour] for colour in ("red", "green", "blue")]
    cube = np.stack([np.mean(bands[band], axis=0, dtype=np.float32) for band in assigned])
    fits.PrimaryHDU(cube[:, ::-1]).writeto(folder / "pipeline.fits", overwrite=True)
    linear = np.clip(cube / cube.max(), 0, 1)
    encoded = np.where(linear <= 0.0031308, 12.92 * linear, 1.055 * linear ** (1 / 2.4) - 0.055)
    cv2.imwrite(str(folder / "pipeline.png"), np.rint(65535 * np.dstack(encoded[::-1])).astype(np.uint16))


# The comparison.


def timed(command):
    """Elapsed and processor time of a process with its children, s."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    clock = time.perf_counter()
    done = subprocess.run(command, capture_output=True, text=True)
    elapsed = time.perf_counter() - clock
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    if done.returncode:
        sys.exit(f"{shlex.join(command)}\n{done.stderr or done.stdout}")
    return elapsed, after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def whole_processes(combine, report, work, runs):
    import numpy as np
    programs = {
        "pipeline, cube and PNG": [sys.executable, __file__, str(work), "--pipeline", str(report)],
        "Epochrome, cube": combine + ["--out", str(work / "cube.fits")],
        "Epochrome, finished PNG": combine + ["--out", str(work / "picture.png")],
    }
    times = {name: [] for name in programs}
    for _ in range(runs):
        for name, command in programs.items():
            times[name].append(timed(command))
    print(f"Whole processes, medians of {runs} runs")
    first = None
    for name, rows in times.items():
        elapsed, processor = np.median(rows, axis=0)
        first = first or (elapsed, processor)
        print(f"  {name:24} {elapsed:7.2f} s elapsed, ratio {elapsed / first[0]:5.2f}"
              f" {processor:7.2f} s of processor time, ratio {processor / first[1]:5.2f}")


def kernels(report, work):
    import cv2
    import numpy as np
    classes = ROOT / "target/bench-classes"
    if not (classes / "org/epochrome/bench/RemapTime.class").exists():
        print("The kernels were not timed: run mvn -Pbench test-compile first.")
        return
    frame = report["frames"][0]
    pixels = read(frame["file"])
    height, width = pixels.shape
    columns, rows = map_of(report, frame, width, height)
    file = work / "kernel.raw"
    file.write_bytes(b"".join(plane.astype("<f4").tobytes() for plane in (pixels, columns, rows)))
    java = ["java", "-cp", f"{classes}{os.pathsep}{ROOT / 'target/classes'}", "org.epochrome.bench.RemapTime"]
    ours = subprocess.run(java + [str(file), str(width), str(height), str(KERNEL_ROUNDS)],
                          check=True, capture_output=True, text=True).stdout.split("\n")
    print(f"Kernels, {width} x {height} pixels, {KERNEL_ROUNDS} rounds, ns per pixel (median elapsed / mean processor time)")
    for line in filter(None, ours):
        threads, *numbers = line.split()
        cv2.setNumThreads(int(threads))
        samples = []
        for _ in range(2 * KERNEL_ROUNDS):
            clock, processor = time.perf_counter_ns(), time.process_time_ns()
            cv2.remap(pixels, columns, rows, cv2.INTER_LANCZOS4)
            samples.append((time.perf_counter_ns() - clock, time.process_time_ns() - processor))
        elapsed, processor = np.transpose(samples[KERNEL_ROUNDS:])
        theirs = np.array([np.median(elapsed), np.mean(processor)]) / (width * height)
        alone, whole = np.array(numbers, dtype=float).reshape(2, 2)
        print(f"  threads: {threads}")
        print(f"    cv2.remap, Lanczos4                 {theirs[0]:6.1f} / {theirs[1]:6.1f}")
        for name, own in (("Epochrome's spline", alone), ("with the spline's coefficients", whole)):
            print(f"    {name:35} {own[0]:6.1f} / {own[1]:6.1f}, ratio {own[0] / theirs[0]:.2f} / {own[1] / theirs[1]:.2f}")


def main():
    given = arguments()
    if given.pipeline:
        pipeline(given.pipeline, given.folder)
        return
    frames = sorted(str(f) for f in given.folder.iterdir() if f.suffix.lower() in FRAMES)
    named = [] if any(o.startswith("--sheet") for o in given.options) else frames
    combine = shlex.split(given.epochrome) + ["combine", "--overwrite", *given.options, *named]
    with tempfile.TemporaryDirectory() as folder:
        work = Path(folder)
        report = work / "report.json"
        timed(combine + ["--out", str(work / "first.fits"), "--report", str(report)])
        print("The pipeline is given the geometry that Epochrome reports.")
        whole_processes(combine, report, work, given.runs)
        kernels(json.loads(report.read_text()), work)


if __name__ == "__main__":
    main()
