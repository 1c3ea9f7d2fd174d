// Loads each page in a headless browser with its scripts off, prints it, asks the accessibility
// checker, and measures its text. Writes one JSON object a page.
// Usage: node browser.mjs CHROMIUM PAGE.html...
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { chromium } from "playwright-core";

const [executablePath, ...pages] = process.argv.slice(2);
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const browser = await chromium.launch({ executablePath, args: ["--no-sandbox"] });

/** Text that leaves the page or lies on other text. */
function misplaced() {
  const faults = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const boxes = [];
  while (walker.nextNode()) {
    const node = walker.currentNode;
    if (!node.data.trim() || node.parentElement.closest("title, desc")) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    for (const box of range.getClientRects()) {
      if (box.width < 1) continue;
      if (box.left < -0.5 || box.right > document.documentElement.clientWidth + 0.5) {
        faults.push(`outside: ${node.data.trim()}`);
      }
      const holder = node.parentElement.closest("td, th");
      if (holder && box.right > holder.getBoundingClientRect().right + 0.5) {
        faults.push(`leaves its cell: ${node.data.trim()}`);
      }
      // Letters fill the middle of their line box.
      boxes.push([box.left, box.top + box.height * 0.2, box.right, box.bottom - box.height * 0.2, node.data.trim()]);
    }
  }
  for (const [at, one] of boxes.entries()) {
    for (const other of boxes.slice(at + 1)) {
      if (Math.min(one[2], other[2]) - Math.max(one[0], other[0]) > 1 && Math.min(one[3], other[3]) - Math.max(one[1], other[1]) > 1) {
        faults.push(`overlap: ${one[4]} / ${other[4]}`);
      }
    }
  }
  return faults;
}

/** Figures of a table that run over more than one line. */
function broken() {
  return [...document.querySelectorAll("tbody .n")]
    .filter((cell) => {
      const range = document.createRange();
      range.selectNodeContents(cell);
      const tops = new Set([...range.getClientRects()].filter((box) => box.width > 1).map((box) => Math.round(box.top / 4)));
      return tops.size > 1;
    })
    .map((cell) => cell.textContent);
}

for (const page of pages) {
  const context = await browser.newContext({ viewport: { width: 794, height: 1123 } });
  const requests = [];
  const tab = await context.newPage();
  tab.on("request", (request) => requests.push(request.url()));
  await tab.goto(`file://${page}`);
  const result = { page, faults: [], outside: [], scroll: [], broken: [] };
  result.outside = requests.filter((url) => url !== `file://${page}`);
  await tab.pdf({ path: page.replace(/html$/, "browser.pdf"), preferCSSPageSize: true, printBackground: true, tagged: true });
  for (const width of [1280, 794, 640, 390]) {
    await tab.setViewportSize({ width, height: 1000 });
    result.faults.push(...(await tab.evaluate(misplaced)).map((fault) => `${width}: ${fault}`));
    result.broken.push(...(await tab.evaluate(broken)).map((cell) => `${width}: ${cell}`));
    const over = await tab.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    if (over > 0) result.scroll.push(`${width}: ${over}`);
  }
  await tab.setViewportSize({ width: 794, height: 1123 });
  await tab.evaluate(axe);
  const found = await tab.evaluate(() => globalThis.axe.run());
  result.axe = found.violations.map((one) => ({ id: one.id, impact: one.impact, nodes: one.nodes.length }));
  result.contrast = found.passes.some((one) => one.id === "color-contrast") && !found.violations.some((one) => one.id === "color-contrast");
  result.headings = await tab.evaluate(() => [...document.querySelectorAll("h1,h2,h3,h4,h5")].map((one) => one.tagName));
  console.log(JSON.stringify(result));
  await context.close();
}
await browser.close();
