"""Writes sight.csv: what pictures tell about depths, in 40 digits, apart from the Rust code.

Needs mpmath. Overlaps of blurred footprints by adaptive quadrature, eigenvalues of the whole matrix,
the determinant reduction from the eigenvalues. Run: python3 sight.py > sight.csv
"""

from mpmath import mp, mpf, quad, erf, exp, sqrt, pi, log, expm1, matrix, eigsy, log1p

mp.dps = 40

# id, cuts, depths, step, pitch, flat
FAMILIES = [
    ("ten-depth-five-cuts", 5, 10, "0.381", "3.967", "0.79"),
    ("ten-depth-six-cuts", 6, 10, "0.381", "3.967", "0.79"),
    ("six-depth-five-cuts", 5, 6, "0.584", "3.81", "2.13"),
    ("european-five-cuts", 5, 9, "0.5", "4.0", "0.9"),
    ("european-six-cuts", 6, 9, "0.5", "4.0", "0.9"),
]

# focal length, width on full frame, pixels, aperture, contrast, smear, frames, distance in mm
VIEWS = [
    ("26", "34.6", 4032, "3.2", "20", "0.1", 1, 300),
    ("26", "34.6", 4032, "3.2", "20", "0.1", 1, 1000),
    ("26", "34.6", 4032, "3.2", "10", "0.3", 1, 4000),
    ("26", "34.6", 4032, "3.2", "20", "0.1", 1, 20000),
    ("1200", "36", 6000, "50", "20", "0.2", 1, 60000),
    ("1200", "36", 6000, "50", "20", "0.2", 2, 400000),
    ("14", "37.7", 1920, "1", "20", "1", 4, 700),
    ("28", "37.7", 1920, "2", "10", "0.5", 9, 5700),
    ("200", "37.7", 3840, "25", "40", "0.5", 16, 5000),
    ("600", "34.6", 5184, "16", "10", "0.3", 1, 150000),
]

# How well an edge is marked, in pixels
OBSERVERS = [("person", "0.2"), ("software", "0.1")]


def normal_below(z):
    return (1 + erf(z / sqrt(mpf(2)))) / 2


def normal_density(z):
    return exp(-z * z / 2) / sqrt(2 * pi)


def blurred(x, pitch, flat, blur):
    foot, half = pitch - flat / 2, flat / 2
    ramp = lambda t: t * normal_below(t / blur) + blur * normal_density(t / blur)
    return (ramp(x + foot) - ramp(x + half) - ramp(x - half) + ramp(x - foot)) / (foot - half)


def overlap(apart, pitch, flat, blur):
    shift = apart * pitch
    reach = pitch + 9 * blur
    low, high = shift - reach, reach
    if low >= high:
        return mpf(0)
    pieces = 24
    points = [low + (high - low) * k / pieces for k in range(pieces + 1)]
    return quad(
        lambda x: blurred(x, pitch, flat, blur) * blurred(x - shift, pitch, flat, blur), points
    )


def main():
    print("family,focal_mm,frame_mm,pixels,aperture_mm,contrast,smear_mm,frames,distance_mm,observer,gsd_mm,blur_mm,precision,sigma_mm")
    for name, cuts, depths, step, pitch, flat in FAMILIES:
        step, pitch, flat = mpf(step), mpf(pitch), mpf(flat)
        for view in VIEWS:
            focal, frame, pixels, aperture, contrast, smear, frames, distance = (mpf(v) for v in view)
            pixel = frame * distance / (focal * pixels)
            spot = mpf("0.42") * mpf("5.5e-4") * distance / aperture
            blur = sqrt((mpf("0.7") * pixel) ** 2 + spot**2 + smear**2 / 12)
            together = min(contrast * sqrt(frames), mpf(100))
            across = (together / pixel) ** 2 / (2 * sqrt(pi) * blur)
            entries = [across * overlap(k, pitch, flat, blur) for k in range(cuts)]
            information = matrix(cuts, cuts)
            for i in range(cuts):
                for j in range(cuts):
                    information[i, j] = entries[abs(i - j)]
            eigenvalues = eigsy(information, eigvals_only=True)
            prior = 12 / (step**2 * (mpf(depths) ** 2 - 1))
            mean = sum(log1p(mpf("1.4") * value / prior) for value in eigenvalues) / cuts
            precision = prior * expm1(mean)
            for observer, floor in OBSERVERS:
                sigma = sqrt(1 / precision + (mpf(floor) * pixel) ** 2 + mpf("0.07") ** 2)
                figures = [mp.nstr(value, 15) for value in (pixel, blur, precision, sigma)]
                print(",".join([name, *(str(v) for v in view), observer, *figures]))


main()
