//! Help pages, each with an example.

/// The sub-commands.
pub(crate) const COMMANDS: [&str; 11] =
    ["work", "judge", "walk", "spray", "deal", "grade", "check", "picture", "verify", "report", "export"];

/// What the command is.
pub(crate) const GENERAL: &str = "\
stepboard: the finishing model on the command line. JSON out; errors on standard error, exit code 2.

  work     the model as a calculator             stepboard work --help
  judge    a job that was done, as JSON          stepboard judge --help
  walk     a kept walk of a job, its report      stepboard walk --help
  spray    a panel sprayed, measured, graded     stepboard spray --help
  deal     cards from a family or a set          stepboard deal --help
  grade    answers, one JSON line each           stepboard grade --help
  check    content, set and sheet files          stepboard check --help
  picture  a computed panel, as PNG              stepboard picture --help
  verify   a signed sign-off, offline            stepboard verify --help
  report   what many answers say of the cards    stepboard report --help
  export   answers and lists for other programs  stepboard export --help

Training, not approval: local code, the data sheet and licensed practice overrule it.";

const WORK: &str = "\
stepboard work NAME key=value ... [sheet=SLUG or FILE]
stepboard work --list

Asks the model. --list gives every name with its keys, units, ranges, terms and outputs.
Temperatures in Celsius, humidity and moisture 0 to 100, times in hours, films in micrometres.
Shares (solids, transfer, overlap) 0 to 1, or with a sign: 0.2 is 20%; a bare 20 is refused.
A missing fact is an answer: verdict `cannot-be-judged` with what is missing.

  stepboard work spray-gate air_c=24 rh=55 work_c=22
  stepboard work filler wood=mahogany look=level-gloss sheet=shellac";

const WALK: &str = "\
stepboard walk [FILE | -] [--right]

Walks a kept walk again and reports on it: duties left undone first, faults with what made them and what
they cost, hours against the shortest schedule, material, and what each decision is evidence of. FILE is
a walk as the app hands it out, or JSON: walk, mode (guided, own, inspect), seed, sheet (slug and hash),
decisions. A decision that is not possible is told by its place; so is a walk that comes to something else
here than where it was walked. Of a walk that is not over all is told here, also what has not come to
light: the app seals that. Schemas: content/schema/walk.schema.json of the file and
content/schema/walk-report.schema.json of what is printed.
  --right  the same walk gone on with in a right way to its hand-over, to be kept

  stepboard walk walk.json";

const SPRAY: &str = "\
stepboard spray [FILE | -]
stepboard spray TASK --good

Sprays a face along a path and says what came of it: the film in micrometres, the places that stand
out, whether it passes its task and why not, where the paint went, each stroke, and the one thing to
do better. FILE is JSON: task, sheet (its own unless told), and either
  path    points with t_s, x_mm, y_mm, distance_mm, tilt_deg, fan_deg, trigger (0 to 1), fan_share
          (how wide the fan is, over how wide the task sets it); x to the right of the axis of the
          work, y down from its top; the trigger holds until the next point
  passes  sets with line_mm (places), wide_mm, distance_mm, speed_m_s, overlap, lead_mm, lag_mm, wait_s,
          fan_share
  --good  a good run of a task as the model would do it, as passes
Schema: content/schema/spray.schema.json.

  stepboard spray sealer-panel --good | stepboard spray -";

const REPORT: &str = "\
stepboard report FILE ...

What the answers of many people say: files are results as the app saves them, of one tablet or
several (a bare list of events, as older editions saved it, is read too); the same file twice counts
once. Only first answers of checks, without help. Families come with those to look at first: how
hard, whether who knows more is right more often (with the range that 95 % of samples would give),
who takes which option, what was misread, why to look, the rules behind it with their sources. What
was voided is left out. Cards are dealt again for it; `undealt` says how many could not be. No card is
called good or bad: a shop has too few people for that. Where nothing can be told there is null.

  stepboard report tablet-1.json tablet-2.json";

