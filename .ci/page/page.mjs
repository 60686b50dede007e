// The pages of a built folder driven in a browser as a maker does: `node page.mjs OUT [PICTURES]`. Everything is tried
// without a network, and what the browser, or its reader of rules for accessibility, complains of fails the run.
import { existsSync, mkdirSync, readFileSync, readdirSync } from "node:fs";
import { createRequire } from "node:module";
import { join, resolve } from "node:path";
import assert from "node:assert/strict";
import { chromium } from "playwright-core";

const axe = createRequire(import.meta.url).resolve("axe-core/axe.min.js");
const [out, pictures] = process.argv.slice(2).map((path) => resolve(path));
if (pictures) mkdirSync(pictures, { recursive: true });
const pages = readdirSync(out).filter((name) => existsSync(join(out, name, `${name}.html`))).sort();
assert.ok(pages.length > 0, `no page below ${out}`);
const address = (name, hash = "") => `file://${join(out, name, `${name}.html`)}${hash}`;
const executablePath = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"].find(existsSync);
assert.ok(executablePath, "there is no Chromium on this machine");

const browser = await chromium.launch({ executablePath, args: ["--no-sandbox"] });
const asked = [];
const complaints = [];

/** A device of its own: nothing is remembered from another. */
async function device(width, colorScheme = "light", more = {}) {
  const context = await browser.newContext({ viewport: { width, height: width < 500 ? 740 : 900 }, colorScheme, ...more });
  await context.setOffline(true);
  context.on("request", (request) => {
    if (!/^(file|data):/.test(request.url())) asked.push(request.url());
  });
  return context;
}
async function open(context, name, hash) {
  const page = await context.newPage();
  page.on("console", (message) => message.type() === "error" && complaints.push(`${name}: ${message.text()}`));
  page.on("pageerror", (error) => complaints.push(`${name}: ${error}`));
  await page.goto(address(name, hash));
  return page;
}
const tried = (what) => console.log(`  ${what}`);

// Every page at both widths, light and dark.
for (const name of pages) {
  for (const width of [360, 1280]) {
    for (const colours of ["light", "dark"]) {
      const context = await device(width, colours);
      const page = await open(context, name);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth);
      assert.ok(wide <= width, `${name} is ${wide} px wide on a screen of ${width}`);
      const sizes = await page.locator("select[name=size] option").evaluateAll((all) => all.map((one) => one.value));
      // All sizes together in light colours, one alone in dark ones.
      const size = sizes[colours === "light" ? 0 : 1];
      if (size) await page.selectOption("select[name=size]", size);
      await inject(page);
      const { violations } = await page.evaluate(() => window.axe.run({ resultTypes: ["violations"] }));
      for (const one of violations) {
        const where = one.nodes.slice(0, 3).map((node) => node.html.slice(0, 120)).join(" | ");
        console.log(`  ${name}, ${width} px, ${colours}, ${size}: ${one.impact}: ${one.help} (${one.nodes.length}): ${where}`);
      }
      const bad = violations.filter((one) => ["serious", "critical"].includes(one.impact));
      assert.deepEqual(bad.map((one) => one.id), [], `${name} at ${width} px, ${colours}`);
      if (pictures) {
        await page.evaluate(() => window.scrollTo(0, 0));
        await page.screenshot({ path: join(pictures, `${name}-${width}-${colours}.png`) });
        await page.locator("section.step:visible").nth(1).evaluate((step) => step.scrollIntoView());
        await page.waitForTimeout(150);
        await page.screenshot({ path: join(pictures, `${name}-${width}-${colours}-step.png`) });
      }
      await context.close();
    }
  }
  console.log(`${name}: nothing serious at 360 and 1280 px, light and dark`);
}

/** The reader of rules, handed in past the page's own policy, which lets no script in. */
async function inject(page) {
  await page.evaluate(readFileSync(axe, "utf8") + "; undefined");
}

const name = pages.includes("harbour-lunch-bag") ? "harbour-lunch-bag" : pages[0];
console.log(`${name}, as a maker uses it:`);
const context = await device(360);
let page = await open(context, name);
const text = () => page.locator("main").innerText();
const values = () => page.$$eval("main .value", (all) => all.filter((one) => one.offsetParent && one.checkVisibility()).map((one) => one.innerText));

