// A card answered by what a screen reader is given and nothing else: the tree of roles and names that the browser makes of the page.
import assert from "node:assert/strict";
import { test } from "node:test";
import { Key } from "selenium-webdriver";
import { SIZES, journey, testWith } from "./harness.mjs";
import { SHOP } from "./office.mjs";

/** Roles of what can be worked with. */
const WORKED = ["button", "link", "radio", "checkbox", "textbox", "combobox", "slider", "spinbutton"];

/** What is spoken, in its order: role, name, and how to reach it. */
async function spoken(page) {
  const nodes = await page.browser.spoken();
  const by = new Map(nodes.map((node) => [node.nodeId, node]));
  const read = (id) => {
    const node = by.get(id);
    if (!node) return [];
    const own = node.ignored ? [] : [{ role: node.role?.value, name: node.name?.value ?? "", at: node.backendDOMNodeId, focused: has(node, "focused"), live: node.properties?.some(({ name }) => name === "live") }];
    return [...own, ...(node.childIds ?? []).flatMap(read)];
  };
  return read(nodes[0].nodeId);
}

const has = (node, property) => node.properties?.find(({ name }) => name === property)?.value?.value === true;

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
    const told = (await spoken(page)).map(({ name }) => name).join("\n");
    assert.match(told, /The rule/, "the rule is spoken");
  }));

test("a passphrase may be pasted", () =>
  journey("pasted", SIZES[0], async (page) => {
    await page.driver.executeScript("location.hash = '#/people'");
    await page.one("heading");
    const ids = ["begin-own", "begin-own-again", "begin-root", "begin-root-again"];
    for (const id of ids) {
      const taken = await page.until(`the field ${id}`, () => page.driver.executeScript(
        `const field = document.getElementById(arguments[0]); if (!field) return null; field.focus();
         const data = new DataTransfer(); data.setData("text/plain", arguments[1]);
         const event = new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true });
         const goesOn = field.dispatchEvent(event); document.execCommand("insertText", false, arguments[1]);
         return goesOn && field.value === arguments[1];`, id, SHOP.root));
      assert(taken, `${id} takes what is pasted`);
    }
  }));
