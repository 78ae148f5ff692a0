// The words on each page of a PDF that a browser wrote: ISO 32000-1, sections 7.3 (objects), 7.7.3 (pages), 9.4 (text) and
// 9.10.3 (what glyphs say). Not more of the format than browsers write: no encryption, no object streams.
import { inflateSync } from "node:zlib";

/** The objects of a file by their numbers: dictionary as text, stream unpacked. */
function objects(bytes) {
  const text = bytes.toString("latin1");
  const found = new Map();
  for (const match of text.matchAll(/(?:^|\n)(\d+) 0 obj\b/g)) {
    const begin = match.index + match[0].length;
    const end = text.indexOf("endobj", begin);
    const body = text.slice(begin, end);
    const at = body.search(/stream\r?\n/);
    if (at < 0) {
      found.set(Number(match[1]), { dictionary: body });
      continue;
    }
    const dictionary = body.slice(0, at);
    const start = begin + at + body.slice(at).match(/^stream\r?\n/)[0].length;
    const length = Number(dictionary.match(/\/Length (\d+)(?! 0 R)/)?.[1]);
    const raw = bytes.subarray(start, start + length);
    const stream = /\/FlateDecode/.test(dictionary) && !/\/Subtype\s*\/Image/.test(dictionary) ? inflateSync(raw) : raw;
    found.set(Number(match[1]), { dictionary, stream });
  }
  return found;
}

const reference = (text, name) => Number(text.match(new RegExp(`/${name} (\\d+) 0 R`))?.[1]);

/** What the codes of a font say. */
function meaning(objects, font) {
  const map = objects.get(reference(objects.get(font).dictionary, "ToUnicode"))?.stream.toString("latin1") ?? "";
  const says = new Map();
  const words = (hex) => Buffer.from(hex, "hex").swap16().toString("utf16le");
  for (const [, block] of map.matchAll(/beginbfchar([\s\S]*?)endbfchar/g)) {
    for (const [, code, hex] of block.matchAll(/<(\w+)>\s*<(\w+)>/g)) says.set(parseInt(code, 16), words(hex));
  }
  for (const [, block] of map.matchAll(/beginbfrange([\s\S]*?)endbfrange/g)) {
    for (const [, from, to, hex] of block.matchAll(/<(\w+)>\s*<(\w+)>\s*<(\w+)>/g)) {
      for (let code = parseInt(from, 16); code <= parseInt(to, 16); code += 1) {
        says.set(code, String.fromCodePoint(parseInt(hex, 16) + code - parseInt(from, 16)));
      }
    }
  }
  const wide = /\/Subtype\s*\/Type0/.test(objects.get(font).dictionary) ? 4 : 2;
  return (hex) => (hex.match(new RegExp(`\\w{${wide}}`, "g")) ?? []).map((code) => says.get(parseInt(code, 16)) ?? "").join("");
}

/** What stands on each page, without regard to where; spaces between pieces are taken out, since browsers place letters. */
export function pages(bytes) {
  const all = objects(bytes);
  const tree = [...all.values()].filter(({ dictionary }) => /\/Type\s*\/Page(?![s\w])/.test(dictionary));
  return tree.map(({ dictionary }) => {
    const inherited = all.get(reference(dictionary, "Resources"))?.dictionary ?? dictionary;
    const list = inherited.match(/\/Font\s*<<([\s\S]*?)>>/)?.[1] ?? "";
    const fonts = new Map([...list.matchAll(/\/(\w+) (\d+) 0 R/g)].map(([, name, font]) => [name, meaning(all, Number(font))]));
    const content = dictionary.match(/\/Contents\s*(\[[^\]]*\]|\d+ 0 R)/)[1];
    const streams = [...content.matchAll(/(\d+) 0 R/g)].map(([, number]) => all.get(Number(number)).stream.toString("latin1"));
    let said = "";
    let font = () => "";
    for (const match of streams.join("\n").matchAll(/\/(\w+) [\d.]+ Tf|<(\w+)>|\(((?:\\.|[^\\)])*)\)\s*Tj/g)) {
      if (match[1]) font = fonts.get(match[1]) ?? font;
      else if (match[2]) said += font(match[2]);
      else said += font(Buffer.from(match[3].replace(/\\([()\\])/g, "$1"), "latin1").toString("hex"));
    }
    return said.replace(/\s+/g, "");
  });
}
