"""Writes numerals.csv and unseen.csv: what Unicode says of characters, apart from the Rust code.

Needs unicodedata2 (the Unicode Character Database as a library). numerals.csv: every character with a
Numeric_Value, or written out (compatibility decomposition, NFKD) with one that has; code, value, and
the code points it is written out with. unseen.csv: every range of one General_Category among controls
(Cc), formatting characters (Cf), private use (Co) and separators of lines and paragraphs (Zl, Zp).
Run: python3 characters.py
"""

from pathlib import Path

import unicodedata2 as unicode

HERE = Path(__file__).parent
CHARACTERS = [chr(code) for code in range(0x110000) if not 0xD800 <= code < 0xE000]
VERSION = unicode.unidata_version


def value_of(character):
    return unicode.numeric(character, None)


def numerals():
    for character in CHARACTERS:
        value = value_of(character)
        written = unicode.normalize("NFKD", character)
        if written == character or all(value_of(each) is None for each in written):
            written = ""
        if value is not None or written:
            told = "" if value is None else f"{value:.6g}"
            yield f"{ord(character):04X},{told},{' '.join(f'{ord(each):04X}' for each in written)}"


def unseen():
    first = last = kind = None
    for character in CHARACTERS + [None]:
        now = unicode.category(character) if character else None
        if now == kind and character and ord(character) == last + 1:
            last += 1
            continue
        if kind in ("Cc", "Cf", "Co", "Zl", "Zp"):
            yield f"{first:04X},{last:04X},{kind}"
        if character:
            first = last = ord(character)
            kind = now


for name, columns, rows in [
    ("numerals.csv", "code,value,written out", numerals()),
    ("unseen.csv", "first,last,category", unseen()),
]:
    text = "\n".join([f"{columns} (Unicode {VERSION})", *rows]) + "\n"
    (HERE / name).write_text(text, encoding="ascii")
