"""Pictures with known blur, noise, contrast and scale, by NumPy, SciPy and scikit-image.

usage: pictures.py FOLDER

Leaves PNG and JPEG files in FOLDER and prints a line of CSV for each, with what was put into it:
file, x1, y1, x2, y2, pixels_per_mm, blur_px, noise, contrast. An empty field is not known.

Keys are drawn here from invented patterns, four to eight times finer than the picture, turned,
blurred by SciPy's Gaussian filter and averaged over each pixel. blur_px is the standard deviation of filter and
pixel together. Photographs are those that scikit-image's package holds; they are blurred by a known
amount, and come in pairs: as they are, and blurred.
"""

import sys
from pathlib import Path

import numpy as np
from PIL import Image
from scipy import ndimage
from skimage import data, draw, filters

PIXEL = 1 / np.sqrt(12)
BLADE_MM = 28.0


def outline(depths):
    """A blade of five cuts, shoulder at 0, in mm: along, and up from its back."""
    top, step, first, pitch, flat = 8.0, 0.381, 5.867, 3.967, 0.79
    points = [(0.0, 0.0), (0.0, top)]
    for cut, depth in enumerate(depths):
        middle, height = first + cut * pitch, top - 0.4 - step * depth
        points += [(middle - flat / 2, height), (middle + flat / 2, height)]
    points += [(BLADE_MM - 3.0, 6.0), (BLADE_MM, 2.5), (BLADE_MM, 0.0)]
    bow = [(-1.0, -2.0), (-7.0, -2.0), (-7.0, 10.0), (-1.0, 10.0), (-1.0, 9.0), (-0.01, 9.0)]
    return np.array(points + [(0.0, 0.0)]), np.array(bow)


def key_picture(pixels_per_mm, blur, noise, contrast, angle, depths, base, rng):
    """The picture as floats, and its marks."""
    blade, bow = outline(depths)
    # Fine pixels may not blur the edges themselves; wide blurs need fewer.
    finer = 8 if blur < 1.0 else 4
    turn = np.deg2rad(angle)
    turned = np.array([[np.cos(turn), np.sin(turn)], [-np.sin(turn), np.cos(turn)]])
    fine = pixels_per_mm * finer
    both = np.vstack([blade, bow]) @ turned * fine
    least, most = both.min(axis=0), both.max(axis=0)
    room = 4 * pixels_per_mm * finer + 4 * blur * finer
    width, height = (np.ceil((most - least + 2 * room) / finer) * finer).astype(int)
    canvas = np.zeros((height, width), np.float32)
    for shape in (blade, bow):
        xy = shape @ turned * fine - least + room
        rows, columns = draw.polygon(xy[:, 1], xy[:, 0], canvas.shape)
        canvas[rows, columns] = 1.0
    canvas = ndimage.gaussian_filter(canvas, blur * finer, truncate=5.0)
    picture = canvas.reshape(height // finer, finer, width // finer, finer).mean(axis=(1, 3))
    picture = base + contrast * picture + rng.normal(0.0, noise, picture.shape)
    ends = np.array([(0.0, 4.0), (BLADE_MM, 4.0)]) @ turned * fine - least + room
    # A polygon's corner at n lies in the middle of fine pixel n.
    return picture, (ends + 0.5) / finer


def as_bytes(picture):
    return np.clip(np.rint(picture), 0, 255).astype(np.uint8)


def main(folder):
    rng = np.random.default_rng(20260801)

    def row(name, marks, scale="", blur="", noise="", contrast=""):
        (x1, y1), (x2, y2) = marks
        print(name, f"{x1:.3f}", f"{y1:.3f}", f"{x2:.3f}", f"{y2:.3f}", scale, blur, noise, contrast, sep=",")

    # pixels a millimetre, blur of the filter, noise, contrast, angle
    cases = [
        (4, 0.5, 2, 110, 0), (4, 0.8, 4, 90, 17), (6, 0.6, 1, 120, 31), (8, 0.5, 3, 100, 90),
        (8, 1.0, 6, 80, 45), (10, 0.7, 2, 140, 5), (10, 1.5, 4, 100, 62), (12, 2.0, 3, 90, 120),
        (12, 0.6, 10, 110, 200), (16, 3.0, 2, 100, 11), (16, 1.2, 5, 60, 275), (20, 4.0, 4, 90, 33),
        (20, 0.8, 2, 130, 78), (24, 6.0, 3, 100, 3), (28, 2.5, 5, 80, 150), (5, 1.2, 1, 100, 22),
    ]
    for index, (scale, blur, noise, contrast, angle) in enumerate(cases):
        depths = rng.integers(0, 10, 5)
        picture, marks = key_picture(scale, blur, noise, contrast, angle, depths, 60, rng)
        total = f"{np.hypot(blur, PIXEL):.4f}"
        Image.fromarray(as_bytes(picture)).save(folder / f"key-{index}.png")
        row(f"key-{index}.png", marks, scale, total, noise, contrast)
        if index % 3 == 1:
            for quality in (95, 80, 60):
                name = f"key-{index}-q{quality}.jpg"
                Image.fromarray(as_bytes(picture)).save(folder / name, quality=quality)
                row(name, marks, scale, total, noise, contrast)

    # A picture sharpened by a mask reads crisper than it was: only the caveat is checked.
    picture, marks = key_picture(12, 1.5, 1, 100, 20, [2, 7, 4, 1, 6], 60, rng)
    sharpened = filters.unsharp_mask(picture / 255, radius=2, amount=1.5) * 255
    Image.fromarray(as_bytes(sharpened)).save(folder / "sharpened.png")
    row("sharpened.png", marks)

    # Plain and plain noise: no edge is there.
    for name, noise in (("plain.png", 0), ("noise.png", 12)):
        picture = 120 + rng.normal(0, noise, (300, 400)) if noise else np.full((300, 400), 120.0)
        Image.fromarray(as_bytes(picture)).save(folder / name)
        row(name, ((60, 150), (340, 150)), noise=noise)

    # Photographs from the package: edges of coins, a tripod against the sky, a cup.
    photographs = [
        ("coins", data.coins(), ((20, 60), (360, 60))),
        ("camera", data.camera(), ((200, 250), (420, 330))),
        ("coffee", np.asarray(Image.fromarray(data.coffee()).convert("L")), ((150, 200), (450, 250))),
    ]
    for name, grey, marks in photographs:
        for blur in (0, 1, 2, 4):
            blurred = ndimage.gaussian_filter(grey.astype(float), blur) if blur else grey
            Image.fromarray(as_bytes(blurred)).save(folder / f"photo-{name}-{blur}.png")
            row(f"photo-{name}-{blur}.png", marks, blur=blur)



main(Path(sys.argv[1]))
