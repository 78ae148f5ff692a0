// A card answered by what a screen reader is given and nothing else: the tree of roles and names that the browser makes of the page.
import assert from "node:assert/strict";
import { test } from "node:test";
import { Key } from "selenium-webdriver";
import { everyScreen } from "./crawl.mjs";
import { SIZES, journey, testWith } from "./harness.mjs";
import { SHOP, beginBook, goTo } from "./office.mjs";

/** Roles of what can be worked with. */
const WORKED = ["button", "link", "radio", "checkbox", "textbox", "combobox", "slider", "spinbutton"];

/** Fields for a passphrase that must be met: those of a new book, of a key and of a folder. */
const PASSPHRASES = ["begin-own", "begin-own-again", "begin-root", "begin-root-again", "unlock-passphrase", "folder-password"];

/** What is spoken, in its order: role, name, and how to reach it. */
async function spoken(page) {
  const nodes = await page.browser.spoken();
  const by = new Map(nodes.map((node) => [node.nodeId, node]));
  const read = (id, around) => {
    const node = by.get(id);
    if (!node) return [];
    // What stands within a live region is said when it changes.
    const live = property(node, "live") ?? around;
    const own = node.ignored ? [] : [{ role: node.role?.value, name: node.name?.value ?? "", at: node.backendDOMNodeId, focused: property(node, "focused") === true, live }];
    return [...own, ...(node.childIds ?? []).flatMap((child) => read(child, live))];
  };
  return read(nodes[0].nodeId);
}

const property = (node, wanted) => node.properties?.find(({ name }) => name === wanted)?.value?.value;

/** Waits until something with that role and name is spoken, and gives it. */
const heard = (page, role, name) =>
  page.until(`${role} ${name}`, async () => (await spoken(page)).find((one) => one.role === role && name.test(one.name)));

/** Does what is asked of something that is spoken: puts the focus there and presses a key. */
async function act(page, role, name, key) {
  const { at } = await heard(page, role, name);
  await page.browser.focus(at);
  await page.keys(key);
}

/** All that can be worked with has a name, and every picture that is spoken of too. */
async function assertNamed(page, where) {
  const nameless = (await spoken(page)).filter(({ role, name }) => [...WORKED, "image", "graphics-document"].includes(role) && !name.trim());
  assert.deepEqual(nameless.map(({ role }) => role), [], `${where}: nameless`);
}

testWith("spoken", "a card by what is spoken alone: what it tells, what is picked, what came of it", () =>
  journey("spoken", SIZES[0], async (page) => {
    await heard(page, "button", /^Start with/);
    await assertNamed(page, "home");
    await act(page, "button", /^Start with/, Key.ENTER);
    await heard(page, "button", /^Not enough is told/);
    await assertNamed(page, "card");
    const card = await spoken(page);
    assert(card.some(({ role }) => role === "heading"), "the card has a heading");
    assert(card.filter(({ role }) => role === "StaticText" || role === "paragraph").length > 3, "its story is spoken");
    await act(page, "button", /^Not enough is told/, Key.SPACE);
    await act(page, "radio", /right .* times in/, Key.SPACE);
    await act(page, "button", /^Hand it in/, Key.ENTER);
    const verdict = await heard(page, "heading", /^(Right|Partly right|Wrong|It cannot be judged|Rightly)/).catch(async () => {
      throw new Error((await spoken(page)).filter(({ role }) => role === "heading").map(({ name }) => name).join(" | "));
    });
    assert(verdict.focused, "what came of it is where the reader goes on");
    await assertNamed(page, "verdict");
    const saved = await heard(page, "StaticText", /^Saved on this tablet$/);
    assert.equal(saved.live, "polite", "that it is saved is said without being looked for");
    const told = (await spoken(page)).map(({ name }) => name).join("\n");
    assert.match(told, /The rule/, "the rule is spoken");
  }));

/** Pastes into each field for a passphrase that is shown; gives their names and whether each took it. */
const PASTE = `return [...document.querySelectorAll("input[type=password]:not([inputmode=numeric])")]
  .filter((field) => field.checkVisibility({ visibilityProperty: true }))
  .map((field) => {
    field.focus();
    const data = new DataTransfer();
    data.setData("text/plain", arguments[0]);
    const goesOn = field.dispatchEvent(new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }));
    document.execCommand("selectAll");
    document.execCommand("insertText", false, arguments[0]);
    return [field.id, goesOn && field.value === arguments[0]];
  });`;

test("a passphrase may be pasted wherever one is asked for on a screen that a link leads to", { timeout: 240_000 }, () =>
  journey("pasted", SIZES[0], async (page) => {
    const met = new Map();
    const paste = async () => {
      for (const [id, took] of await page.driver.executeScript(PASTE, SHOP.root)) met.set(id, took);
    };
    await goTo(page, "#/people");
    await page.until("the fields of a new book", () => page.driver.executeScript("return document.getElementById('begin-root-again') !== null"));
    await paste();
    await page.reload();
    await page.one("heading");
    await beginBook(page);
    await everyScreen(page, paste);
    assert.deepEqual([...met].filter(([, took]) => !took), []);
    for (const id of PASSPHRASES) assert(met.has(id), `${id} is not met`);
  }));
