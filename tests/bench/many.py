"""Writes made-up formulas as a stream, a line of JSON each: many.py COUNT [SEED] | sudsmark check --stream.

Bubble bars of twelve lines as they come in from spreadsheets: in grams, without users, mask or scale,
with a scent of which a part is not declared. With `--folder FOLDER` they are written as files instead.
"""

import argparse
import json
import os
import random
import sys

DRY = ["sodium bicarbonate", "cream of tartar", "corn starch", "SLSA", "SCI powder", "kaolin",
       "citric acid", "tapioca starch", "sea salt"]
WET = ["glycerin", "cocamidopropyl betaine", "polysorbate 80", "rice bran oil", "cocoa butter",
       "sweet almond oil", "castor oil"]


def formula(number, dice):
    lines = [f'formula "bar {number}"', "  product bubble bar", "  forming pressed",
             "  market GB, EU", "  piece 80 g", f"  bath {dice.randint(20, 60)} g in 150 l at 38 C",
             f"  water {dice.choice(['soft', 'medium', 'hard'])}", 'phase "dry"']
    lines += [f"  {dice.randint(20, 400)} g {name}" for name in dice.sample(DRY, 6)]
    lines.append('phase "wet"')
    lines += [f"  {dice.randint(5, 60)} g {name}" for name in dice.sample(WET, 5)]
    lines += [f'  {dice.randint(5, 30)} g "Sea Fig"', 'fragrance "Sea Fig"', "  limit 11 %",
              "  6 - 8 % linalool", "  0.5 % citral"]
    return "\n".join(lines) + "\n"


def main():
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("count", type=int)
    options.add_argument("seed", type=int, nargs="?", default=1)
    options.add_argument("--folder")
    asked = options.parse_args()
    dice = random.Random(asked.seed)
    if asked.folder:
        os.makedirs(asked.folder, exist_ok=True)
    for number in range(asked.count):
        name = f"{number:07}.formula"
        text = formula(number, dice)
        if asked.folder:
            with open(os.path.join(asked.folder, name), "w", encoding="utf-8") as file:
                file.write(text)
        else:
            sys.stdout.write(json.dumps({"file": name, "text": text}) + "\n")


main()
