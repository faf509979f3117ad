"""Lives fitted by the program beside R's survival package: seeded random lists of failed and surviving parts."""
import json
import math
import random
import subprocess
import tempfile
import pathlib

from camside_runner import SOURCE, camside, main, unittest

LISTS = 60
AGREE = 1e-9  # they agreed to 1e-13 when this was written

R = """
suppressMessages(library(survival))
for (list in split(read.csv(file("stdin")), ~list)) {
  fit <- survreg(Surv(km, failed) ~ 1, list, dist = "weibull", control = survreg.control(rel.tolerance = 1e-14))
  at <- predict(fit, data.frame(x = 0), type = "uquantile", p = c(0.1, 0.5), se.fit = TRUE)
  z <- qnorm(0.975)
  of <- function(middle, se) exp(middle + z * se * c(0, -1, 1))
  se <- sqrt(diag(fit$var))
  cat(format(c(of(fit$coefficients, se[1]), of(-log(fit$scale), se[2])[c(1, 2, 3)],
               of(at$fit[1], at$se.fit[1]), of(at$fit[2], at$se.fit[2])), digits = 15), "\\n")
}
"""
KEYS = [f"{of}{end}" for of in ("characteristic", "shape", "tenth", "half") for end in ("", "_low", "_high")]


def any_list(chance):
    """(km, failed): Weibull lives, seen up to some other distance; at least three failures."""
    while True:
        shape, scale, n = chance.uniform(0.7, 5), chance.uniform(2e4, 2e5), chance.randint(6, 80)
        lives = [(round(scale * (-math.log(chance.random())) ** (1 / shape) + 1, 1), round(chance.uniform(0.2, 1.8) * scale, 1))
                 for _ in range(n)]
        parts = [(min(life, seen), life <= seen) for life, seen in lives]
        if sum(failed for _, failed in parts) >= 3 and len({km for km, failed in parts if failed}) >= 3:
            return parts


def record_of(number, parts):
    return {"id": f"00000000-0000-4000-8000-{number:012d}", "kind": "life", "taken": "2026-11-26T12:00:00+00:00",
            "entered": {"from": "list", "parts": [{"distance": f"{km} km", "failed": failed} for km, failed in parts]}}


def r_says(lists):
    rows = ["list,km,failed"] + [f"{i},{km},{int(failed)}" for i, parts in enumerate(lists) for km, failed in parts]
    done = subprocess.run(["Rscript", "-e", R], input="\n".join(rows) + "\n", capture_output=True, text=True, timeout=120, check=True)
    return [[float(word) for word in line.split()] for line in done.stdout.splitlines()]


def camside_says(lists):
    file = json.loads((SOURCE / "examples" / "life.json").read_text())
    file["records"] = [record_of(i, parts) for i, parts in enumerate(lists)]
    with tempfile.TemporaryDirectory() as folder:
        path = pathlib.Path(folder) / "lists.json"
        path.write_text(json.dumps(file))
        ran = camside("solve", "--json", path)
    return [{f["key"]: f["value"] for f in record["figures"]} for record in json.loads(ran.out)["records"]]


class BesideR(unittest.TestCase):
    def test_curves_and_their_intervals_agree(self):
        chance = random.Random(20261126)
        lists = [any_list(chance) for _ in range(LISTS)]
        ours, theirs = camside_says(lists), r_says(lists)
        self.assertEqual((len(ours), len(theirs)), (LISTS, LISTS))
        for i, (figures, wanted) in enumerate(zip(ours, theirs)):
            for key, value in zip(KEYS, wanted, strict=True):
                self.assertAlmostEqual(figures[key] / value, 1.0, delta=AGREE, msg=f"list {i}: {key}")


main()
