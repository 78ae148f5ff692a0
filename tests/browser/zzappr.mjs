import { open } from "./harness.mjs";
import { lay } from "./desk.mjs";
import { begin } from "./apprentice.mjs";
import { mkdirSync, writeFileSync } from "node:fs";
const D="/tmp/shots_appr"; mkdirSync(D,{recursive:true});
const SZ = { l: { width: 1024, height: 768 }, p: { width: 768, height: 1024 }, f: { width: 390, height: 844 } };
const [s, what] = process.argv.slice(2);
const page = await open(SZ[s]); const d = page.driver;
const full = async (name, whole=false) => {
  const { data } = await d.sendAndGetDevToolsCommand("Page.captureScreenshot", { format: "png", captureBeyondViewport: whole });
  writeFileSync(`${D}/${name}.png`, Buffer.from(data, "base64"));
};
const wholeShot = async (name) => {
  const [w,h] = await d.executeScript("return [document.documentElement.scrollWidth, document.documentElement.scrollHeight]");
  const { data } = await d.sendAndGetDevToolsCommand("Page.captureScreenshot", { format: "png", captureBeyondViewport: true, clip:{x:0,y:0,width:w,height:h,scale:1} });
  writeFileSync(`${D}/${name}.png`, Buffer.from(data, "base64"));
};
const dims = () => d.executeScript("const e=document.documentElement;return [e.scrollWidth,innerWidth,e.scrollHeight,innerHeight]");
const ready = async () => { const t=Date.now(); await page.until("panel drawn", () => d.executeScript("return [...document.querySelectorAll('.card-panels canvas, .card-panels img')].length>0 && !/Drawing|drawing/.test(document.querySelector('.card-panels').innerText)")); return Date.now()-t; };
for (const item of what.split(",")) {
  const [fam, seed] = item.split(":"); const family="panel-"+fam; const n=`${fam}${seed}-${s}`;
  try {
    await lay(page, family, Number(seed));
    const t = await ready().catch(e=>"notready "+e.message.slice(0,80));
    await d.sleep(900);
    await full(`${n}-0`);
    console.log(n,"ready",t,"dims",(await dims()).join());
    const lamps = await page.all("radio", /^(Raking|Small lamp|Overhead)$/);
    for (const l of lamps.slice(1)) { const nm=await l.getAccessibleName(); await page.touch(l); await d.sleep(1100); await full(`${n}-lamp${nm.slice(0,2)}`); }
    if (fam==="diagnosis") {
      const tests = await d.findElements({css:".test button"}); let k=0;
      for (const b of tests) { await d.executeScript("arguments[0].scrollIntoView({block:'center'})",b); await b.click(); await d.sleep(1000); k++; await wholeShot(`${n}-t${k}`);}
      for (const set of await d.findElements({ css: ".answer .choices" })) { const [one] = await set.findElements({ css: "label" }); await d.executeScript("arguments[0].scrollIntoView({block:'center'})",one); await one.click(); }
    } else if (fam==="point") {
      const c = (await page.all("gridcell"))[0]; if (c) await page.touch(c); else console.log("no gridcell");
    } else {
      const [r] = await d.findElements({css:".answer .choices label"}); await d.executeScript("arguments[0].scrollIntoView({block:'center'})",r); await r.click();
    }
    const [sure] = await page.all("radio","I would ask first"); await page.touch(sure); await d.sleep(300);
    await wholeShot(`${n}-a`);
    await page.press("button","Hand it in"); await d.sleep(1800); await full(`${n}-v`); await wholeShot(`${n}-vw`);
    console.log(n,"verdict dims",(await dims()).join());
  } catch(e) { console.log(n,"FAIL",e.message.slice(0,300)); await full(`${n}-fail`).catch(()=>{}); }
}
if (process.argv[4]) {
  await d.get(page.address+"#/panel"); await d.sleep(2500); await full(`page-${s}-0`); await wholeShot(`page-${s}-w`);
  console.log("page",(await dims()).join()); console.log(await page.text());
}
await page.listen(); console.log("problems", page.problems, page.elsewhere);
await page.stop();