// Sizes and units.
const sizes = await page.$$eval("select[name=size] option", (all) => all.map((one) => [one.value, one.textContent]));
const words = {};
for (const [size] of sizes) {
  await page.selectOption("select[name=size]", size);
  words[size] = await text();
}
assert.equal(new Set(Object.values(words)).size, sizes.length, "two sizes read the same");
await page.selectOption("select[name=size]", sizes[1][0]);
const both = await values();
assert.ok(both.some((one) => /cm.*\(.*in\)/.test(one)), "both systems are shown");
await page.selectOption("select[name=units]", "first");
const first = await values();
assert.ok(first.every((one) => !/\d\s*in\b|\(/.test(one)), "metric alone");
await page.selectOption("select[name=units]", "second");
const second = await values();
assert.ok(second.every((one) => !/\d\s*(cm|mm)\b.*\(/.test(one) && one !== ""), "imperial alone");
assert.equal(first.length, second.length);
tried(`${sizes.length} choices of sizes, each with words of its own; ${both.length} figures in both systems or one`);

// Ticks, progress, and what a device remembers.
const steps = await page.locator("section.step:visible").count();
const progress = () => page.locator(".progress output").innerText();
assert.ok((await progress()).startsWith(`0 of ${steps}`), await progress());
await page.locator("section.step:visible .done input").first().check();
await page.locator("section.step:visible .done input").nth(1).check();
assert.ok((await progress()).startsWith(`2 of ${steps}`), await progress());
await page.locator("#needs input[type=checkbox]:visible").first().check();
await page.reload();
assert.ok((await progress()).startsWith(`2 of ${steps}`), "ticks are remembered");
assert.ok(await page.locator("#needs input[type=checkbox]:visible").first().isChecked());
assert.equal(await page.inputValue("select[name=size]"), sizes[1][0]);
assert.equal(await page.inputValue("select[name=units]"), "second");
page.once("dialog", (dialog) => dialog.dismiss());
await page.locator("button[type=reset]").click();
assert.ok((await progress()).startsWith(`2 of ${steps}`), "who says no keeps the ticks");
page.once("dialog", (dialog) => dialog.accept());
await page.locator("button[type=reset]").click();
assert.ok((await progress()).startsWith(`0 of ${steps}`), "all ticks are taken out");
tried(`${steps} steps ticked off, remembered after loading anew, and taken out when asked`);

// What is read stays in sight when another size is chosen.
await page.selectOption("select[name=size]", sizes[0][0]);
// One with enough below it that the page can be moved.
const read = page.locator("section.step:visible").nth(Math.floor(steps / 2));
await read.scrollIntoViewIfNeeded();
await read.evaluate((step) => window.scrollBy(0, step.getBoundingClientRect().top - 20));
const top = () => read.evaluate((step) => Math.round(step.getBoundingClientRect().top));
const before = await top();
await page.selectOption("select[name=size]", sizes[1][0]);
assert.ok(Math.abs((await top()) - before) <= 2, `the step moved from ${before} to ${await top()}`);
tried("the step that is read stays in sight when the size changes");

// Answers open below their steps, are printed unopened, and are shut again.
const answers = page.locator("details.help:visible");
const answered = await answers.count();
assert.ok(answered > 0, "no question stands beside a step");
const opened = () => page.locator("details.help[open]").count();
await answers.first().locator("summary").click();
assert.equal(await opened(), 1);
assert.ok(await answers.first().locator("p").first().isVisible(), "the answer is shown");
await answers.first().locator("summary").press("Enter");
assert.equal(await opened(), 0);
await page.evaluate(() => window.dispatchEvent(new Event("beforeprint")));
assert.equal(await opened(), await page.locator("details.help").count());
await page.evaluate(() => window.dispatchEvent(new Event("afterprint")));
assert.equal(await opened(), 0);
tried(`${answered} questions below their steps open by hand and by keyboard, and are printed`);

// A link to a step, and references inside.
const id = await page.locator("section.step:visible").nth(3).getAttribute("id");
const deep = await open(context, name, `#${id}`);
await deep.waitForTimeout(200);
const seen = await deep.evaluate((id) => {
  const at = document.getElementById(id).getBoundingClientRect().top;
  return at >= 0 && at < window.innerHeight / 2 && at >= document.querySelector(".bar").offsetHeight - 1;
}, id);
assert.ok(seen, `#${id} is not in sight`);
await deep.close();
const broken = await page.$$eval("a[href^='#']", (all) => all.map((one) => one.hash.slice(1)).filter((id) => !document.getElementById(id)));
assert.deepEqual(broken, [], "links that lead nowhere");
tried(`a link to #${id} opens there; no link inside leads nowhere`);

// A letter to the designer says what it is about.
const asks = page.locator("section.step:visible a.ask");
if (await asks.count()) {
  const href = decodeURIComponent(await asks.nth(2).getAttribute("href"));
  assert.match(href, new RegExp(`^mailto:[^?]+@[^?]+\\?subject=.+, edition .+, ${sizes[1][1]}, step 3$`), href);
  tried(`a letter: ${href}`);
}

// The picture as large as the screen, by tap and by key.
const opener = page.locator("section.step .enlarge:visible").first();
await opener.scrollIntoViewIfNeeded();
await opener.click();
const large = page.locator("dialog img");
await large.waitFor({ state: "visible" });
const width = () => large.evaluate((image) => image.getBoundingClientRect().width);
const fit = await width();
await large.click();
assert.ok((await width()) > fit * 1.5, "a second tap brings it closer");
assert.equal(await large.getAttribute("alt"), await opener.locator("img").getAttribute("alt"));
await page.keyboard.press("Escape");
assert.equal(await page.locator("dialog").evaluate((dialog) => dialog.open), false);
await opener.focus();
await page.keyboard.press("Enter");
await large.waitFor({ state: "visible" });
await page.locator("dialog button").click();
assert.ok(await opener.evaluate((button) => button === document.activeElement), "the reader is back where she was");
tried("a picture opens by tap and by key, comes closer, and hands the focus back");

// By keyboard alone: the first stop skips to the booklet; a step is ticked with the space bar.
await page.evaluate(() => { window.scrollTo(0, 0); document.activeElement.blur(); });
await page.reload();
await page.keyboard.press("Tab");
assert.equal(await page.evaluate(() => document.activeElement.className), "skip");
const stops = [];
for (let at = 0; at < 4; at += 1) {
  await page.keyboard.press("Tab");
  stops.push(await page.evaluate(() => document.activeElement.name || document.activeElement.type));
}
assert.ok(stops.includes("size") && stops.includes("units"), stops.join());
const tick = page.locator("section.step:visible .done input").first();
await tick.focus();
await page.keyboard.press("Space");
assert.ok((await progress()).startsWith("1 of"), "ticked with the space bar");
const ring = await tick.evaluate((input) => getComputedStyle(input).outlineStyle);
assert.equal(ring, "solid", "what has the focus shows it");
tried(`keyboard: skip link, ${stops.join(", ")}, a step ticked`);

// What a screen reader is told.
const tree = await page.locator("main").ariaSnapshot();
assert.ok(/heading "\d+ .*" \[level=3\]/.test(tree), "steps are headings");
assert.ok(/checkbox "Done"/.test(tree));
const nameless = await page.$$eval("img", (all) => all.filter((one) => !one.hasAttribute("alt")).length);
assert.equal(nameless, 0, "pictures without words");
tried("steps are headings, pictures have words");

// The screen stays on, where the browser can do that.
const awake = page.locator("input[name=awake]");
if (await awake.isVisible()) {
  await awake.check();
  tried("the screen can be kept on");
}

// On paper: black on white, no controls.
await page.emulateMedia({ media: "print", colorScheme: "dark" });
assert.equal(await page.locator(".bar").isVisible(), false);
assert.equal(await page.locator(".done").first().isVisible(), false);
const ink = await page.evaluate(() => [getComputedStyle(document.documentElement).color, getComputedStyle(document.documentElement).backgroundColor]);
assert.deepEqual(ink, ["rgb(0, 0, 0)", "rgb(255, 255, 255)"]);
tried("printed in black on white, without what is for the screen");
await context.close();

// Letters twice as large, and without a script.
const still = await device(360, "light", { javaScriptEnabled: false });
page = await still.newPage();
await page.goto(address(name));
assert.ok((await page.locator("section.step").count()) >= steps && !(await page.locator("form.choose").isVisible()));
await still.close();
const big = await device(360);
page = await open(big, name);
await page.evaluate(() => { document.documentElement.style.fontSize = "225%"; });
const wide = await page.evaluate(() => document.documentElement.scrollWidth);
assert.ok(wide <= 360, `with letters twice as large the page is ${wide} px wide`);
await big.close();
tried("readable without a script, and with letters twice as large");

// Words of an author that would be marks stay words; nothing was asked for.
assert.deepEqual(asked, [], "the page asks for something outside");
assert.deepEqual(complaints, [], "the browser complains");
tried("nothing was asked for outside the file, and the browser has nothing to complain of");
await browser.close();
