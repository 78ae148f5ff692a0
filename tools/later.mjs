// What the first screen does without, told by the names of functions: the screens and parts that nobody sees on it, with all that
// only they are about. What is told wrongly here costs time, and where a browser gets nothing at once the page begins anew
// (`src/device/boot/rest.js`). Tests say when something of the rest was called before the first screen stood there
// (`start.timed.test.mjs`), or by what is done on it (`parts.test.mjs`).

/** Modules of ours, and packages, whose own functions are not needed. */
const OWN = [
  "stepboard::app::pages::(?!home|deal|reading)", "stepboard::app::parts::(?!board|frame|icon|name|mod|wood)", "stepboard::app::hooks::(?:folder::(?!use_kept|go_on)|backing)",
  "stepboard::(?:bench|card|exchange|judge|process|spraying|walk)::", "stepboard::signoff::(?!when)", "stepboard_picture::(?!board)",
  ...["argon2", "blake2", "bs58", "chacha20", "chacha20poly1305", "curve25519_dalek", "ed25519_dalek", "miniz_oxide", "poly1305", "qrcodegen", "quick_xml", "sha1", "wide"].map((name) => `${name}::`),
];
/** Types whose generic functions, as of the framework and the standard library, are not needed. */
const MADE_FOR = OWN.filter((path) => /app::(pages|parts)|picture/.test(path));
/** What reads the journal and the card on the desk is needed, whatever it is of; so is what compares or copies what is kept. */
const FOR_ANY = ["serde_core::de::(?:Deserialize|Visitor|DeserializeSeed)>::", "core::(?:cmp::PartialEq|clone::Clone)>::"];
/**
 * Shorter functions come first whatever they are of: the optimiser makes one of those that are alike, which then has the name of
 * any of them. Bytes.
 */
const SHORT = { own: 100, made: 250 };

/** A path as it stands in names, where each package is told with a number. */
const inNames = (path) => path.replace(/^\w+/, "$&(?:\\[[0-9a-f]+\\])?");
const own = new RegExp(`^<?&?(?:mut )?(?:${OWN.map(inNames).join("|")})`);
const made = new RegExp(MADE_FOR.map(inNames).join("|"));
const forAny = new RegExp(FOR_ANY.map(inNames).join("|"));

/** Whether a function is of the rest. */
export function isLater(name, code) {
  return (code.length > SHORT.own && own.test(name) && !forAny.test(name)) || (code.length > SHORT.made && made.test(name));
}
