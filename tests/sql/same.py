"""Runs the queries of sql/ in DuckDB or chDB on an exported folder and holds every number against `stepboard report`.

usage: same.py duckdb|chdb FOLDER REPORT.json SQL-FOLDER [csv]

FOLDER holds `results`, as `stepboard export` wrote it. A number of the report agrees where the query's lies within half a
unit of its last digit shown. Ends with the number of values that were compared, or with exit code 1.
"""

import csv
import json
import os
import sys
from pathlib import Path

engine, folder, told, queries = sys.argv[1:5]
os.chdir(folder)
report = json.loads(Path(told).read_text())
texts = {path.stem: path.read_text() for path in Path(queries).glob("*.sql")}
ENGINES = {"duckdb", "clickhouse"}
VIEWS = ["first"]
DECIMALS = 6
# Half a unit of the last digit, and what a double cannot hold of it.
HALF = 0.5 * 10**-DECIMALS * (1 + 1e-6)


def duckdb_engine():
    import duckdb

    base = duckdb.connect()

    def run(text):
        found = base.execute(text)
        names = [column[0] for column in found.description]
        return [dict(zip(names, row)) for row in found.fetchall()]

    return "duckdb", run


def chdb_engine():
    from chdb import session

    base = session.Session()

    def run(text):
        body = text.strip().rstrip(";")
        if body.split("\n", 1)[0].startswith("--"):
            body = "\n".join(line for line in body.split("\n") if not line.startswith("--"))
        if body.lstrip().startswith("create"):
            base.query(body)
            return []
        lines = str(base.query(body, "JSONEachRow")).splitlines()
        return [json.loads(line) for line in lines if line]

    return "clickhouse", run


name, run = {"duckdb": duckdb_engine, "chdb": chdb_engine}[engine]()


def statements(text):
    """The statements of a file; no text of ours has a semicolon inside of one."""
    return [part for part in text.split(";") if part.strip()]


for view in [name, *VIEWS]:
    for statement in statements(texts[view]):
        run(statement)
found = {stem: run(text.strip().rstrip(";")) for stem, text in texts.items() if stem not in ENGINES and stem not in VIEWS}

compared, wrong = 0, []


def same(what, ours, theirs):
    global compared
    compared += 1
    if ours is None or theirs is None or isinstance(ours, str):
        alike = ours == theirs
    elif isinstance(ours, int) and not isinstance(ours, bool):
        alike = ours == int(theirs)
    else:
        alike = abs(ours - float(theirs)) <= HALF
    if not alike:
        wrong.append(f"{what}: the report says {ours}, the query {theirs}")


def keyed(rows, *names):
    return {tuple(row[name] for name in names): row for row in rows}


def whole(what, ours, theirs):
    same(f"{what}: how many", len(ours), len(theirs))
    if set(ours) != set(theirs):
        wrong.append(f"{what}: {sorted(set(ours) ^ set(theirs), key=str)[:5]} on one side alone")
    return [(key, ours[key], theirs[key]) for key in ours if key in theirs]


same("answers", report["answers"] + report["decisions"], run("select count(*) as answers_in_all from answers")[0]["answers_in_all"])
same("counted", report["counted"], run("select count(*) as counted from first_answers")[0]["counted"])
for key, ours, theirs in whole("people", keyed(report["people"], "person"), keyed(found["crew"], "person")):
    for a, b in [("answers", "answered"), ("right", "right_answers"), ("sure_and_wrong", "sure_wrong")]:
        same(f"{key} {a}", ours[a], theirs[b])

slips = {}
for row in found["slips"]:
    slips.setdefault((row["family"], row["version"]), {})[row["slip"]] = int(row["answered"])
families = whole(
    "families", keyed(report["families"], "family", "version"), keyed(found["families"], "family", "version")
)
for key, ours, theirs in families:
    pairs = ["asked", "difficulty", "luck", "with_rest", "upper_less_lower"]
    for a, b in [*((one, one) for one in pairs), ("right", "right_answers"), ("sure_and_wrong", "sure_wrong")]:
        same(f"{key} {a}", ours[a], theirs[b])
    low, high = ours["with_rest_95"] or (None, None)
    same(f"{key} from", low, theirs["from_95"])
    same(f"{key} to", high, theirs["to_95"])
    same(f"{key} goes not", int("goes-not" in [look["flag"] for look in ours["look"]]), theirs["goes_not"])
    for slip in {*ours["slips"], *slips.get(key, {})}:
        same(f"{key} {slip}", ours["slips"].get(slip, 0), slips.get(key, {}).get(slip, 0))

sets = {(one["set"],): one["reliability"] for one in report["sets"] if one["reliability"]}
for key, ours, theirs in whole("sets", sets, keyed(found["sets"], "set_name")):
    for one in ["people", "families", "mean_right", "variance", "kr20", "standard_error"]:
        same(f"{key} {one}", ours[one], theirs[one])

# What the report does not say, reckoned here from the exported lines alone.
lines = [json.loads(line) for path in Path("results").glob("answers/*/*.ndjson") for line in path.open()]
same("sure and wrong", sum(line["sure_and_wrong"] for line in lines if not line["voided"]), len(found["sure"]))
same("some answers are voided and most are not", True, 0 < sum(line["voided"] for line in lines) < len(lines) / 2)
decisions = sum(1 for line in lines if line["kind"] == "walk" and line["guess"] == 0.5 and line["seconds"] is None)
same("what decisions of walks say", report["decisions"], decisions)
same("some decisions are there", True, decisions > 0)
names = [(line["device"], line["sequence"], line["family"]) for line in lines]
same("each answer once", len(names), len(set(names)))
gives = [json.loads(line) for line in Path("results/competencies.ndjson").open()]
of_family = {}
for pair in gives:
    of_family.setdefault(pair["family"], []).append(pair["competency"])
first = {}
for line in sorted(lines, key=lambda line: (-1 if line["moment"] is None else line["moment"], line["device"], line["sequence"])):
    if line["kind"] == "check" and line["help"] == "none":
        first.setdefault((line["person"], line["family"], line["version"]), line)
board = {}
for line in (line for line in first.values() if not line["voided"]):
    for slug in of_family.get(line["family"], []):
        cell = board.setdefault((line["person"], slug), {"answered": 0, "right_answers": 0, "sure_wrong": 0})
        for key, value in [("answered", 1), ("right_answers", line["is_right"]), ("sure_wrong", line["sure_and_wrong"])]:
            cell[key] += value
for key, ours, theirs in whole("competencies", board, keyed(found["competencies"], "person", "competency")):
    for one in ours:
        same(f"{key} {one}", ours[one], theirs[one])

if "csv" in sys.argv[5:]:
    table = [row for path in Path("csv").glob("answers/*/*.csv") for row in csv.DictReader(path.open(newline=""))]
    plain = lambda value: "" if value is None else str(value)
    wanted = {(line["device"], str(line["sequence"]), line["family"]): line for line in lines}
    same("rows of the CSV files", len(lines), len(table))
    for row in table:
        line = wanted[row["device"], row["sequence"], row["family"]]
        for key, value in line.items():
            if key == "guess":
                same(f"csv {key}", value, float(row[key]) if row[key] else None)
            else:
                same(f"csv {key}", plain(value), row[key])

for line in wrong[:20]:
    print(line, file=sys.stderr)
print(f"{engine}: {compared - len(wrong)} of {compared} values agree")
sys.exit(1 if wrong else 0)