const EXPORT: &str = "\
stepboard export FILE ... out=FOLDER [format=ndjson|csv]
stepboard export FILE ... out=FOLDER format=xapi home=ADDRESS
stepboard export out=FOLDER format=case home=ADDRESS [creator=NAME] [changed=DATE]
stepboard export FAMILY:SEED ... out=FOLDER format=qti [sheet=SLUG or FILE]
stepboard export SET out=FOLDER format=qti [code=CODE]

Answers, competencies and cards for other programs. FILE is what the app saves of a tablet.
  ndjson, csv  one row an answer, and one for each card family that a decision of a walk exercises, into
         FOLDER/answers/day=YYYY-MM-DD/, a file a day and a tablet, and FOLDER/competencies: which card family gives evidence for which. Exporting again, also from
         older files, doubles nothing and loses nothing. sql/README.md tells columns and queries.
  xapi   statements of xAPI 1.0.3 as a JSON list; their ids are the same each time
  case   the competency list as a framework of CASE 1.1
  qti    cards as items of QTI 3.0 with the answers as computed now, a ZIP package. SET is a set that
         ships, or its file; its cards are those of the worksheet with that code, else of the first
         without a name. What is no item is named with the reason under `left_out`.
home is the shop's own address, https://..., under which its numbers mean something; nothing is
sent there and nothing needs to answer.

  stepboard export tablet-1.json tablet-2.json out=results
  stepboard export wants-filler:7 recoat:3 out=cards format=qti
  stepboard export stepboard-set-0123.json out=cards format=qti";

const JUDGE: &str = "\
stepboard judge [FILE | -]
stepboard judge --schema
stepboard judge --example

Judges a job and what was done on it, told as JSON in a file or on standard input: whether it is
accepted; each finding with the index of its step, rule, fault, where it is made and where it
shows, correction and hours lost; departures that are in order; tasks beside the order of work;
cautions. A step that tells no wait or value was done as the shop sheet asks; what is not known is
named under its `untold`. --schema prints the JSON Schema of both, --example a description.

  stepboard judge --example | stepboard judge -";

const DEAL: &str = "\
stepboard deal NAME [seed=N] [count=N] [sheet=SLUG or FILE] [units=metric|us] [--key]

Deals cards of a family, of a set that ships, or of a set file (TOML, or one that the app saved).
Seeds of a family run on from `seed` (0 to 4294967295); of a set it names the attempt, and `person`
who takes it: the same words give the same cards. --key adds what the model answers.
Schema: content/schema/deal.schema.json.

  stepboard deal wants-filler seed=7 count=3
  stepboard deal first-week seed=1 --key
  stepboard deal set=stepboard-set.json person=\"Ana (A-7)\"";

const GRADE: &str = "\
stepboard grade [FILE] [units=metric|us]

