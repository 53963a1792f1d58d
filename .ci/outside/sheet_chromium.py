#!/usr/bin/python3
"""Prints every shop-sheet.html below the given folders with headless Chromium and judges the pages.

Usage: sheet_chromium.py DIR...
Asks of each sheet, on A4 and on Letter, read with poppler (pdftotext -bbox): all words between the
margins of their page, and a count of pages within 2 of the PDF that lies beside it (Letter: within a
tenth more, its pages are shorter). Asks of the page on the screen, by its own measuring: nothing wider
than the window, no element beyond the column of text; and that a browser finds the same numbers
(`<data>`) that stand in the file. Fails when it looked at no sheet.
"""

import html
import json
import re
import subprocess
import sys
import tempfile
from pathlib import Path

SECONDS = 120
MM = 72 / 25.4
# margins of a printed page, mm; its foot stands in the lower one
SIDE, TOP, FOOT = 12, 13, 4
PAPERS = {"A4": (210, 297), "Letter": (215.9, 279.4)}
PAGES_APART = 2

MEASURE = """
<script>
addEventListener('load', () => {
  const column = document.body.getBoundingClientRect();
  const beyond = [...document.body.querySelectorAll('*')]
    .filter((e) => !e.closest('svg') && !e.closest('.scroll table'))
    .filter((e) => e.getBoundingClientRect().right > column.right + 0.5)
    .map((e) => e.tagName + ' ' + e.textContent.slice(0, 40));
  const cells = [...document.querySelectorAll('td, th')]
    .filter((e) => e.scrollWidth > e.clientWidth + 1)
    .map((e) => e.tagName + ' ' + e.textContent.slice(0, 40));
  document.documentElement.setAttribute('data-measured', JSON.stringify({
    wide: document.documentElement.scrollWidth - innerWidth,
    beyond, cells,
    numbers: document.querySelectorAll('data').length,
    faces: [...document.fonts].filter((f) => f.status === 'loaded').length,
  }));
});
</script>
"""


def chromium(folder, *words):
    """Runs it with a profile of its own, no network, no first steps."""
    return subprocess.run(
        [
            "chromium",
            "--headless",
            "--no-sandbox",
            "--disable-gpu",
            "--disable-background-networking",
            "--no-first-run",
            f"--user-data-dir={folder}/profile",
            *words,
        ],
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        errors="replace",
        timeout=SECONDS,
        check=True,
    ).stdout


def pages_of(pdf):
    told = subprocess.run(["pdfinfo", pdf], capture_output=True, text=True, check=True).stdout
    return int(re.search(r"^Pages: +(\d+)", told, re.MULTILINE).group(1))


def outside(pdf, paper):
    """Words that reach into the margins."""
    boxes = subprocess.run(
        ["pdftotext", "-bbox", pdf, "-"], capture_output=True, text=True, check=True
    ).stdout
    width, height = (side * MM for side in PAPERS[paper])
    flaws = []
    for number, page in enumerate(boxes.split("<page ")[1:], 1):
        for x0, y0, x1, y1, word in re.findall(
            r'<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*?)</word>',
            page,
        ):
            x0, y0, x1, y1 = map(float, (x0, y0, x1, y1))
            # half a point for letters that lean out of their boxes
            if (
                x0 < SIDE * MM - 0.5
                or x1 > width - SIDE * MM + 0.5
                or y0 < TOP * MM - 4
                or y1 > height - FOOT * MM
            ):
                flaws.append(f"page {number}: {html.unescape(word)} at {x0:.0f} to {x1:.0f}")
    return flaws


def printed(text, paper, folder):
    # the paper is the printer's: here it is told
    source = Path(folder, f"{paper}.html")
    source.write_text(text.replace("</head>", f"<style>@page {{ size: {paper} }}</style></head>"))
    pdf = Path(folder, f"{paper}.pdf")
    chromium(folder, f"--print-to-pdf={pdf}", "--no-pdf-header-footer", source.as_uri())
    return str(pdf)


def measured(text, folder):
    # what measures is a script, which the sheet itself forbids
    open_text = re.sub(r'<meta http-equiv="Content-Security-Policy"[^>]*>', "", text)
    source = Path(folder, "measured.html")
    source.write_text(open_text.replace("</head>", f"{MEASURE}</head>"))
    dom = chromium(folder, "--window-size=900,1200", "--dump-dom", source.as_uri())
    return json.loads(html.unescape(re.search(r'data-measured="([^"]*)"', dom).group(1)))


def judge(path):
    text = path.read_text(encoding="utf-8")
    ours = pages_of(str(path.with_suffix(".pdf")))
    flaws, counts = [], {}
    with tempfile.TemporaryDirectory() as folder:
        for paper in PAPERS:
            pdf = printed(text, paper, folder)
            counts[paper] = pages_of(pdf)
            flaws += [f"{paper} {flaw}" for flaw in outside(pdf, paper)]
            most = ours + PAGES_APART + (ours // 10 if paper == "Letter" else 0)
            if not ours - PAGES_APART <= counts[paper] <= most:
                flaws.append(f"{counts[paper]} pages of {paper}, {ours} in the PDF")
        found = measured(text, folder)
    if found["wide"] > 0:
        flaws.append(f"{found['wide']} px wider than the window")
    flaws += [f"beyond the column: {e}" for e in found["beyond"]]
    flaws += [f"wider than its cell: {e}" for e in found["cells"]]
    numbers = text.count("<data ")
    if numbers == 0 or found["numbers"] != numbers:
        flaws.append(f"{found['numbers']} numbers found of {numbers}")
    if found["faces"] != 2:
        flaws.append(f"{found['faces']} of 2 faces loaded")
    counted = ", ".join(f"{count} of {paper}" for paper, count in counts.items())
    print(f"{path}: {numbers} numbers, pages: {ours} in the PDF, {counted} printed by Chromium")
    return flaws


def main():
    paths = sorted(p for arg in sys.argv[1:] for p in Path(arg).rglob("shop-sheet.html"))
    flaws = [f"{path}: {flaw}" for path in paths for flaw in judge(path)]
    for flaw in flaws:
        print(flaw)
    print(f"{len(paths)} shop sheets, {len(flaws)} flaws")
    return 1 if flaws or not paths else 0


if __name__ == "__main__":
    sys.exit(main())