Grades answers, one JSON object a line, from a file or standard input:
  {\"family\":\"wants-filler\",\"version\":2,\"seed\":7,\"sheet\":\"nitrocellulose\",\"answer\":{\"picks\":[\"A\",\"C\"]}}
`answer` is one of {\"pick\":\"B\"}, {\"picks\":[\"A\",\"C\"]}, {\"order\":[\"B\",\"A\",\"C\"]},
{\"value\":12.5,\"unit\":\"h\"}, \"not-enough\"; a place on a panel, mm from its upper left corner
{\"x_mm\":40,\"y_mm\":25}; a diagnosis {\"tests\":[\"B\"],\"fault\":\"A\",\"cause\":\"C\",\"remedy\":\"A\"}, its tests in the
order done, each part by its own letters; a face sprayed, as {\"passes\":[...]} (as `stepboard spray` has
them) or {\"hand\":[...]} (see the schema). Letters are those of `deal`.
`certainty` may be ask-first, test-board or on-the-job; `sheet_hash`, where given, must be that of
the sheet. `sheet` is a slug or a file, as given to `deal`. One JSON line comes out for each.
Schema: content/schema/grade.schema.json. One bad line and nothing is graded.

  stepboard grade answers.jsonl";

const CHECK: &str = "\
stepboard check [PATH ...]

Checks a content folder, a shop sheet (it has `coating`), a set (it has `task`) or a list of the
content such as woods.toml, which is read in the place of the one inside this program; the
content inside this program when no path is given. Each problem with file, line and what is allowed.
A file that travels (JSON: a set, a shop sheet of the shop's own, a withdrawal, results) is checked as
the app checks it before it is taken.

  stepboard check content
  stepboard check content/sets/filling.toml";

const PICTURE: &str = "\
stepboard picture wood=LOOK [key=value ...] out=FILE.png
stepboard picture shape=SHAPE wood=LOOK [key=value ...] out=FILE.png
stepboard picture --list
stepboard picture --visible

Draws a panel, 120 by 90 mm, grain along it: a wood, a finish, a fault. --list gives the looks of
woods, the faults, and what each key allows; --visible measures on which woods a slight fault of
content/panels.toml can be seen (`make visible` writes that down). The same words give the same picture.
  seed       a piece of wood, and where its fault lies (0 to 4294967295)
  finish     bare, sealed, coloured, cleared, rubbed, buffed
  fault, severity     the fault and how much of it: slight, plain, severe
  filler     none, or the screen colour of pore filler as six hexadecimal digits
  stain, amber        builds of honey stain and of amber film colour, 0 to 2
  opaque     screen colour of an opaque film, six hexadecimal digits
  shaded     yes or no
  probe      none, wiped, wetted, pressed, cloth, aged
  lamp       tubes, point, raking; lamp_x, lamp_y in mm: where it is mirrored; lamp_turn in degrees; of raking 0 from the left, 90 from the far edge
  scale      mm a pixel, 0.05 to 1 (0.25 unless told)
  mask       yes: the mask of the fault in the place of the picture

  stepboard picture wood=white-ash finish=buffed fault=fish-eye severity=plain seed=3 out=panel.png

With a shape it draws the work as it looks in a state, the same for all of its parts, transparent outside.
  shape, side         plate, box, lute, lyre; front, back, edge
  top        the look of the top's wood where it is another one; seed as above
  prepared   rough, sanded, damped
  stain      amber, cherry, tobacco, black; stain_build 0 to 2
  filler     screen colour of filler; filled laid, hazed, wiped
  seal_um, clear_um   dry films, micrometres, 0 to 1000
  colour     a dye as of stain in the film, or opaque; build 0 to 2, colour_um
  shade      a dye that fades from the edge; shade_mm how far
  sheen      sprayed, scuffed, levelled, buffed
  binding    none, covered, taped, scraped
  seat       none, taped, bare
  cover      none, tape, paper
  scale      mm a pixel, 0.2 to 4 (1 unless told)

  stepboard picture shape=lute wood=mahogany top=sitka-spruce colour=amber seal_um=20 out=lute.png";

const VERIFY: &str = "\
stepboard verify FILE --trust LIST [--on DATE] [--root KEY] [--json]

Verifies a signed sign-off against the trust list of its shop, with nothing but these two files:
accepted or not, and why not. FILE is the file as it was signed, byte for byte.
  --trust  the trust list, signed by the shop's root key
  --on     a day such as 2026-06-01, taken to its end, or a moment 2026-06-01T12:00:00Z; now, if not told
  --root   the root key that the list must be signed by, did:key:z6Mk...; else compare its fingerprint
  --json   JSON in the place of sentences; schema: content/schema/verify.schema.json
A list cannot know of withdrawals after its date. Exit code: 0 accepted, 1 not accepted, 2 unreadable.

  stepboard verify sign-off.json --trust trust.json --on 2026-06-01";

/// The page of a sub-command.
pub(crate) fn page(command: &str) -> Option<&'static str> {
    match command {
        "work" => Some(WORK),
        "judge" => Some(JUDGE),
        "walk" => Some(WALK),
        "spray" => Some(SPRAY),
        "picture" => Some(PICTURE),
        "deal" => Some(DEAL),
        "grade" => Some(GRADE),
        "check" => Some(CHECK),
        "verify" => Some(VERIFY),
        "report" => Some(REPORT),
        "export" => Some(EXPORT),
        _ => None,
    }
}
